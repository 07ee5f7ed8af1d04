//! The table of a closed week as it stood at a version of its season.

use document::standings::FrozenTableDocument;
use league::ids::{ClubId, SeasonId};
use league::week::WeekNo;

use crate::seasons::look::look;
use crate::{Desk, Refusal, Viewer};

/// A table that was frozen, with the season it is of.
#[derive(Clone, Debug)]
pub struct FrozenTable {
    /// The season's name.
    pub season: String,
    /// The season's version from which on the table was so.
    pub version: i64,
    /// The table.
    pub table: FrozenTableDocument,
}

/// # Errors
/// [`Refusal::NotFound`] also where the week was not closed yet at that version.
pub async fn find_frozen_table(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
    version: i64,
) -> Result<FrozenTable, Refusal> {
    desk.store
        .read(async |conn| {
            let season = look(conn, viewer, club, season).await?.season;
            let (version, table) =
                store::frozen_tables::find(conn, club, season.id, week, version).await?;
            Ok(FrozenTable {
                season: season.name,
                version,
                table,
            })
        })
        .await
}
