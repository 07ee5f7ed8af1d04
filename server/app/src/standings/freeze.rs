//! Freezing tables: a snapshot of each changed table is saved, so that every version of it can be read
//! again; from the close of a week on with the ledger lines behind its rows.

use document::table::standings::FrozenTableDocument;
use league::season::SeasonState;
use league::standings::{may_table_differ, table};
use league::time::Instant;
use league::week::WeekNo;
use store::Conn;
use store::frozen_tables::FrozenTableMeta;
use store::seasons::Season;
use store::weeks::Week;

use super::named_rows;
use crate::load_season::load_season;
use crate::loaded_season::LoadedSeason;
use crate::season_change::SeasonChange;
use crate::{App, Refusal};

/// Saves the tables that a change has made others. Of open weeks up to the last paired one (the first week, before
/// any is paired) the rows are saved: any public change may alter them, a name, a rule, a result. The tables
/// of closed weeks are saved whole, from the first that it changes on. Call it after the facts of the act are saved and before
/// the season's version is raised. Returns what it has loaded, of a season that is running.
///
/// # Errors
/// [`Refusal::NotFound`], or an error of the database.
pub(crate) async fn freeze(
    app: &App,
    conn: &mut Conn,
    change: &mut SeasonChange,
) -> Result<Option<(Season, LoadedSeason)>, Refusal> {
    let (season, loaded) = match change.loaded.take() {
        Some((season, loaded)) => (season, loaded),
        None => {
            let season = store::seasons::lock(conn, change.season).await?;
            if season.state != SeasonState::Started {
                return Ok(None);
            }
            let loaded = load_season(conn, app, &season, change.at).await?;
            (season, loaded)
        }
    };
    let (act, _) = change
        .act
        .to_parts()
        .map_err(|cause| Refusal::Internal(cause.to_string()))?;
    let (first, last) = (change.changes_closed_week_from, loaded.last_paired_week());
    for Week { week, facts, .. } in &loaded.weeks {
        let whole = facts.closed_at.is_some();
        if may_table_differ(*week, whole, last, first) {
            let standings = table(&loaded.facts, *week);
            let ledger = standings.ledger.iter().filter(|_| whole);
            let table = FrozenTableDocument {
                as_of: week.number(),
                rows: named_rows(&standings, &loaded.players),
                ledger: ledger.map(Into::into).collect(),
            };
            let meta = table_meta(&season, *week, &act, change.at, whole);
            store::frozen_tables::save_if_changed(conn, season.key(), &meta, table).await?;
        }
    }
    Ok(Some((season, loaded)))
}

fn table_meta(
    season: &Season,
    week: WeekNo,
    act: &str,
    now: Instant,
    whole: bool,
) -> FrozenTableMeta {
    FrozenTableMeta {
        week,
        version: season.version + 1,
        act: act.to_owned(),
        frozen_at: now,
        whole,
    }
}
