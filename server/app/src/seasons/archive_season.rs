//! The archive of a season that is over: its export for good, to those who may see it.

use document::export::SeasonExportDocument;
use league::ids::{ClubId, SeasonId};

use super::export_season;
use crate::{Desk, Reason, Refusal, Viewer};

/// The final table, every line behind it, games, painting, players and awards. Only a later ruling
/// changes them, under a new version.
///
/// # Errors
/// [`Refusal::NotFound`]; [`Reason::SeasonState`] before the season has ended.
pub async fn archive_season(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
) -> Result<SeasonExportDocument, Refusal> {
    let export = export_season(desk, viewer, club, season).await?;
    match export.seed {
        Some(_) => Ok(export),
        None => Err(Refusal::rule(
            Reason::SeasonState,
            "The archive is made once the season has ended.",
        )),
    }
}
