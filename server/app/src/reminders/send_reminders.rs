//! Sending a reminder to everybody who owes a list or a result.

use document::trail::TrailAct;
use league::ids::PlayerId;
use league::keys::WeekKey;
use league::season::{MIN_REMINDER_INTERVAL, check_reminder};
use league::time::Instant;
use messages::seasons;

use super::owing::{ReminderKind, find_owing, nobody_owes};
use crate::access::{authorize, must_be_started};
use crate::season_change::OfficersEntry;
use crate::{Action, Actor, App, Reason, Refusal};

#[derive(Clone, Debug)]
pub struct SentReminder {
    /// Whom it concerns now.
    pub players: Vec<PlayerId>,
    pub at: Instant,
    /// From when on people may be reminded of this again.
    pub again_from: Instant,
}

/// Puts a notice before everybody who owes it, for as long as they do. The trail says that people were
/// reminded and not whom: that would tell who has handed in.
///
/// # Errors
/// [`Reason::WeekState`] when nobody owes it now, [`Reason::RemindedAlready`] within twelve hours.
pub async fn send_reminders(
    app: &App,
    actor: Actor,
    week: WeekKey,
    about: ReminderKind,
) -> Result<SentReminder, Refusal> {
    app.write(async |mut tx| {
        authorize(&mut tx, actor, week.season.club, Action::RunSeason).await?;
        let season = store::seasons::lock(&mut tx, week.season).await?;
        must_be_started(&season)?;
        let known = store::weeks::find(&mut tx, week).await?;
        let now = store::clock::now(&tx).await?;
        let last = store::reminders::find_last(&mut tx, week, about.word()).await?;
        check_reminder(last, now).map_err(|again_from| reminded_already(again_from, now))?;
        let players = find_owing(&mut tx, &season, &known, about, now).await?;
        if players.is_empty() {
            return Err(nobody_owes(week.week, about));
        }
        let by = actor.account;
        store::reminders::create(&mut tx, week, about.word(), by, now).await?;
        let act = TrailAct::SendReminders {
            week: week.week.number(),
            about: about.word().to_owned(),
        };
        Ok(tx
            .record(OfficersEntry::in_season(season.key(), actor, now, act))
            .await?
            .with(SentReminder {
                players,
                at: now,
                again_from: now + MIN_REMINDER_INTERVAL,
            }))
    })
    .await
}

fn reminded_already(again_from: Instant, now: Instant) -> Refusal {
    let message = seasons::reminded_already(MIN_REMINDER_INTERVAL.num_hours());
    Refusal::rule(Reason::RemindedAlready, message)
        .fact("retry_after", (again_from - now).num_seconds())
        .fact("again_from", again_from.to_rfc3339())
}
