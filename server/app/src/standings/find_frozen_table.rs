//! A table as it stood at a version of its season.

use document::standings::FrozenTableDocument;
use league::ids::{ClubId, SeasonId};
use league::week::WeekNo;
pub use store::frozen_tables::Part;

use crate::seasons::look::look;
use crate::{Desk, Reason, Refusal, Viewer};

/// A table that was frozen, with the season it is of.
#[derive(Clone, Debug)]
pub struct FrozenTable {
    /// The season's name.
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
    desk: &Desk,
    viewer: Viewer,
    (club, season): (ClubId, SeasonId),
    week: Option<WeekNo>,
    version: i64,
    part: Part,
) -> Result<FrozenTable, Refusal> {
    desk.store
        .read(async |conn| {
            let season = look(conn, viewer, club, season).await?.season;
            let oldest =
                store::frozen_tables::find_first(conn, club, season.id, week, part).await?;
            if !(oldest..=season.version).contains(&version) {
                let newest = season.version;
                let detail = format!("There are versions {oldest} to {newest} of this table.");
                return Err(Refusal::rule(Reason::UnknownVersion, detail)
                    .fact("oldest", oldest)
                    .fact("newest", newest));
            }
            let (version, table) =
                store::frozen_tables::find(conn, club, season.id, week, version, part).await?;
            Ok(FrozenTable {
                season: season.name,
                version,
                table,
            })
        })
        .await
}
