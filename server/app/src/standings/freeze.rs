//! What a table was is kept, so that every version of it can be read again: the rows of a week that is
//! played, and from its close on the lines behind them, too.

use document::standings::FrozenTableDocument;
use league::ids::{ClubId, SeasonId};
use league::season::SeasonState;
use league::standings::table;
use league::time::Instant;
use league::week::WeekNo;
use store::Conn;
use store::frozen_tables::Frozen;
use store::seasons::Season;
use store::weeks::Week;

use super::named_rows;
use crate::facts::{self, Loaded};
use crate::{Desk, Refusal};

/// Keeps the tables of the closed weeks from `from` on, as far as `act` has changed them. Call it
/// when its facts are saved and before it is told to everyone, which makes the season's next version.
///
/// # Errors
/// [`Refusal::NotFound`], or a fault of the database.
pub(crate) async fn freeze(
    desk: &Desk,
    conn: &mut Conn,
    club: ClubId,
    season: SeasonId,
    from: WeekNo,
    act: &str,
    now: Instant,
) -> Result<(), Refusal> {
    let weeks = store::weeks::list(conn, club, season).await?;
    let is_meant = |week: &&Week| week.facts.closed_at.is_some() && week.week >= from;
    let closed: Vec<WeekNo> = weeks.iter().filter(is_meant).map(|it| it.week).collect();
    if closed.is_empty() {
        return Ok(());
    }
    let season = store::seasons::lock(conn, club, season).await?;
    let loaded = facts::load(conn, desk, &season, now).await?;
    for week in closed {
        let standings = table(&loaded.facts, week);
        let table = FrozenTableDocument {
            as_of: week.number(),
            rows: named_rows(&standings, &loaded.players),
            ledger: standings.ledger.iter().map(Into::into).collect(),
        };
        let frozen = frozen(&season, week, act, now, true);
        store::frozen_tables::keep(conn, club, season.id, &frozen, table).await?;
    }
    Ok(())
}

/// Keeps the rows of the weeks that are played, as far as `act` has changed them; before the first is
/// paired, those of the first. Whatever is told to everyone may change them: a name, a rule, a result.
///
/// # Errors
/// As [`freeze`].
pub(crate) async fn freeze_rows(
    desk: &Desk,
    conn: &mut Conn,
    club: ClubId,
    season: SeasonId,
    act: &str,
    now: Instant,
) -> Result<(), Refusal> {
    let season = store::seasons::lock(conn, club, season).await?;
    if season.state != SeasonState::Started {
        return Ok(());
    }
    let loaded = facts::load(conn, desk, &season, now).await?;
    for week in played(&loaded) {
        let table = FrozenTableDocument {
            as_of: week.number(),
            rows: named_rows(&table(&loaded.facts, week), &loaded.players),
            ledger: Vec::new(),
        };
        let frozen = frozen(&season, week, act, now, false);
        store::frozen_tables::keep(conn, club, season.id, &frozen, table).await?;
    }
    Ok(())
}

fn played(loaded: &Loaded) -> Vec<WeekNo> {
    let last = loaded.last_paired();
    let is_played = |week: &&Week| week.week <= last && week.facts.closed_at.is_none();
    let weeks = loaded.weeks.iter().filter(is_played);
    weeks.map(|week| week.week).collect()
}

fn frozen(season: &Season, week: WeekNo, act: &str, now: Instant, whole: bool) -> Frozen {
    Frozen {
        week,
        version: season.version + 1,
        act: act.to_owned(),
        frozen_at: now,
        whole,
    }
}
