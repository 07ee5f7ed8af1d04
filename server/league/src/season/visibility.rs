//! Who may see a season, and who may still be let in to see it.

use messages::{Message, seasons};

use super::SeasonState;
use crate::club_role::ClubRole;

/// Who may look at a season.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Visibility {
    Public,
    Club,
}

impl Visibility {
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Public => "public",
            Self::Club => "club",
        }
    }
}

/// Whether somebody with this role in the club may see a season: a draft and a season of the club are for the
/// club's members, who may join it; a public one is for everybody.
pub fn is_visible(state: SeasonState, visibility: Visibility, role: Option<ClubRole>) -> bool {
    match (state, visibility) {
        (SeasonState::Started | SeasonState::Ended, Visibility::Public) => true,
        (SeasonState::Draft, _) | (_, Visibility::Club) => role.is_some(),
    }
}

/// Whether a season stands in the list of the club's seasons: as [`is_visible`], but a draft only for those
/// who set it up. Members find it by its address.
pub fn is_listed(state: SeasonState, visibility: Visibility, role: Option<ClubRole>) -> bool {
    match state {
        SeasonState::Draft => matches!(role, Some(ClubRole::Owner | ClubRole::Organiser)),
        SeasonState::Started | SeasonState::Ended => is_visible(state, visibility, role),
    }
}

/// A season of the club that has started is not opened to everybody: its players joined it as it was.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct VisibilityFixed;

impl VisibilityFixed {
    pub fn message(self) -> Message {
        seasons::visibility_fixed()
    }
}

/// # Errors
/// [`VisibilityFixed`].
pub fn check_visibility_change(
    state: SeasonState,
    before: Visibility,
    after: Visibility,
) -> Result<(), VisibilityFixed> {
    let is_opened = (before, after) == (Visibility::Club, Visibility::Public);
    if is_opened && state != SeasonState::Draft {
        return Err(VisibilityFixed);
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    const STATES: [SeasonState; 3] = [SeasonState::Draft, SeasonState::Started, SeasonState::Ended];

    #[test]
    fn everybody_sees_a_public_season_from_its_start_on_and_members_every_season() {
        let seen = |visibility, role| STATES.map(|state| is_visible(state, visibility, role));
        assert_eq!(seen(Visibility::Public, None), [false, true, true]);
        assert_eq!(seen(Visibility::Club, None), [false; 3]);
        for visibility in [Visibility::Public, Visibility::Club] {
            assert_eq!(seen(visibility, Some(ClubRole::Player)), [true; 3]);
        }
    }

    #[test]
    fn a_draft_is_listed_only_for_who_sets_it_up() {
        let listed = |role| STATES.map(|state| is_listed(state, Visibility::Club, role));
        assert_eq!(listed(Some(ClubRole::Organiser)), [true; 3]);
        for role in [ClubRole::Referee, ClubRole::Player] {
            assert_eq!(listed(Some(role)), [false, true, true]);
        }
        assert_eq!(listed(None), [false; 3]);
    }

    #[test]
    fn a_season_of_the_club_is_not_opened_to_everybody_once_it_has_started() {
        let (club, public) = (Visibility::Club, Visibility::Public);
        let change =
            |before, after| STATES.map(|state| check_visibility_change(state, before, after));
        let fixed = Err(VisibilityFixed);
        assert_eq!(change(club, public), [Ok(()), fixed, fixed]);
        for (before, after) in [(public, club), (club, club), (public, public)] {
            assert_eq!(change(before, after), [Ok(()); 3]);
        }
    }
}
