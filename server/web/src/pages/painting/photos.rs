//! Photos of painted models, for members of the club alone.

use actix_web::http::header::{CACHE_CONTROL, ContentType};
use actix_web::web::{Data, Path};
use actix_web::{HttpResponse, get};
use app::App;
use league::ids::{ClubId, SeasonId};
use league::painting::PhotoDigest;
use serde::Deserialize;
use uuid::Uuid;

use crate::pages::frame::page_request::PageRequest;
use crate::pages::frame::response::PageResult;
use crate::problem::{HttpFault, Problem};

#[derive(Deserialize)]
pub struct PhotoPath {
    club: Uuid,
    season: Uuid,
    photo: String,
}

/// The digest that a photo's name spells.
pub fn digest(name: &str) -> Option<PhotoDigest> {
    document::decode_hex(name).map(PhotoDigest)
}

#[get("/clubs/{club}/seasons/{season}/photos/{photo}")]
pub async fn show_photo(app: Data<App>, request: PageRequest, path: Path<PhotoPath>) -> PageResult {
    let photo = digest(&path.photo).ok_or_else(|| Problem::http(HttpFault::NotFound))?;
    let (club, season) = (ClubId(path.club), SeasonId(path.season));
    let jpeg = app::painting::find_photo(&app, request.viewer, club, season, photo).await?;
    Ok(HttpResponse::Ok()
        .content_type(ContentType::jpeg())
        .insert_header((CACHE_CONTROL, "private, no-store"))
        .body(jpeg))
}
