//! Scenario sheets and their reveals.

use actix_web::web::{Data, Path};
use actix_web::{get, put, web};
use app::Desk;
use app::seasons::{RevealAt, ScenarioSeen, UpdateScenario};
use document::civil::CivilDocument;
use document::scenario::ScenarioSheetDocument;
use league::time::Civil;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::weeks::InWeek;
use crate::answer::{Answer, Done};
use crate::body::Json;
use crate::problem::Problems;
use crate::who::{Caller, SignedIn};

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
            RevealBody::At { time } => Self::At(Civil(time.0)),
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

impl From<ScenarioSeen> for ScenarioView {
    fn from(seen: ScenarioSeen) -> Self {
        match seen {
            ScenarioSeen::Title(title) => Self { title, sheet: None },
            ScenarioSeen::Full(sheet) => Self {
                title: sheet.title.clone(),
                sheet: Some(*sheet),
            },
        }
    }
}

/// Write a week's scenario sheet. It may change until the players know it.
#[utoipa::path(tag = "weeks", params(InWeek), responses((status = 204, description = "Saved"), Problems))]
#[put("/weeks/{week}/scenario")]
pub async fn update_scenario(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<InWeek>,
    body: Json<ScenarioBody>,
) -> Answer<Done> {
    let (club, season, week) = path.ids()?;
    let ScenarioBody { sheet, title, full } = body.0;
    let command = UpdateScenario {
        sheet,
        title: title.into(),
        full: full.into(),
    };
    app::seasons::update_scenario(&desk, who.0, club, season, week, command).await?;
    Ok(Done)
}

/// A week's scenario as far as it is revealed; 404 while not even its title is.
#[utoipa::path(tag = "weeks", params(InWeek), security((), ("bearer" = [])), responses((status = 200, body = ScenarioView), Problems))]
#[get("/weeks/{week}/scenario")]
pub async fn find_scenario(
    desk: Data<Desk>,
    who: Caller,
    path: Path<InWeek>,
) -> Answer<web::Json<ScenarioView>> {
    let (club, season, week) = path.ids()?;
    let seen = app::seasons::find_scenario(&desk, who.0, club, season, week).await?;
    Ok(web::Json(seen.into()))
}
