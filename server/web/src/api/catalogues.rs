//! Catalogues and their versions.

use actix_web::web::{Data, Path, Query};
use actix_web::{HttpRequest, get, post, web};
use app::Desk;
use app::catalogues::{Catalogue, CatalogueChanges, CatalogueSource, OpenedLists, TouchedList};
use document::catalogue::CatalogueDocument;
use document::catalogue_changes::{TouchedEntryDocument, UnitDifferenceDocument};
use league::catalogue::diff::summary;
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

/// Against which version.
#[derive(Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct Since {
    /// Number of the other version.
    #[param(minimum = 1)]
    since: i32,
}

/// What differs between two versions.
#[derive(Serialize, ToSchema)]
pub struct CatalogueChangesView {
    /// In one phrase.
    #[schema(example = "3 units dearer, 1 gone")]
    summary: String,
    /// Every unit that differs.
    units: Vec<UnitDifferenceDocument>,
    /// Your own newest list in each running season, where it is touched.
    own: Vec<TouchedListView>,
    /// For those who run seasons: how many of the lists opened last are touched.
    opened: Vec<OpenedListsView>,
}

/// A list of yours that is touched. It keeps the points of its own version.
#[derive(Serialize, ToSchema)]
pub struct TouchedListView {
    /// In which season.
    season: Uuid,
    /// For which week.
    week: u8,
    /// Whether it was handed in; a draft otherwise.
    sealed: bool,
    /// The entries that are touched.
    entries: Vec<TouchedEntryDocument>,
}

/// The newest opened lists of a running season.
#[derive(Serialize, ToSchema)]
pub struct OpenedListsView {
    /// In which season.
    season: Uuid,
    /// The last week whose lists are opened.
    week: u8,
    /// Lists opened in that week.
    lists: usize,
    /// Those that are touched.
    touched: usize,
}

impl From<CatalogueChanges> for CatalogueChangesView {
    fn from(changes: CatalogueChanges) -> Self {
        Self {
            summary: summary(&changes.units),
            units: changes.units.iter().map(Into::into).collect(),
            own: changes.own.into_iter().map(Into::into).collect(),
            opened: changes.opened.into_iter().map(Into::into).collect(),
        }
    }
}

impl From<TouchedList> for TouchedListView {
    fn from(list: TouchedList) -> Self {
        Self {
            season: list.season.0,
            week: list.week.number(),
            sealed: list.sealed,
            entries: list.entries.iter().map(Into::into).collect(),
        }
    }
}

impl From<OpenedLists> for OpenedListsView {
    fn from(opened: OpenedLists) -> Self {
        Self {
            season: opened.season.0,
            week: opened.week.number(),
            lists: opened.lists,
            touched: opened.touched,
        }
    }
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

/// What a version changes since another, and what of that touches lists that you may know.
#[utoipa::path(tag = "catalogues", responses((status = 200, body = CatalogueChangesView), Problems))]
#[get("/clubs/{club}/catalogues/{catalogue}/versions/{number}/changes")]
pub async fn find_catalogue_changes(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<OneVersion>,
    query: Query<Since>,
) -> Answer<web::Json<CatalogueChangesView>> {
    let (club, id) = (ClubId(path.club), CatalogueId(path.catalogue));
    let (since, number) = (query.since, path.number);
    let found =
        app::catalogues::find_catalogue_changes(&desk, who.0, club, id, since, number).await?;
    Ok(web::Json(found.into()))
}
