//! API: photos of painted models.

use actix_web::http::header::{CACHE_CONTROL, ContentType};
use actix_web::web::{Data, Path};
use actix_web::{HttpResponse, delete, get, post};
use app::App;
use serde::Serialize;
use utoipa::ToSchema;

use super::addresses;
use crate::authentication::{MaybeSignedIn, SignedIn};
use crate::body::PhotoBytes;
use crate::paths::{PhotoPath, SeasonPath};
use crate::problem::ProblemResponses;
use crate::response::{ApiResult, Created, NoContent};

const CAUTION: &str = "Show models only: no faces, no people, above all no minors, and nothing that \
                       tells where somebody lives. You can take the photo away again at any time.";

/// A photo that was taken in.
#[derive(Serialize, ToSchema)]
pub struct PhotoView {
    /// Its name, for claims: the SHA-256 of its pixels.
    photo: String,
    /// What must not be on it.
    caution: &'static str,
}

/// Send a photo of painted models as JPEG, PNG or WebP: at most 10 MiB, 40 million pixels and
/// 12,000 a side, and 60 photos of one player in a season. It is turned upright and written anew, without place, time or camera; the file that
/// was sent is not kept. Show models only: no faces, no people, above all no minors; a minor's
/// account sends none. The club's and local rules on pictures go first.
#[utoipa::path(
    tag = "painting", params(SeasonPath),
    request_body(content((PhotoBytes = "image/jpeg"), (PhotoBytes = "image/png"), (PhotoBytes = "image/webp"))),
    responses((status = 201, body = PhotoView), ProblemResponses)
)]
#[post("/photos")]
pub async fn create_photo(
    app: Data<App>,
    who: SignedIn,
    path: Path<SeasonPath>,
    body: PhotoBytes,
) -> ApiResult<Created<PhotoView>> {
    let season = path.key();
    let digest = app::painting::create_photo(&app, who.0, season, body.0).await?;
    let photo = hex::encode(digest.0);
    Ok(Created {
        location: format!("{}/photos/{photo}", addresses::season(season)),
        view: PhotoView {
            photo,
            caution: CAUTION,
        },
    })
}

/// A photo, for the club alone: your own, and those of claims of weeks whose lists are opened.
#[utoipa::path(tag = "painting", params(PhotoPath), security((), ("bearer" = [])), responses((status = 200, content_type = "image/jpeg", body = PhotoBytes), ProblemResponses))]
#[get("/photos/{photo}")]
pub async fn find_photo(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<PhotoPath>,
) -> ApiResult<HttpResponse> {
    let (season, photo) = path.ids()?;
    let jpeg = app::painting::find_photo(&app, who.0, season, photo).await?;
    Ok(HttpResponse::Ok()
        .content_type(ContentType::jpeg())
        .insert_header((CACHE_CONTROL, "private, no-store"))
        .body(jpeg))
}

/// Take a photo away: one of your own, or any as a referee. What was verified by it stands.
#[utoipa::path(tag = "painting", params(PhotoPath), responses((status = 204, description = "Gone"), ProblemResponses))]
#[delete("/photos/{photo}")]
pub async fn delete_photo(
    app: Data<App>,
    who: SignedIn,
    path: Path<PhotoPath>,
) -> ApiResult<NoContent> {
    let (season, photo) = path.ids()?;
    app::painting::delete_photo(&app, who.0, season, photo).await?;
    Ok(NoContent)
}
