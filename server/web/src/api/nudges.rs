//! Reminding people of what they owe.

use actix_web::web::{Data, Path};
use actix_web::{post, web};
use app::Desk;
use app::nudges::{About, Nudged};
use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

use super::weeks::InWeek;
use crate::answer::Answer;
use crate::body::Json;
use crate::problem::Problems;
use crate::who::SignedIn;

/// What people are reminded of.
#[derive(Clone, Copy, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum AboutWord {
    /// A list that is not handed in.
    Lists,
    /// A game whose night has begun and that nobody has reported.
    Results,
}

/// What to remind people of.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct NudgeBody {
    /// Of what.
    about: AboutWord,
}

/// Whom a reminder concerns.
#[derive(Serialize, ToSchema)]
pub struct NudgeView {
    /// Everybody who owes it now.
    players: Vec<Uuid>,
    /// When they were reminded.
    nudged_at: DateTime<Utc>,
    /// From when on people may be reminded of this again.
    again_from: DateTime<Utc>,
}

impl From<Nudged> for NudgeView {
    fn from(nudged: Nudged) -> Self {
        Self {
            players: nudged.players.into_iter().map(|player| player.0).collect(),
            nudged_at: nudged.at,
            again_from: nudged.again_from,
        }
    }
}

/// Remind everybody who owes a list or a result: a notice on their own page, for as long as they owe it.
/// At most once in twelve hours.
#[utoipa::path(tag = "weeks", params(InWeek), responses((status = 200, body = NudgeView), Problems))]
#[post("/weeks/{week}/nudges")]
pub async fn nudge_players(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<InWeek>,
    body: Json<NudgeBody>,
) -> Answer<web::Json<NudgeView>> {
    let (club, season, week) = path.ids()?;
    let about = match body.0.about {
        AboutWord::Lists => About::Lists,
        AboutWord::Results => About::Results,
    };
    let nudged = app::nudges::nudge_players(&desk, who.0, club, season, week, about).await?;
    Ok(web::Json(NudgeView::from(nudged)))
}
