//! What people were reminded of: to those who run the season, and to a player about themselves.

use league::ids::{ClubId, PlayerId, SeasonId};
use league::time::Instant;
use league::week::WeekNo;

use super::nudge_players::AT_MOST_EVERY;
use super::owing::{About, owing};
use crate::may::may;
use crate::seasons::look::look;
use crate::{Action, Actor, Desk, Refusal};

/// What those who run a season can remind people of in a week.
#[derive(Clone, Debug)]
pub struct NudgeDesk {
    /// Of what.
    pub about: About,
    /// Who owes it now.
    pub players: Vec<PlayerId>,
    /// When people were last reminded, if ever.
    pub last: Option<Instant>,
    /// Whether they may be reminded now.
    pub due: bool,
}

/// Only what somebody owes now.
///
/// # Errors
/// [`crate::Reason::Forbidden`], [`Refusal::NotFound`].
pub async fn find_nudges(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
) -> Result<Vec<NudgeDesk>, Refusal> {
    desk.store
        .read(async |conn| {
            may(conn, actor, club, Action::RunSeason).await?;
            let season = store::seasons::find(conn, club, season).await?;
            let known = store::weeks::find(conn, club, season.id, week).await?;
            let now = store::clock::now(conn).await?;
            let mut found = Vec::new();
            for about in About::ALL {
                let players = owing(conn, &season, &known, about, now).await?;
                if players.is_empty() {
                    continue;
                }
                let last =
                    store::nudges::find_last(conn, club, season.id, week, about.word()).await?;
                found.push(NudgeDesk {
                    about,
                    players,
                    last,
                    due: last.is_none_or(|last| now >= last + AT_MOST_EVERY),
                });
            }
            Ok(found)
        })
        .await
}

/// What the actor was reminded of in a week and still owes, and when.
///
/// # Errors
/// [`Refusal::NotFound`] for a season that the actor may not know of.
pub async fn find_own_nudges(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
) -> Result<Vec<(About, Instant)>, Refusal> {
    desk.store
        .read(async |conn| {
            let season = look(conn, Some(actor), club, season).await?.season;
            let account = actor.account;
            let own = store::players::find_by_account(conn, club, season.id, account).await?;
            let Some(own) = own else {
                return Ok(Vec::new());
            };
            let known = store::weeks::find(conn, club, season.id, week).await?;
            let now = store::clock::now(conn).await?;
            let mut found = Vec::new();
            for about in About::ALL {
                let last =
                    store::nudges::find_last(conn, club, season.id, week, about.word()).await?;
                let Some(last) = last else { continue };
                if owing(conn, &season, &known, about, now)
                    .await?
                    .contains(&own.id)
                {
                    found.push((about, last));
                }
            }
            Ok(found)
        })
        .await
}
