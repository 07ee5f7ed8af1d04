//! Photos of painted models, for members of the club alone.

use actix_web::http::header::{CACHE_CONTROL, ContentType};
use actix_web::web::{Data, Path};
use actix_web::{HttpResponse, get};
use app::App;

use crate::pages::frame::page_request::PageRequest;
use crate::pages::frame::response::PageResult;
use crate::paths::PhotoPath;

#[get("/clubs/{club}/seasons/{season}/photos/{photo}")]
pub async fn show_photo(app: Data<App>, request: PageRequest, path: Path<PhotoPath>) -> PageResult {
    let (season, photo) = path.ids()?;
    let jpeg = app::painting::find_photo(&app, request.viewer, season, photo).await?;
    Ok(HttpResponse::Ok()
        .content_type(ContentType::jpeg())
        .insert_header((CACHE_CONTROL, "private, no-store"))
        .body(jpeg))
}
