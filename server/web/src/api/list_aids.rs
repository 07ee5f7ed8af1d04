//! What helps a player to write the next list. Nothing here saves anything, and all of it is the
//! player's own.

use actix_web::web::{Data, Path};
use actix_web::{get, post, web};
use app::Desk;
use app::lists::ListChanges;
use document::catalogue_changes::TouchedEntryDocument;
use document::collection::CollectionUnitDocument;
use document::fits::FitsDocument;
use document::list::ArmyListDocument;
use document::list_changes::ListChangeDocument;
use document::reading::ReadingDocument;
use league::week::WeekNo;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::seasons::InSeason;
use super::weeks::InWeek;
use crate::answer::Answer;
use crate::body::Json;
use crate::problem::Problems;
use crate::who::SignedIn;

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
#[utoipa::path(tag = "lists", params(InWeek), responses((status = 200, body = ReadingDocument), Problems))]
#[post("/weeks/{week}/list/read")]
pub async fn read_list(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<InWeek>,
    body: Json<ListTextBody>,
) -> Answer<web::Json<ReadingDocument>> {
    let (club, season, week) = path.ids()?;
    let reading = app::lists::read_list(&desk, who.0, club, season, week, body.0.text).await?;
    Ok(web::Json((&reading).into()))
}

/// What would still fit into a list and keep it as legal as it is.
#[utoipa::path(tag = "lists", params(InWeek), responses((status = 200, body = FitsDocument), Problems))]
#[post("/weeks/{week}/list/fits")]
pub async fn find_fits(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<InWeek>,
    body: Json<ArmyListDocument>,
) -> Answer<web::Json<FitsDocument>> {
    let (club, season, week) = path.ids()?;
    let fits = app::lists::find_fits(&desk, who.0, club, season, week, body.0).await?;
    Ok(web::Json((&fits).into()))
}

/// What a list changes against your last one, unit by unit.
#[utoipa::path(tag = "lists", params(InWeek), responses((status = 200, body = ListChangesView), Problems))]
#[post("/weeks/{week}/list/changes")]
pub async fn find_changes(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<InWeek>,
    body: Json<ArmyListDocument>,
) -> Answer<web::Json<ListChangesView>> {
    let (club, season, week) = path.ids()?;
    let found = app::lists::find_changes(&desk, who.0, club, season, week, body.0).await?;
    Ok(web::Json(found.into()))
}

/// Your collection: every unit of the lists you handed in, with its paint.
#[utoipa::path(tag = "lists", params(InSeason), responses((status = 200, body = Vec<CollectionUnitDocument>), Problems))]
#[get("/collection")]
pub async fn find_collection(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<InSeason>,
) -> Answer<web::Json<Vec<CollectionUnitDocument>>> {
    let (club, season) = path.ids();
    let units = app::lists::find_collection(&desk, who.0, club, season).await?;
    Ok(web::Json(units.iter().map(Into::into).collect()))
}
