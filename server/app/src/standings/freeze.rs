//! What a table was is kept: at the close of its week, and again whenever an act changes it later.

use document::standings::FrozenTableDocument;
use league::ids::{ClubId, SeasonId};
use league::standings::table;
use league::time::Instant;
use league::week::WeekNo;
use store::Conn;
use store::frozen_tables::Frozen;

use super::named_rows;
use crate::Refusal;
use crate::facts::{self, Loaded};

/// Keeps the tables of the closed weeks from `from` on, as far as `act` has changed them. Call it
/// when its facts are saved and before it is told to everyone, which makes the season's next version.
///
/// # Errors
/// [`Refusal::NotFound`], or a fault of the database.
pub(crate) async fn freeze(
    conn: &mut Conn,
    club: ClubId,
    season: SeasonId,
    from: WeekNo,
    act: &str,
    now: Instant,
) -> Result<(), Refusal> {
    let weeks = store::weeks::list(conn, club, season).await?;
    let closed = weeks.iter().filter(|week| week.facts.closed_at.is_some());
    let closed: Vec<WeekNo> = closed
        .map(|week| week.week)
        .filter(|&no| no >= from)
        .collect();
    if closed.is_empty() {
        return Ok(());
    }
    let season = store::seasons::lock(conn, club, season).await?;
    let loaded = facts::load(conn, &season, now).await?;
    for week in closed {
        let table = as_it_is(&loaded, week);
        match store::frozen_tables::find(conn, club, season.id, week, season.version).await {
            Ok((_, known)) if known == table => continue,
            Ok(_) | Err(store::Fault::NotFound) => {}
            Err(fault) => return Err(fault.into()),
        }
        let frozen = Frozen {
            week,
            version: season.version + 1,
            act: act.to_owned(),
            frozen_at: now,
        };
        store::frozen_tables::create(conn, club, season.id, &frozen, &table).await?;
    }
    Ok(())
}

fn as_it_is(loaded: &Loaded, week: WeekNo) -> FrozenTableDocument {
    let standings = table(&loaded.facts, week);
    FrozenTableDocument {
        as_of: week.number(),
        rows: named_rows(&standings, &loaded.players),
        ledger: standings.ledger.iter().map(Into::into).collect(),
    }
}
