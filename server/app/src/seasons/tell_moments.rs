//! An announcement or a reveal changes what everybody may see, though nobody acts: it makes a version
//! of its own, so that whoever follows the season hears of it.

use league::ids::{ClubId, SeasonId};
use league::season::Reveal;
use league::time::Instant;
use serde_json::{Value, json};
use store::weeks::Week;

use crate::record::Scene;
use crate::{Desk, Refusal};

/// Makes a version of every season in which a moment has come; the server asks for it every second or
/// so. Reading never waits for it: a body ends with the moment itself.
///
/// # Errors
/// [`Refusal::Unavailable`] when the database cannot be reached.
pub async fn tell_moments(desk: &Desk) -> Result<usize, Refusal> {
    let due = desk
        .store
        .read(async |conn| {
            let now = store::clock::now(conn).await?;
            store::moments::list_due(conn, now).await
        })
        .await?;
    for &(club, season) in &due {
        tell(desk, club, season).await?;
    }
    Ok(due.len())
}

async fn tell(desk: &Desk, club: ClubId, season: SeasonId) -> Result<(), Refusal> {
    desk.store
        .write(async |conn| {
            store::seasons::lock(conn, club, season).await?;
            let told = store::moments::find_told(conn, club, season).await?;
            let now = store::clock::now(conn).await?;
            let weeks = store::weeks::list(conn, club, season).await?;
            let come: Vec<Value> = weeks
                .iter()
                .filter_map(|week| come(week, told, now))
                .collect();
            if come.is_empty() {
                // Another server was first.
                return Ok(());
            }
            store::moments::mark_told(conn, club, season, now).await?;
            Scene::by_clock(club, season, now)
                .tell_everyone(desk, conn, "reveal", json!({ "weeks": come }))
                .await
        })
        .await
}

/// What of a week came after `told` and by `now`, if anything.
fn come(week: &Week, told: Option<Instant>, now: Instant) -> Option<Value> {
    let moments = [
        ("announcement", Some(week.facts.announce_at)),
        ("title", at(week.title_reveal)),
        ("scenario", at(week.full_reveal)),
    ];
    let is_new = |at: Instant| at <= now && told.is_none_or(|told| at > told);
    let new = moments.into_iter().filter(|(_, at)| at.is_some_and(is_new));
    let new: Vec<&str> = new.map(|(what, _)| what).collect();
    (!new.is_empty()).then(|| json!({ "week": week.week.number(), "moments": new }))
}

fn at(reveal: Reveal) -> Option<Instant> {
    match reveal {
        Reveal::At(instant) => Some(instant),
        Reveal::Announcement | Reveal::ListsOpened => None,
    }
}
