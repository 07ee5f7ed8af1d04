//! Reminding everybody who owes a list or a result.

use chrono::Duration;
use league::ids::{ClubId, PlayerId, SeasonId};
use league::time::Instant;
use league::week::WeekNo;
use serde_json::json;

use super::owing::{About, nobody_owes, owing};
use crate::may::may;
use crate::record::Scene;
use crate::seasons::look::must_be_started;
use crate::{Action, Actor, Desk, Reason, Refusal};

/// A reminder is a reminder, not a siren.
pub(super) const AT_MOST_EVERY: Duration = Duration::hours(12);

/// What a reminder did.
#[derive(Clone, Debug)]
pub struct Nudged {
    /// Whom it concerns now.
    pub players: Vec<PlayerId>,
    /// When.
    pub at: Instant,
    /// From when on people may be reminded of this again.
    pub again_from: Instant,
}

/// Puts a notice before everybody who owes it, for as long as they do. The trail says that people were
/// reminded and not whom: that would tell who has handed in.
///
/// # Errors
/// [`Reason::WeekState`] when nobody owes it now, [`Reason::NudgedAlready`] within twelve hours.
pub async fn nudge_players(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
    about: About,
) -> Result<Nudged, Refusal> {
    desk.store
        .write(async |conn| {
            may(conn, actor, club, Action::RunSeason).await?;
            let season = store::seasons::lock(conn, club, season).await?;
            must_be_started(&season)?;
            let known = store::weeks::find(conn, club, season.id, week).await?;
            let now = store::clock::now(conn).await?;
            let last = store::nudges::find_last(conn, club, season.id, week, about.word()).await?;
            must_be_due(last, now)?;
            let players = owing(conn, &season, &known, about, now).await?;
            if players.is_empty() {
                return Err(nobody_owes(week, about));
            }
            let by = actor.account;
            store::nudges::create(conn, club, season.id, week, about.word(), by, now).await?;
            Scene::in_season(season.key(), actor, now)
                .tell_officers(
                    conn,
                    "nudge_players",
                    json!({"week": week.number(), "about": about.word()}),
                )
                .await?;
            Ok(Nudged {
                players,
                at: now,
                again_from: now + AT_MOST_EVERY,
            })
        })
        .await
}

fn must_be_due(last: Option<Instant>, now: Instant) -> Result<(), Refusal> {
    let Some(again_from) = last.map(|last| last + AT_MOST_EVERY) else {
        return Ok(());
    };
    if now >= again_from {
        return Ok(());
    }
    let detail = format!(
        "People were reminded of this within the last {} hours.",
        AT_MOST_EVERY.num_hours()
    );
    Err(Refusal::rule(Reason::NudgedAlready, detail)
        .fact("retry_after", (again_from - now).num_seconds())
        .fact("again_from", again_from.to_rfc3339()))
}
