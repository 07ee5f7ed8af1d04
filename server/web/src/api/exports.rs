//! The public export of a season.

use actix_web::web::{Data, Path};
use actix_web::{get, web};
use app::Desk;
use document::export::SeasonExportDocument;

use super::seasons::InSeason;
use crate::answer::Answer;
use crate::problem::Problems;
use crate::who::Caller;

/// Everything that may be known of a season, in one file. `tallyhost verify FILE` checks it offline:
/// receipts, draws, proofs, and every round paired again.
#[utoipa::path(tag = "seasons", security((), ("bearer" = [])), responses((status = 200, body = SeasonExportDocument), Problems))]
#[get("/clubs/{club}/seasons/{season}/export")]
pub async fn export_season(
    desk: Data<Desk>,
    who: Caller,
    path: Path<InSeason>,
) -> Answer<web::Json<SeasonExportDocument>> {
    let (club, season) = path.ids();
    Ok(web::Json(
        app::seasons::export_season(&desk, who.0, club, season).await?,
    ))
}
