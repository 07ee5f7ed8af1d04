//! The reminders of a week: those that organisers can send, and those that a player was sent.

use league::ids::PlayerId;
use league::keys::WeekKey;
use league::season::check_reminder;
use league::time::Instant;

use super::owing::{ReminderKind, find_owing};
use crate::access::{authorize, view_season};
use crate::{Action, Actor, App, Refusal};

/// A reminder that can be sent because somebody owes something.
#[derive(Clone, Debug)]
pub struct PendingReminder {
    pub about: ReminderKind,
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
pub async fn find_reminders(
    app: &App,
    actor: Actor,
    week: WeekKey,
) -> Result<Vec<PendingReminder>, Refusal> {
    app.store
        .read(async |conn| {
            authorize(conn, actor, week.season.club, Action::RunSeason).await?;
            let season = store::seasons::find(conn, week.season).await?;
            let known = store::weeks::find(conn, week).await?;
            let now = store::clock::now(conn).await?;
            let mut found = Vec::new();
            for about in ReminderKind::ALL {
                let players = find_owing(conn, &season, &known, about, now).await?;
                if players.is_empty() {
                    continue;
                }
                let last = store::reminders::find_last(conn, week, about.word()).await?;
                found.push(PendingReminder {
                    about,
                    players,
                    last,
                    due: check_reminder(last, now).is_ok(),
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
pub async fn find_own_reminders(
    app: &App,
    actor: Actor,
    week: WeekKey,
) -> Result<Vec<(ReminderKind, Instant)>, Refusal> {
    app.store
        .read(async |conn| {
            let season = view_season(conn, Some(actor), week.season).await?.season;
            let account = actor.account;
            let own = store::players::find_by_account(conn, season.key(), account).await?;
            let Some(own) = own else {
                return Ok(Vec::new());
            };
            let known = store::weeks::find(conn, week).await?;
            let now = store::clock::now(conn).await?;
            let mut found = Vec::new();
            for about in ReminderKind::ALL {
                let last = store::reminders::find_last(conn, week, about.word()).await?;
                let Some(last) = last else { continue };
                if find_owing(conn, &season, &known, about, now)
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
