//! Catalogues and their versions.

use actix_web::web::{Data, Path};
use actix_web::{HttpRequest, get, post, web};
use app::Desk;
use app::catalogues::{Catalogue, CatalogueSource};
use document::catalogue::CatalogueDocument;
use league::ids::{CatalogueId, ClubId};
use serde::{Deserialize, Serialize};
use utoipa::{IntoParams, ToSchema};
use uuid::Uuid;

use super::clubs::InClub;
use crate::answer::{Answer, Created};
use crate::body::{self, CatalogueBytes, Json};
use crate::problem::Problems;
use crate::who::SignedIn;

/// A catalogue of a club.
#[derive(Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct OneCatalogue {
    /// The club.
    club: Uuid,
    /// The catalogue.
    catalogue: Uuid,
}

/// A version of a catalogue.
#[derive(Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct OneVersion {
    /// The club.
    club: Uuid,
    /// The catalogue.
    catalogue: Uuid,
    /// Its number, from 1.
    number: i32,
}

/// What it takes to begin a catalogue.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CatalogueBody {
    /// Name.
    #[schema(example = "Quernlight Reckoning", max_length = 60)]
    name: String,
}

/// A catalogue.
#[derive(Serialize, ToSchema)]
pub struct CatalogueView {
    /// Identity.
    id: Uuid,
    /// Name.
    name: String,
    /// Its newest version; 0 before the first import.
    newest: i32,
}

/// A new version.
#[derive(Serialize, ToSchema)]
pub struct VersionView {
    /// Its number.
    number: i32,
}

impl From<Catalogue> for CatalogueView {
    fn from(catalogue: Catalogue) -> Self {
        Self {
            id: catalogue.id.0,
            name: catalogue.name,
            newest: catalogue.newest,
        }
    }
}

/// Begin a catalogue.
#[utoipa::path(tag = "catalogues", responses((status = 201, body = CatalogueView), Problems))]
#[post("/clubs/{club}/catalogues")]
pub async fn create_catalogue(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<InClub>,
    body: Json<CatalogueBody>,
) -> Answer<Created<CatalogueView>> {
    let made = app::catalogues::create_catalogue(&desk, who.0, path.id(), &body.0.name).await?;
    let location = format!("/api/v1/clubs/{}/catalogues/{}", path.id(), made.id);
    Ok(Created {
        location,
        view: made.into(),
    })
}

/// The catalogues of a club, by name.
#[utoipa::path(tag = "catalogues", responses((status = 200, body = Vec<CatalogueView>), Problems))]
#[get("/clubs/{club}/catalogues")]
pub async fn list_catalogues(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<InClub>,
) -> Answer<web::Json<Vec<CatalogueView>>> {
    let catalogues = app::catalogues::list_catalogues(&desk, who.0, path.id()).await?;
    Ok(web::Json(
        catalogues.into_iter().map(CatalogueView::from).collect(),
    ))
}

/// Import a version from JSON, or from a spreadsheet's CSV sent as `text/csv`. All or nothing; every
/// fault is named with its place.
#[utoipa::path(
    tag = "catalogues",
    request_body(content(
        (CatalogueDocument = "application/json"),
        (String = "text/csv"),
    )),
    responses((status = 201, body = VersionView), Problems)
)]
#[post("/clubs/{club}/catalogues/{catalogue}/versions")]
pub async fn create_catalogue_version(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<OneCatalogue>,
    request: HttpRequest,
    bytes: CatalogueBytes,
) -> Answer<Created<VersionView>> {
    let source = if body::is_csv(&request) {
        CatalogueSource::Csv(bytes.0.to_vec())
    } else {
        body::must_be_json(&request)?;
        CatalogueSource::Json(body::parse(&bytes.0)?)
    };
    let (club, id) = (ClubId(path.club), CatalogueId(path.catalogue));
    let number = app::catalogues::create_catalogue_version(&desk, who.0, club, id, source).await?;
    let location = format!("/api/v1/clubs/{club}/catalogues/{id}/versions/{number}");
    Ok(Created {
        location,
        view: VersionView { number },
    })
}

/// A version of a catalogue. It never changes.
#[utoipa::path(tag = "catalogues", responses((status = 200, body = CatalogueDocument), Problems))]
#[get("/clubs/{club}/catalogues/{catalogue}/versions/{number}")]
pub async fn find_catalogue_version(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<OneVersion>,
) -> Answer<web::Json<CatalogueDocument>> {
    let (club, id) = (ClubId(path.club), CatalogueId(path.catalogue));
    let version =
        app::catalogues::find_catalogue_version(&desk, who.0, club, id, path.number).await?;
    Ok(web::Json(version))
}
