//! Photos of painted models on pages: for the club alone.

use actix_web::http::header::{CACHE_CONTROL, ContentType};
use actix_web::web::{Data, Path};
use actix_web::{HttpResponse, get};
use app::Desk;
use league::ids::{ClubId, SeasonId};
use league::painting::PhotoDigest;
use serde::Deserialize;
use uuid::Uuid;

use super::answer::PageAnswer;
use super::visit::Visit;
use crate::problem::{Problem, WireFault};

/// A photo's address.
#[derive(Deserialize)]
pub struct InPhoto {
    club: Uuid,
    season: Uuid,
    photo: String,
}

/// The digest that a photo's name spells.
pub fn digest(name: &str) -> Option<PhotoDigest> {
    document::unhex(name).map(PhotoDigest)
}

/// A photo.
#[get("/clubs/{club}/seasons/{season}/photos/{photo}")]
pub async fn show_photo(desk: Data<Desk>, visit: Visit, path: Path<InPhoto>) -> PageAnswer {
    let photo = digest(&path.photo).ok_or_else(|| Problem::wire(WireFault::NotFound))?;
    let (club, season) = (ClubId(path.club), SeasonId(path.season));
    let jpeg = app::painting::find_photo(&desk, visit.viewer, club, season, photo).await?;
    Ok(HttpResponse::Ok()
        .content_type(ContentType::jpeg())
        .insert_header((CACHE_CONTROL, "private, no-store"))
        .body(jpeg))
}
