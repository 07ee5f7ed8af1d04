//! API: reminders of lists and results that are missing.

use actix_web::web::{Data, Path};
use actix_web::{post, web};
use app::App;
use app::reminders::{ReminderKind, SentReminder};
use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

use crate::authentication::SignedIn;
use crate::body::Json;
use crate::paths::WeekPath;
use crate::problem::ProblemResponses;
use crate::response::ApiResult;

/// What people are reminded of.
#[derive(Clone, Copy, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum ReminderKindWord {
    /// A list that is not handed in.
    Lists,
    /// A game whose night has begun and that nobody has reported.
    Results,
}

/// What to remind people of.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ReminderBody {
    /// Of what.
    about: ReminderKindWord,
}

/// Whom a reminder concerns.
#[derive(Serialize, ToSchema)]
pub struct ReminderView {
    /// Everybody who owes it now.
    players: Vec<Uuid>,
    /// When they were reminded.
    reminded_at: DateTime<Utc>,
    /// From when on people may be reminded of this again.
    again_from: DateTime<Utc>,
}

impl From<SentReminder> for ReminderView {
    fn from(sent: SentReminder) -> Self {
        Self {
            players: sent.players.into_iter().map(|player| player.0).collect(),
            reminded_at: sent.at,
            again_from: sent.again_from,
        }
    }
}

/// Remind everybody who owes a list or a result: a notice on their own page, for as long as they owe it.
/// At most once in twelve hours.
#[utoipa::path(tag = "weeks", params(WeekPath), responses((status = 200, body = ReminderView), ProblemResponses))]
#[post("/weeks/{week}/reminders")]
pub async fn send_reminders(
    app: Data<App>,
    who: SignedIn,
    path: Path<WeekPath>,
    body: Json<ReminderBody>,
) -> ApiResult<web::Json<ReminderView>> {
    let week = path.key()?;
    let about = match body.0.about {
        ReminderKindWord::Lists => ReminderKind::Lists,
        ReminderKindWord::Results => ReminderKind::Results,
    };
    let sent = app::reminders::send_reminders(&app, who.0, week, about).await?;
    Ok(web::Json(ReminderView::from(sent)))
}
