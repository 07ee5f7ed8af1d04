//! API: scenario sheets and their reveals.

use actix_web::web::{Data, Path};
use actix_web::{get, put, web};
use app::App;
use app::seasons::{RevealAt, UpdateScenario, VisibleScenario};
use document::civil::CivilDocument;
use document::season::scenario::ScenarioSheetDocument;
use league::time::CivilTime;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::authentication::{MaybeSignedIn, SignedIn};
use crate::body::Json;
use crate::paths::WeekPath;
use crate::problem::ProblemResponses;
use crate::response::{ApiResult, NoContent};

/// When a part of a scenario is revealed.
#[derive(Clone, Copy, Default, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum RevealBody {
    /// With the week's announcement.
    #[default]
    Announcement,
    /// At a civil time in the season's zone.
    At {
        /// The time.
        time: CivilDocument,
    },
    /// When the lists are opened.
    ListsOpened,
}

impl From<RevealBody> for RevealAt {
    fn from(body: RevealBody) -> Self {
        match body {
            RevealBody::Announcement => Self::Announcement,
            RevealBody::At { time } => Self::At(CivilTime(time.0)),
            RevealBody::ListsOpened => Self::ListsOpened,
        }
    }
}

/// A sheet with its reveals.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ScenarioBody {
    /// The sheet.
    sheet: ScenarioSheetDocument,
    /// When its title is revealed.
    #[serde(default)]
    title: RevealBody,
    /// When all of it is revealed.
    #[serde(default)]
    full: RevealBody,
}

/// As much of a scenario as you may know now.
#[derive(Serialize, ToSchema)]
pub struct ScenarioView {
    /// Its title.
    title: String,
    /// The whole sheet, once it is revealed.
    sheet: Option<ScenarioSheetDocument>,
}

impl From<VisibleScenario> for ScenarioView {
    fn from(seen: VisibleScenario) -> Self {
        match seen {
            VisibleScenario::Title(title) => Self { title, sheet: None },
            VisibleScenario::Full(sheet) => Self {
                title: sheet.title.clone(),
                sheet: Some(*sheet),
            },
        }
    }
}

/// Write a week's scenario sheet. It may change until the players know it.
#[utoipa::path(tag = "weeks", params(WeekPath), responses((status = 204, description = "Saved"), ProblemResponses))]
#[put("/weeks/{week}/scenario")]
pub async fn update_scenario(
    app: Data<App>,
    who: SignedIn,
    path: Path<WeekPath>,
    body: Json<ScenarioBody>,
) -> ApiResult<NoContent> {
    let week = path.key()?;
    let ScenarioBody { sheet, title, full } = body.0;
    let command = UpdateScenario {
        sheet,
        title: title.into(),
        full: full.into(),
    };
    app::seasons::update_scenario(&app, who.0, week, command).await?;
    Ok(NoContent)
}

/// A week's scenario as far as it is revealed; 404 while not even its title is.
#[utoipa::path(tag = "weeks", params(WeekPath), security((), ("bearer" = [])), responses((status = 200, body = ScenarioView), ProblemResponses))]
#[get("/weeks/{week}/scenario")]
pub async fn find_scenario(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<WeekPath>,
) -> ApiResult<web::Json<ScenarioView>> {
    let week = path.key()?;
    let seen = app::seasons::find_scenario(&app, who.0, week).await?;
    Ok(web::Json(seen.into()))
}
