//! Access to one season: who may see it, in which role, and who plays in it.

use league::club_role::ClubRole;
use league::ids::{AccountId, CatalogueId, PlayerId};
use league::keys::SeasonKey;
use league::season::{SeasonState, Visibility, is_visible};
use league::week::WeekNo;
use messages::seasons;
use store::Conn;
use store::players::Player;
use store::seasons::Season;

use crate::{Reason, Refusal, Viewer};

/// A season that the viewer may see, with the viewer's role in its club.
pub(crate) struct SeasonView {
    pub season: Season,
    pub role: Option<ClubRole>,
}

/// A season that has started and not ended: its rules are fixed.
#[derive(Clone, Copy, Debug)]
pub(crate) struct RunningSeason {
    pub key: SeasonKey,
    pub catalogue: CatalogueId,
}

impl RunningSeason {
    /// # Errors
    /// [`Reason::SeasonState`] unless it is running.
    pub fn from_season(season: &Season) -> Result<Self, Refusal> {
        must_be_started(season)?;
        Ok(Self {
            key: season.key(),
            catalogue: season.catalogue,
        })
    }
}

impl SeasonView {
    /// As anybody sees it, signed in or not.
    ///
    /// # Errors
    /// [`Refusal::NotFound`] for a season that is not open to everybody.
    pub fn public(season: Season) -> Result<Self, Refusal> {
        must_be_visible(season.state, season.visibility, None)?;
        Ok(Self { season, role: None })
    }

    /// Whether the viewer runs seasons here, and so sees what is still to be revealed.
    pub fn runs_season(&self) -> bool {
        matches!(self.role, Some(ClubRole::Owner | ClubRole::Organiser))
    }
}

fn must_be_visible(
    state: SeasonState,
    visibility: Visibility,
    role: Option<ClubRole>,
) -> Result<(), Refusal> {
    if is_visible(state, visibility, role) {
        Ok(())
    } else {
        Err(Refusal::NotFound)
    }
}

/// The season, if the viewer may see it.
///
/// # Errors
/// [`Refusal::NotFound`] otherwise: a season that is hidden and one that is absent look alike.
pub(crate) async fn view_season(
    conn: &mut Conn,
    viewer: Viewer,
    season: SeasonKey,
) -> Result<SeasonView, Refusal> {
    let (season, role) = match viewer {
        None => (store::seasons::find(conn, season).await?, None),
        Some(actor) => store::seasons::find_with_role(conn, season, actor.account).await?,
    };
    must_be_visible(season.state, season.visibility, role)?;
    Ok(SeasonView { season, role })
}

/// A running season and the player that an account is in it.
///
/// # Errors
/// [`Refusal::NotFound`] for somebody who may not see it, does not play in it or left the club;
/// [`Reason::SeasonState`].
pub(crate) async fn authorize_player(
    conn: &Conn,
    account: AccountId,
    season: SeasonKey,
) -> Result<(RunningSeason, Player), Refusal> {
    let access = store::season_access::find(conn, season, account).await?;
    must_be_visible(access.state, access.visibility, access.role)?;
    must_be_running(access.state)?;
    let player = access.role.and(access.player).ok_or(Refusal::NotFound)?;
    let season = RunningSeason {
        key: season,
        catalogue: access.catalogue,
    };
    Ok((season, player))
}

/// # Errors
/// [`Reason::SeasonState`] unless the season is running.
pub(crate) fn must_be_started(season: &Season) -> Result<(), Refusal> {
    must_be_running(season.state)
}

fn must_be_running(state: SeasonState) -> Result<(), Refusal> {
    match state {
        SeasonState::Started => Ok(()),
        SeasonState::Draft => Err(Refusal::rule(
            Reason::SeasonState,
            seasons::season_not_started(),
        )),
        SeasonState::Ended => Err(Refusal::rule(Reason::SeasonState, seasons::season_over())),
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
            seasons::does_not_play(&player.handle, week.number()),
        ))
    }
}
