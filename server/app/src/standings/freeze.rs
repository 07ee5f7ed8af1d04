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

/// Keeps the tables that `act` has changed. Of the weeks that are played, before the first is paired of
/// the first, it keeps the rows: whatever is told to everyone may change them, a name, a rule, a result.
/// The tables of closed weeks are kept whole, from `over` on. Call it when the facts of the act are saved
/// and before the season's next version is made. Answers what it has read, of a season that is running.
///
/// # Errors
/// [`Refusal::NotFound`], or a fault of the database.
pub(crate) async fn freeze(
    desk: &Desk,
    conn: &mut Conn,
    (club, season): (ClubId, SeasonId),
    over: Option<WeekNo>,
    act: &str,
    now: Instant,
) -> Result<Option<(Season, Loaded)>, Refusal> {
    let season = store::seasons::lock(conn, club, season).await?;
    if season.state != SeasonState::Started {
        return Ok(None);
    }
    let loaded = facts::load(conn, desk, &season, now).await?;
    let last = loaded.last_paired();
    for Week { week, facts, .. } in &loaded.weeks {
        let whole = facts.closed_at.is_some();
        let may_differ = match whole {
            true => over.is_some_and(|first| *week >= first),
            false => *week <= last,
        };
        if may_differ {
            let standings = table(&loaded.facts, *week);
            let ledger = standings.ledger.iter().filter(|_| whole);
            let table = FrozenTableDocument {
                as_of: week.number(),
                rows: named_rows(&standings, &loaded.players),
                ledger: ledger.map(Into::into).collect(),
            };
            let frozen = frozen(&season, *week, act, now, whole);
            store::frozen_tables::keep(conn, club, season.id, &frozen, table).await?;
        }
    }
    Ok(Some((season, loaded)))
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
