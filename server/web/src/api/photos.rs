//! API: photos of painted models.

use actix_web::http::header::{CACHE_CONTROL, ContentType};
use actix_web::web::{Data, Path};
use actix_web::{HttpResponse, delete, get, post};
use app::App;
use league::ids::{ClubId, SeasonId};
use league::painting::PhotoDigest;
use serde::{Deserialize, Serialize};
use utoipa::{IntoParams, ToSchema};
use uuid::Uuid;

use super::seasons::SeasonPath;
use crate::authentication::{MaybeSignedIn, SignedIn};
use crate::body::PhotoBytes;
use crate::problem::{HttpFault, Problem, ProblemResponses};
use crate::response::{ApiResult, Created, NoContent};

const CAUTION: &str = "Show models only: no faces, no people, above all no minors, and nothing that \
                       tells where somebody lives. You can take the photo away again at any time.";

/// A photo's address.
#[derive(Clone, Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct PhotoPath {
    /// The club.
    club: Uuid,
    /// The season.
    season: Uuid,
    /// The photo: 64 hexadecimal digits.
    photo: String,
}

impl PhotoPath {
    /// # Errors
    /// 404 for what cannot be a photo's name.
    fn ids(&self) -> Result<(ClubId, SeasonId, PhotoDigest), Problem> {
        let digest = digest(&self.photo).ok_or_else(|| Problem::http(HttpFault::NotFound))?;
        Ok((ClubId(self.club), SeasonId(self.season), digest))
    }
}

/// The digest that a photo's name spells.
pub fn digest(name: &str) -> Option<PhotoDigest> {
    document::decode_hex(name).map(PhotoDigest)
}

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
    let (club, season) = path.ids();
    let digest = app::painting::create_photo(&app, who.0, club, season, body.0).await?;
    let photo = document::encode_hex(&digest.0);
    Ok(Created {
        location: format!("/api/v1/clubs/{club}/seasons/{season}/photos/{photo}"),
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
    let (club, season, photo) = path.ids()?;
    let jpeg = app::painting::find_photo(&app, who.0, club, season, photo).await?;
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
    let (club, season, photo) = path.ids()?;
    app::painting::delete_photo(&app, who.0, club, season, photo).await?;
    Ok(NoContent)
}
