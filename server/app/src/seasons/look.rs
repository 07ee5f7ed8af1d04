//! Who may look at a season, and what they are to it.

use league::ids::{AccountId, CatalogueId, ClubId, PlayerId, SeasonId};
use league::role::Role;
use league::season::{SeasonState, Visibility};
use league::week::WeekNo;
use store::Conn;
use store::players::Player;
use store::seasons::Season;

use crate::{Reason, Refusal, Viewer};

/// A season as one person meets it.
pub(crate) struct Look {
    pub season: Season,
    pub role: Option<Role>,
}

/// A season that has started and not ended: its rules are fixed.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Running {
    pub club: ClubId,
    pub id: SeasonId,
    pub catalogue: CatalogueId,
}

impl Running {
    /// # Errors
    /// [`Reason::SeasonState`] unless it is.
    pub fn of(season: &Season) -> Result<Self, Refusal> {
        must_be_started(season)?;
        Ok(Self {
            club: season.club,
            id: season.id,
            catalogue: season.catalogue,
        })
    }

    /// Its address.
    pub fn key(self) -> (ClubId, SeasonId) {
        (self.club, self.id)
    }
}

impl Look {
    /// As somebody meets it who has not signed in.
    ///
    /// # Errors
    /// [`Refusal::NotFound`] for a season that is not open to everybody.
    pub fn of_everybody(season: Season) -> Result<Self, Refusal> {
        must_be_known(season.state, season.visibility, None)?;
        Ok(Self { season, role: None })
    }

    /// Whether the viewer runs seasons here, and so sees what is still to be revealed.
    pub fn runs_season(&self) -> bool {
        matches!(self.role, Some(Role::Owner | Role::Organiser))
    }
}

fn must_be_known(
    state: SeasonState,
    visibility: Visibility,
    role: Option<Role>,
) -> Result<(), Refusal> {
    let known = match (state, visibility) {
        (SeasonState::Started | SeasonState::Ended, Visibility::Public) => true,
        (SeasonState::Draft, _) | (_, Visibility::Club) => role.is_some(),
    };
    if known {
        Ok(())
    } else {
        Err(Refusal::NotFound)
    }
}

/// The season, if the viewer may know of it: a draft and a season of the club are for the club, whose
/// people may take a place in it; a public one is for everybody.
///
/// # Errors
/// [`Refusal::NotFound`] otherwise.
pub(crate) async fn look(
    conn: &mut Conn,
    viewer: Viewer,
    club: ClubId,
    id: SeasonId,
) -> Result<Look, Refusal> {
    let (season, role) = match viewer {
        None => (store::seasons::find(conn, club, id).await?, None),
        Some(actor) => store::seasons::find_as(conn, club, id, actor.account).await?,
    };
    must_be_known(season.state, season.visibility, role)?;
    Ok(Look { season, role })
}

/// A season that has started and not ended, and an account's place in it.
///
/// # Errors
/// [`Refusal::NotFound`] for somebody who may not know of it, does not play in it or left the club;
/// [`Reason::SeasonState`].
pub(crate) async fn find_place(
    conn: &Conn,
    account: AccountId,
    club: ClubId,
    id: SeasonId,
) -> Result<(Running, Player), Refusal> {
    let place = store::places::find(conn, club, id, account).await?;
    must_be_known(place.state, place.visibility, place.role)?;
    must_have_started(place.state)?;
    let player = place.role.and(place.player).ok_or(Refusal::NotFound)?;
    let season = Running {
        club,
        id,
        catalogue: place.catalogue,
    };
    Ok((season, player))
}

/// # Errors
/// [`Reason::SeasonState`] unless the season is running.
pub(crate) fn must_be_started(season: &Season) -> Result<(), Refusal> {
    must_have_started(season.state)
}

fn must_have_started(state: SeasonState) -> Result<(), Refusal> {
    match state {
        SeasonState::Started => Ok(()),
        SeasonState::Draft => Err(Refusal::rule(
            Reason::SeasonState,
            "The season has not started yet.",
        )),
        SeasonState::Ended => Err(Refusal::rule(Reason::SeasonState, "The season is over.")),
    }
}

/// # Errors
/// [`Reason::PlayerLeft`] when the player does not take part in that week.
pub(crate) fn must_play(player: &Player, week: WeekNo) -> Result<PlayerId, Refusal> {
    if player.plays_in(week) {
        Ok(player.id)
    } else {
        Err(Refusal::rule(
            Reason::PlayerLeft,
            format!("{} does not play in week {week}.", player.handle),
        ))
    }
}
