//! API: catalogues and their versions.

use actix_web::web::{Data, Path};
use actix_web::{HttpRequest, get, post, web};
use app::App;
use app::catalogues::{CatalogueChanges, CatalogueRow, CatalogueSource, OpenedLists, TouchedList};
use document::catalogue::CatalogueDocument;
use document::catalogue::changes::{TouchedEntryDocument, UnitDifferenceDocument};
use league::catalogue::diff::summary;
use league::ids::{CatalogueId, ClubId};
use serde::{Deserialize, Serialize};
use utoipa::{IntoParams, ToSchema};
use uuid::Uuid;

use crate::authentication::SignedIn;
use crate::body::{self, CatalogueBytes, Json};
use crate::paths::ClubPath;
use crate::problem::ProblemResponses;
use crate::query_parameters::Query;
use crate::response::{ApiResult, Created};

/// A catalogue of a club.
#[derive(Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct CataloguePath {
    /// The club.
    club: Uuid,
    /// The catalogue.
    catalogue: Uuid,
}

/// A version of a catalogue.
#[derive(Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct VersionPath {
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
    #[schema(example = "Quernlight Reckoning", min_length = 1, max_length = 60)]
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
pub struct SinceQuery {
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
            summary: summary(&changes.units).to_string(),
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

impl From<CatalogueRow> for CatalogueView {
    fn from(catalogue: CatalogueRow) -> Self {
        Self {
            id: catalogue.id.0,
            name: catalogue.name,
            newest: catalogue.newest,
        }
    }
}

/// Begin a catalogue.
#[utoipa::path(tag = "catalogues", params(ClubPath), responses((status = 201, body = CatalogueView), ProblemResponses))]
#[post("/clubs/{club}/catalogues")]
pub async fn create_catalogue(
    app: Data<App>,
    who: SignedIn,
    path: Path<ClubPath>,
    body: Json<CatalogueBody>,
) -> ApiResult<Created<CatalogueView>> {
    let made = app::catalogues::create_catalogue(&app, who.0, path.id(), &body.0.name).await?;
    let location = format!("/api/v1/clubs/{}/catalogues/{}", path.id(), made.id);
    Ok(Created {
        location,
        view: made.into(),
    })
}

/// The catalogues of a club, by name.
#[utoipa::path(tag = "catalogues", params(ClubPath), responses((status = 200, body = Vec<CatalogueView>), ProblemResponses))]
#[get("/clubs/{club}/catalogues")]
pub async fn list_catalogues(
    app: Data<App>,
    who: SignedIn,
    path: Path<ClubPath>,
) -> ApiResult<web::Json<Vec<CatalogueView>>> {
    let catalogues = app::catalogues::list_catalogues(&app, who.0, path.id()).await?;
    Ok(web::Json(
        catalogues.into_iter().map(CatalogueView::from).collect(),
    ))
}

/// Import a version from JSON, or from a spreadsheet's CSV sent as `text/csv`. All or nothing; every
/// fault is named with its place.
///
/// CSV is read as RFC 4180 describes it, in UTF-8 and with commas, one row for each unit. The first row
/// names the columns, in any order:
///
/// | column | holds | example |
/// |---|---|---|
/// | `faction` | name of the faction | `Sluicebond Syndics` |
/// | `unit` | name of the unit | `Pole-Hands` |
/// | `kind` | unit kind | `Line` |
/// | `models` | one size, a range, or several sizes | `3`, `8-16`, `5\|10` |
/// | `points` | points of the (smallest) size, or of each of several sizes | `64`, `55\|100` |
/// | `minutes_per_model` | painting minutes of one model | `25` |
/// | `points_per_extra_model` | may be missing or empty: for a range, points of each model above the smallest size | `8` |
/// | `keywords` | may be missing or empty: keywords with `;` between them | `toughness 1; on foot` |
/// | `options` | may be missing or empty: options with `;` between them | `pennant 10; tide bell 15` |
/// | `joins` | may be missing or empty: keyword of the units that a leader may join | `on foot` |
/// | `most_per_army` | may be missing or empty | `1` |
///
/// An option (in ABNF, RFC 5234) is `name SP points [" per model"] [" up to " limit] [" group " name]`:
/// `points` and `limit` are whole numbers; `per model` counts the points once for each model, `up to`
/// bounds how often a unit takes it, and of the options of one `group` a unit takes one.
#[utoipa::path(
    tag = "catalogues", params(CataloguePath),
    request_body(content(
        (CatalogueDocument = "application/json"),
        (String = "text/csv", example = json!("faction,unit,kind,models,points,points_per_extra_model,keywords,options,minutes_per_model,joins,most_per_army\r\nSluicebond Syndics,Sluicewarden,Leader,1,70,,toughness 3,lockstaff 10 group arms; tide bell 15,150,on foot,1\r\nSluicebond Syndics,Pole-Hands,Line,8-16,64,8,toughness 1; on foot,pennant 10; long poles 1 per model,25,,\r\nSluicebond Syndics,Culvert Runners,Swift,5|10,55|100,,toughness 1,smoke jars 10 up to 2,25,,\r\n")),
    )),
    responses((status = 201, body = VersionView), ProblemResponses)
)]
#[post("/clubs/{club}/catalogues/{catalogue}/versions")]
pub async fn create_catalogue_version(
    app: Data<App>,
    who: SignedIn,
    path: Path<CataloguePath>,
    request: HttpRequest,
    bytes: CatalogueBytes,
) -> ApiResult<Created<VersionView>> {
    let source = if body::is_csv(&request) {
        CatalogueSource::Csv(bytes.0.to_vec())
    } else {
        body::require_json(&request)?;
        CatalogueSource::Json(body::parse(&bytes.0)?)
    };
    let (club, id) = (ClubId(path.club), CatalogueId(path.catalogue));
    let number = app::catalogues::create_catalogue_version(&app, who.0, club, id, source).await?;
    let location = format!("/api/v1/clubs/{club}/catalogues/{id}/versions/{number}");
    Ok(Created {
        location,
        view: VersionView { number },
    })
}

/// A version of a catalogue. It never changes.
#[utoipa::path(tag = "catalogues", params(VersionPath), responses((status = 200, body = CatalogueDocument), ProblemResponses))]
#[get("/clubs/{club}/catalogues/{catalogue}/versions/{number}")]
pub async fn find_catalogue_version(
    app: Data<App>,
    who: SignedIn,
    path: Path<VersionPath>,
) -> ApiResult<web::Json<CatalogueDocument>> {
    let (club, id) = (ClubId(path.club), CatalogueId(path.catalogue));
    let version =
        app::catalogues::find_catalogue_version(&app, who.0, club, id, path.number).await?;
    Ok(web::Json(version))
}

/// What a version changes since another, and what of that touches lists that you may know.
#[utoipa::path(tag = "catalogues", params(VersionPath, SinceQuery), responses((status = 200, body = CatalogueChangesView), ProblemResponses))]
#[get("/clubs/{club}/catalogues/{catalogue}/versions/{number}/changes")]
pub async fn find_catalogue_changes(
    app: Data<App>,
    who: SignedIn,
    path: Path<VersionPath>,
    query: Query<SinceQuery>,
) -> ApiResult<web::Json<CatalogueChangesView>> {
    let (club, id) = (ClubId(path.club), CatalogueId(path.catalogue));
    let (since, number) = (query.since, path.number);
    let found =
        app::catalogues::find_catalogue_changes(&app, who.0, club, id, since, number).await?;
    Ok(web::Json(found.into()))
}
