//! API: aids for writing the next list. Nothing here saves anything, and all of it is the player's own.

use actix_web::web::{Data, Path};
use actix_web::{get, post, web};
use app::App;
use app::lists::ListChanges;
use document::catalogue::changes::TouchedEntryDocument;
use document::lists::army_list::ArmyListDocument;
use document::lists::changes::ListChangeDocument;
use document::lists::collection::CollectionUnitDocument;
use document::lists::fits::FitsDocument;
use document::lists::reading::ReadingDocument;
use league::week::WeekNo;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::authentication::SignedIn;
use crate::body::Json;
use crate::paths::{SeasonPath, WeekPath};
use crate::problem::ProblemResponses;
use crate::response::ApiResult;

/// A list as people write it.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ListTextBody {
    /// The text, line by line.
    #[schema(example = "2x Rushlight Kin, 6 models, marsh gas: 120")]
    text: String,
}

/// A list beside your last one.
#[derive(Serialize, ToSchema)]
pub struct ListChangesView {
    /// The week of the last list; absent when this is your first: then everything is added.
    #[serde(skip_serializing_if = "Option::is_none")]
    since: Option<u8>,
    /// The last list's units in their order, then those that are new.
    changes: Vec<ListChangeDocument>,
    /// Present when this week is pinned to another version of the catalogue than the last list.
    #[serde(skip_serializing_if = "Option::is_none")]
    catalogue: Option<VersionChangeView>,
}

/// What this week's version of the catalogue makes of your last list, as it was.
#[derive(Serialize, ToSchema)]
pub struct VersionChangeView {
    /// The version of the last list.
    before: i32,
    /// The version of this week.
    now: i32,
    /// Its entries whose points or availability differ. What is no longer offered need not return and
    /// does not count as leaving.
    touched: Vec<TouchedEntryDocument>,
}

impl From<ListChanges> for ListChangesView {
    fn from(found: ListChanges) -> Self {
        Self {
            since: found.since.map(WeekNo::number),
            changes: found.changes.iter().map(Into::into).collect(),
            catalogue: found.catalogue.map(|change| VersionChangeView {
                before: change.before,
                now: change.now,
                touched: change.touched.iter().map(Into::into).collect(),
            }),
        }
    }
}

/// Read a pasted text into a list: line by line what was understood, guessed or not understood. Units
/// that can be those of your last list keep their keys.
#[utoipa::path(tag = "lists", params(WeekPath), responses((status = 200, body = ReadingDocument), ProblemResponses))]
#[post("/weeks/{week}/list/read")]
pub async fn read_list(
    app: Data<App>,
    who: SignedIn,
    path: Path<WeekPath>,
    body: Json<ListTextBody>,
) -> ApiResult<web::Json<ReadingDocument>> {
    let week = path.key()?;
    let reading = app::lists::read_list(&app, who.0, week, body.0.text).await?;
    Ok(web::Json((&reading).into()))
}

/// What would still fit into a list and keep it as legal as it is.
#[utoipa::path(tag = "lists", params(WeekPath), responses((status = 200, body = FitsDocument), ProblemResponses))]
#[post("/weeks/{week}/list/fits")]
pub async fn find_fits(
    app: Data<App>,
    who: SignedIn,
    path: Path<WeekPath>,
    body: Json<ArmyListDocument>,
) -> ApiResult<web::Json<FitsDocument>> {
    let week = path.key()?;
    let fits = app::lists::find_fits(&app, who.0, week, body.0).await?;
    Ok(web::Json((&fits).into()))
}

/// What a list changes against your last one, unit by unit.
#[utoipa::path(tag = "lists", params(WeekPath), responses((status = 200, body = ListChangesView), ProblemResponses))]
#[post("/weeks/{week}/list/changes")]
pub async fn find_changes(
    app: Data<App>,
    who: SignedIn,
    path: Path<WeekPath>,
    body: Json<ArmyListDocument>,
) -> ApiResult<web::Json<ListChangesView>> {
    let week = path.key()?;
    let found = app::lists::find_changes(&app, who.0, week, body.0).await?;
    Ok(web::Json(found.into()))
}

/// Your collection: every unit of the lists you handed in, with its paint.
#[utoipa::path(tag = "lists", params(SeasonPath), responses((status = 200, body = Vec<CollectionUnitDocument>), ProblemResponses))]
#[get("/collection")]
pub async fn find_collection(
    app: Data<App>,
    who: SignedIn,
    path: Path<SeasonPath>,
) -> ApiResult<web::Json<Vec<CollectionUnitDocument>>> {
    let season = path.key();
    let units = app::lists::find_collection(&app, who.0, season).await?;
    Ok(web::Json(units.iter().map(Into::into).collect()))
}
