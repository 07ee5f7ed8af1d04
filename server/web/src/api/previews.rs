//! The sum as it is typed.

use actix_web::web::{Data, Path};
use actix_web::{post, web};
use app::Desk;
use app::results::ScorePreview;
use document::both::BothDocument;
use document::result::{ImpossibleDocument, OutcomeDocument, TypedResultDocument};
use serde::Serialize;
use utoipa::ToSchema;

use super::games::OneGame;
use crate::answer::Answer;
use crate::body::Json;
use crate::problem::Problems;
use crate::who::Caller;

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
#[utoipa::path(tag = "results", params(OneGame), security((), ("bearer" = [])), responses((status = 200, body = ScorePreviewView), Problems))]
#[post("/games/{game}/preview")]
pub async fn preview_score(
    desk: Data<Desk>,
    who: Caller,
    path: Path<OneGame>,
    body: Json<TypedResultDocument>,
) -> Answer<web::Json<ScorePreviewView>> {
    let (club, season, game) = path.ids();
    let preview = app::results::preview_score(&desk, who.0, club, season, game, body.0).await?;
    Ok(web::Json(preview.into()))
}
