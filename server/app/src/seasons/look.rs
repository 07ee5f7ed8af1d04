//! Who may look at a season, and what they are to it.

use futures_util::future::try_join;
use league::ids::{ClubId, PlayerId, SeasonId};
use league::role::Role;
use league::season::{SeasonState, Visibility};
use league::week::WeekNo;
use store::Conn;
use store::players::Player;
use store::seasons::Season;

use crate::{Actor, Reason, Refusal, Viewer};

/// A season as one person meets it.
pub(crate) struct Look {
    pub season: Season,
    pub role: Option<Role>,
}

impl Look {
    /// Whether the viewer runs seasons here, and so sees what is still to be revealed.
    pub fn runs_season(&self) -> bool {
        matches!(self.role, Some(Role::Owner | Role::Organiser))
    }

    fn if_known(self) -> Result<Self, Refusal> {
        let known = match (self.season.state, self.season.visibility) {
            (SeasonState::Started | SeasonState::Ended, Visibility::Public) => true,
            (SeasonState::Draft, _) | (_, Visibility::Club) => self.role.is_some(),
        };
        if known {
            Ok(self)
        } else {
            Err(Refusal::NotFound)
        }
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
    Look { season, role }.if_known()
}

/// A season that has started and not ended, and the actor's own place in it.
///
/// # Errors
/// [`Refusal::NotFound`] for somebody who may not know of it, does not play in it or left the club;
/// [`Reason::SeasonState`].
pub(crate) async fn find_place(
    conn: &Conn,
    actor: Actor,
    club: ClubId,
    id: SeasonId,
) -> Result<(Season, Player), Refusal> {
    let season = store::seasons::find_as(conn, club, id, actor.account);
    let player = store::players::find_by_account(conn, club, id, actor.account);
    let ((season, role), player) = try_join(season, player).await?;
    let season = Look { season, role }.if_known()?.season;
    must_be_started(&season)?;
    let player = role.and(player).ok_or(Refusal::NotFound)?;
    Ok((season, player))
}

/// # Errors
/// [`Reason::SeasonState`] unless the season is running.
pub(crate) fn must_be_started(season: &Season) -> Result<(), Refusal> {
    match season.state {
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
