//! Authorization in a club: one table of actions and roles.

use league::club_role::ClubRole;
use league::ids::{AccountId, ClubId};
use messages::refusals;
use store::Conn;

use crate::{Actor, Reason, Refusal, Viewer};

/// Acts that need a role in the club.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Action {
    /// Make officers, change roles, remove members.
    RunClub,
    /// Invite players, take invitations back.
    Invite,
    /// Import catalogues, set up and run seasons, open lists, pair, close weeks.
    RunSeason,
    /// Rule on results, check painting, repair rounds.
    Judge,
    /// Take part: join, hand in lists, report.
    Play,
    /// Read what the club alone may see.
    View,
}

impl Action {
    /// Whether somebody with this role may do it.
    pub(crate) fn allowed_to(self, role: ClubRole) -> bool {
        match self {
            Self::RunClub => role == ClubRole::Owner,
            Self::Invite | Self::RunSeason => matches!(role, ClubRole::Owner | ClubRole::Organiser),
            Self::Judge => matches!(
                role,
                ClubRole::Owner | ClubRole::Organiser | ClubRole::Referee
            ),
            Self::Play | Self::View => true,
        }
    }
}

/// The role of `actor`, if it allows `action` in `club`.
///
/// # Errors
/// [`Refusal::NotFound`] to anybody outside the club, [`Reason::Forbidden`] to a member whose role is
/// not enough.
pub(crate) async fn authorize(
    conn: &mut Conn,
    actor: Actor,
    club: ClubId,
    action: Action,
) -> Result<ClubRole, Refusal> {
    let role = find_role(conn, Some(actor.account), club)
        .await?
        .ok_or(Refusal::NotFound)?;
    must_allow(role, action)?;
    Ok(role)
}

/// # Errors
/// [`Reason::Forbidden`] unless the role allows `action`.
pub(crate) fn must_allow(role: ClubRole, action: Action) -> Result<(), Refusal> {
    if action.allowed_to(role) {
        return Ok(());
    }
    Err(Refusal::rule(
        Reason::Forbidden,
        refusals::role_forbids(role.as_str()),
    ))
}

/// The role of the viewer in the club, if there is one.
pub(crate) async fn role_of(
    conn: &mut Conn,
    viewer: Viewer,
    club: ClubId,
) -> Result<Option<ClubRole>, Refusal> {
    find_role(conn, viewer.map(|actor| actor.account), club).await
}

async fn find_role(
    conn: &mut Conn,
    account: Option<AccountId>,
    club: ClubId,
) -> Result<Option<ClubRole>, Refusal> {
    match account {
        None => Ok(None),
        Some(account) => Ok(store::clubs::find_role(conn, club, account).await?),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_referee_judges_and_no_more() {
        assert!(Action::Judge.allowed_to(ClubRole::Referee));
        for action in [Action::RunClub, Action::Invite, Action::RunSeason] {
            assert!(!action.allowed_to(ClubRole::Referee));
        }
    }

    #[test]
    fn only_owners_run_the_club() {
        assert_eq!(
            ClubRole::ALL.map(|role| Action::RunClub.allowed_to(role)),
            [true, false, false, false]
        );
    }
}
