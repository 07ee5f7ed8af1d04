//! API: the score of a result that is not reported yet.

use actix_web::web::{Data, Path};
use actix_web::{post, web};
use app::App;
use app::results::ScorePreview;
use document::results::BothDocument;
use document::results::{ImpossibleDocument, OutcomeDocument, TypedResultDocument};
use serde::Serialize;
use utoipa::ToSchema;

use crate::authentication::MaybeSignedIn;
use crate::body::Json;
use crate::paths::GamePath;
use crate::problem::ProblemResponses;
use crate::response::ApiResult;

/// What counts would come to.
#[derive(Serialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum ScorePreviewView {
    /// They make a result.
    Possible {
        /// With its score, item by item.
        outcome: OutcomeDocument,
        /// League points of each side with the week's factor; absent for a game struck from the
        /// record.
        #[serde(skip_serializing_if = "Option::is_none")]
        league_points: Option<BothDocument<i32>>,
    },
    /// Some of them cannot be.
    Impossible {
        /// All of those, each with its limit.
        impossible: Vec<ImpossibleDocument>,
    },
}

impl From<ScorePreview> for ScorePreviewView {
    fn from(preview: ScorePreview) -> Self {
        match preview {
            ScorePreview::Possible { outcome, points } => Self::Possible {
                outcome: (&outcome).into(),
                league_points: points.map(|points| BothDocument {
                    first: points.first.get(),
                    second: points.second.get(),
                }),
            },
            ScorePreview::Impossible(impossible) => Self::Impossible {
                impossible: impossible.iter().map(Into::into).collect(),
            },
        }
    }
}

/// Add up counts as a report of them would be: score, league points, or the counts that cannot be
/// with their limits. Nothing is saved.
#[utoipa::path(tag = "results", params(GamePath), security((), ("bearer" = [])), responses((status = 200, body = ScorePreviewView), ProblemResponses))]
#[post("/games/{game}/preview")]
pub async fn preview_score(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<GamePath>,
    body: Json<TypedResultDocument>,
) -> ApiResult<web::Json<ScorePreviewView>> {
    let game = path.key();
    let preview = app::results::preview_score(&app, who.0, game, body.0).await?;
    Ok(web::Json(preview.into()))
}
