//! API: the trail of a season.

use actix_web::web::{Data, Path};
use actix_web::{get, web};
use app::App;
use app::seasons::TrailEntry;
use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};
use serde_json::Value;
use utoipa::{IntoParams, ToSchema};
use uuid::Uuid;

use crate::authentication::MaybeSignedIn;
use crate::paths::SeasonPath;
use crate::problem::{Problem, ProblemResponses};
use crate::query_parameters::Query;
use crate::response::ApiResult;

const MAX_LIMIT: u16 = 100;

/// Which part of the trail.
#[derive(Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct TrailQuery {
    /// Entries before this number.
    before: Option<i64>,
    /// At most so many.
    #[param(minimum = 1, maximum = 100)]
    limit: Option<u16>,
}

/// An entry of the trail.
#[derive(Serialize, ToSchema)]
pub struct TrailEntryView {
    /// Its place in the club's chain.
    entry_no: i64,
    /// When.
    at: DateTime<Utc>,
    /// Account of whoever did it; absent when the clock did.
    actor: Option<Uuid>,
    /// The act, by the name of its operation.
    act: String,
    /// What it was about.
    #[schema(value_type = Object)]
    facts: Value,
    /// Digest of the entry before, in hexadecimal.
    previous: String,
    /// Digest of this entry, in hexadecimal.
    digest: String,
}

impl From<TrailEntry> for TrailEntryView {
    fn from(entry: TrailEntry) -> Self {
        Self {
            entry_no: entry.entry_no,
            at: entry.happened_at,
            actor: entry.actor,
            act: entry.act,
            facts: entry.facts,
            previous: hex::encode(entry.previous),
            digest: hex::encode(entry.digest),
        }
    }
}

/// What was done in a season, newest first. Officers see more than others.
#[utoipa::path(tag = "seasons", params(SeasonPath, TrailQuery), security((), ("bearer" = [])), responses((status = 200, body = Vec<TrailEntryView>), ProblemResponses))]
#[get("/trail")]
pub async fn list_trail(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<SeasonPath>,
    page: Query<TrailQuery>,
) -> ApiResult<web::Json<Vec<TrailEntryView>>> {
    let limit = page.limit.unwrap_or(MAX_LIMIT);
    if !(1..=MAX_LIMIT).contains(&limit) {
        let range = 1..=MAX_LIMIT.into();
        return Err(Problem::out_of_range("limit", range, limit.into()));
    }
    let season = path.key();
    let entries = app::seasons::list_trail(&app, who.0, season, page.before, limit).await?;
    Ok(web::Json(
        entries.into_iter().map(TrailEntryView::from).collect(),
    ))
}
