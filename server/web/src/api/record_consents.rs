//! API: consent to a public record over the seasons of a club.

use actix_web::web::{Data, Path};
use actix_web::{delete, get, put, web};
use app::App;
use app::clubs::RecordConsent;
use chrono::{DateTime, Utc};
use league::ids::ClubId;
use serde::Serialize;
use utoipa::ToSchema;
use uuid::Uuid;

use crate::authentication::SignedIn;
use crate::paths::ClubPath;
use crate::problem::ProblemResponses;
use crate::response::{ApiResult, NoContent};

/// Your agreement that everybody reads your record over this club's public seasons.
#[derive(Serialize, ToSchema)]
pub struct RecordConsentView {
    /// Whether you agree; nobody does unless they say so.
    agreed: bool,
    /// Since when.
    #[serde(skip_serializing_if = "Option::is_none")]
    agreed_at: Option<DateTime<Utc>>,
    /// Name of the record, which leads to nothing else of yours.
    #[serde(skip_serializing_if = "Option::is_none")]
    record: Option<Uuid>,
    /// Where everybody reads it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(
        example = "/public/clubs/0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e64/records/7d9f7c9e-3b1e-4f0b-9c55-0a1f6a2f7f10"
    )]
    address: Option<String>,
}

impl RecordConsentView {
    fn new(club: ClubId, open: Option<RecordConsent>) -> Self {
        Self {
            agreed: open.is_some(),
            agreed_at: open.map(|open| open.agreed_at),
            record: open.map(|open| open.record),
            address: open.map(|open| format!("/public/clubs/{club}/records/{}", open.record)),
        }
    }
}

/// Whether everybody may read your record.
#[utoipa::path(tag = "clubs", params(ClubPath), responses((status = 200, body = RecordConsentView), ProblemResponses))]
#[get("/clubs/{club}/record-consent")]
pub async fn find_record_consent(
    app: Data<App>,
    who: SignedIn,
    path: Path<ClubPath>,
) -> ApiResult<web::Json<RecordConsentView>> {
    let club = path.id();
    let open = app::clubs::find_record_consent(&app, who.0, club).await?;
    Ok(web::Json(RecordConsentView::new(club, open)))
}

/// Agree that everybody reads your record. It ties the names together under which you played.
#[utoipa::path(tag = "clubs", params(ClubPath), responses((status = 200, body = RecordConsentView), ProblemResponses))]
#[put("/clubs/{club}/record-consent")]
pub async fn create_record_consent(
    app: Data<App>,
    who: SignedIn,
    path: Path<ClubPath>,
) -> ApiResult<web::Json<RecordConsentView>> {
    let club = path.id();
    let open = app::clubs::create_record_consent(&app, who.0, club).await?;
    Ok(web::Json(RecordConsentView::new(club, Some(open))))
}

/// Take your agreement back. From the next request on nobody reads the record.
#[utoipa::path(tag = "clubs", params(ClubPath), responses((status = 204, description = "Taken back"), ProblemResponses))]
#[delete("/clubs/{club}/record-consent")]
pub async fn delete_record_consent(
    app: Data<App>,
    who: SignedIn,
    path: Path<ClubPath>,
) -> ApiResult<NoContent> {
    app::clubs::delete_record_consent(&app, who.0, path.id()).await?;
    Ok(NoContent)
}
