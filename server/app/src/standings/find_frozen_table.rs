//! A table as it stood at a version of its season.

use document::table::standings::FrozenTableDocument;
use league::keys::SeasonKey;
use league::week::WeekNo;
use messages::results;
pub use store::frozen_tables::TablePart;

use crate::access::view_season;
use crate::{App, Reason, Refusal, Viewer};

/// A table that was frozen, with the season it is of.
#[derive(Clone, Debug)]
pub struct FrozenTable {
    pub season: String,
    /// The season's version from which on the table was so.
    pub version: i64,
    /// The table; without its lines where only its rows were asked for.
    pub table: FrozenTableDocument,
}

/// The table of `week`, or of the last week that was paired by then.
///
/// # Errors
/// [`Reason::UnknownVersion`] with the first and the last version of which there is one,
/// [`Refusal::NotFound`] where there is none at all.
pub async fn find_frozen_table(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
    week: Option<WeekNo>,
    version: i64,
    part: TablePart,
) -> Result<FrozenTable, Refusal> {
    app.store
        .read(async |conn| {
            let season = view_season(conn, viewer, season).await?.season;
            let oldest =
                store::frozen_tables::find_first_version(conn, season.key(), week, part).await?;
            if !(oldest..=season.version).contains(&version) {
                let newest = season.version;
                let message = results::table_versions(oldest, newest);
                return Err(Refusal::rule(Reason::UnknownVersion, message)
                    .fact("oldest", oldest)
                    .fact("newest", newest));
            }
            let (version, table) =
                store::frozen_tables::find(conn, season.key(), week, version, part).await?;
            Ok(FrozenTable {
                season: season.name,
                version,
                table,
            })
        })
        .await
}
