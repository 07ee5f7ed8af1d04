//! Scheduled task: publishes announcements and reveals whose time has come. They change what everybody
//! may see, though nobody acts, and so make a version of the season.

use document::trail::{TrailAct, WeekReveals};
use league::keys::SeasonKey;
use league::season::has_come_since;
use league::time::Instant;
use store::weeks::Week;

use crate::season_change::SeasonChange;
use crate::{App, Refusal};

/// Makes a version of every season in which a reveal is due; the scheduler of the server calls it every
/// second or so. Readers never wait for it: a cached body expires at that instant by itself.
///
/// # Errors
/// [`Refusal::Unavailable`] when the database cannot be reached.
pub async fn publish_due_reveals(app: &App) -> Result<usize, Refusal> {
    let due = app
        .store
        .read(async |conn| {
            let now = store::clock::now(conn).await?;
            store::scheduled_reveals::list_due(conn, now).await
        })
        .await?;
    for &season in &due {
        publish(app, season).await?;
    }
    Ok(due.len())
}

async fn publish(app: &App, season: SeasonKey) -> Result<(), Refusal> {
    app.write(async |mut tx| {
        store::seasons::lock(&mut tx, season).await?;
        let revealed_until = store::scheduled_reveals::find_revealed_until(&mut tx, season).await?;
        let now = store::clock::now(&tx).await?;
        let weeks = store::weeks::list(&tx, season).await?;
        let due: Vec<WeekReveals> = weeks
            .iter()
            .filter_map(|week| due_reveals(week, revealed_until, now))
            .collect();
        if due.is_empty() {
            // Another server has published them in the meantime.
            return Ok(tx.commit(()));
        }
        store::scheduled_reveals::mark_revealed_until(&mut tx, season, now).await?;
        let act = TrailAct::Reveal { weeks: due };
        let change = SeasonChange::new(season, None, now, act);
        Ok(tx.publish(change).await?.with(()))
    })
    .await
}

/// What of a week is revealed after `revealed_until` and by `now`, if anything.
fn due_reveals(week: &Week, revealed_until: Option<Instant>, now: Instant) -> Option<WeekReveals> {
    let moments = [
        ("announcement", Some(week.facts.announce_at)),
        ("title", week.title_reveal.instant()),
        ("scenario", week.full_reveal.instant()),
    ];
    let is_new = |at| has_come_since(at, revealed_until, now);
    let new = moments.into_iter().filter(|(_, at)| at.is_some_and(is_new));
    let moments: Vec<String> = new.map(|(what, _)| what.to_owned()).collect();
    let week = week.week.number();
    (!moments.is_empty()).then_some(WeekReveals { week, moments })
}
