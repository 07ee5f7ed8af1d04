//! The archive of an ended season: its final export.

use document::export::SeasonExportDocument;
use league::keys::SeasonKey;
use messages::seasons;

use super::export_season;
use crate::{App, Reason, Refusal, Viewer};

/// The final table, every line behind it, games, painting, players and awards. Only a later ruling
/// changes them, under a new version.
///
/// # Errors
/// [`Refusal::NotFound`]; [`Reason::SeasonState`] before the season has ended.
pub async fn archive_season(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
) -> Result<SeasonExportDocument, Refusal> {
    let export = export_season(app, viewer, season).await?;
    match export.seed {
        Some(_) => Ok(export),
        None => Err(Refusal::rule(
            Reason::SeasonState,
            seasons::archive_too_early(),
        )),
    }
}
