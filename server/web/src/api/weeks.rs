//! API: the weeks of a season.

use actix_web::web::{Data, Path};
use actix_web::{get, patch, put, web};
use app::App;
use app::seasons::{UpdateWeek, Week};
use chrono::{DateTime, Utc};
use document::civil::CivilDocument;
use league::season::WeekPhase;
use league::time::CivilTime;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::authentication::{MaybeSignedIn, SignedIn};
use crate::body::Json;
use crate::paths::{SeasonPath, WeekPath};
use crate::problem::ProblemResponses;
use crate::response::{ApiResult, NoContent};

/// Where a week stands.
#[derive(Clone, Copy, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum PhaseWord {
    /// Not announced.
    Planned,
    /// Announced; lists come in.
    Announced,
    /// The deadline is over; lists are about to be opened.
    ListsDue,
    /// Everybody sees the lists.
    ListsOpened,
    /// The pairings are out.
    Paired,
    /// The table of the week stands.
    Closed,
}

impl From<WeekPhase> for PhaseWord {
    fn from(phase: WeekPhase) -> Self {
        match phase {
            WeekPhase::Planned => Self::Planned,
            WeekPhase::Announced => Self::Announced,
            WeekPhase::ListsDue => Self::ListsDue,
            WeekPhase::ListsOpened => Self::ListsOpened,
            WeekPhase::Paired => Self::Paired,
            WeekPhase::Closed => Self::Closed,
        }
    }
}

/// A week.
#[derive(Serialize, ToSchema)]
pub struct WeekView {
    /// Its number.
    week: u8,
    /// The points cap.
    cap: u32,
    /// Where it stands.
    phase: PhaseWord,
    /// When cap and scenario go out.
    announce_at: DateTime<Utc>,
    /// When lists are due.
    lists_due_at: DateTime<Utc>,
    /// Until when a list counts as in time: the deadline and its grace.
    lists_accepted_until: DateTime<Utc>,
    /// The deadline on the wall of the club.
    lists_due: CivilDocument,
    /// When games must be played.
    play_until_at: DateTime<Utc>,
    /// When the lists were opened.
    lists_opened_at: Option<DateTime<Utc>>,
    /// When the first round was published.
    paired_at: Option<DateTime<Utc>>,
    /// When the week was closed.
    closed_at: Option<DateTime<Utc>>,
    /// Version of the catalogue.
    catalogue_number: i32,
    /// The nights, as they begin.
    nights: Vec<NightView>,
}

/// A night.
#[derive(Serialize, ToSchema)]
pub struct NightView {
    /// Its short name.
    key: String,
    /// When it begins.
    begins_at: DateTime<Utc>,
    /// The same on the wall of the club.
    begins: CivilDocument,
    /// Tables.
    tables: u16,
}

impl WeekView {
    /// A week in its phase.
    pub fn new(week: Week, phase: WeekPhase) -> Self {
        let facts = week.facts;
        Self {
            week: week.week.number(),
            cap: week.cap.get(),
            phase: phase.into(),
            announce_at: facts.announce_at,
            lists_due_at: facts.lists_due_at,
            lists_accepted_until: facts.accepted_until(),
            lists_due: CivilDocument(week.lists_due.0),
            play_until_at: facts.play_until_at,
            lists_opened_at: facts.lists_opened_at,
            paired_at: facts.paired_at,
            closed_at: facts.closed_at,
            catalogue_number: week.catalogue_number,
            nights: week
                .nights
                .into_iter()
                .map(|night| NightView {
                    key: night.key,
                    begins_at: night.begins.1,
                    begins: CivilDocument(night.begins.0.0),
                    tables: night.tables,
                })
                .collect(),
        }
    }
}

/// What to change; what is absent stays. Times are civil times in the season's zone.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct WeekBody {
    /// The points cap.
    #[serde(default)]
    cap: Option<u32>,
    /// When cap and scenario go out.
    #[serde(default)]
    announce: Option<CivilDocument>,
    /// When lists are due.
    #[serde(default)]
    lists_due: Option<CivilDocument>,
    /// When games must be played.
    #[serde(default)]
    play_until: Option<CivilDocument>,
    /// All nights of the week.
    #[serde(default)]
    nights: Option<Vec<NightBody>>,
    /// Version of the catalogue.
    #[serde(default)]
    catalogue_number: Option<i32>,
}

/// A night of a week.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct NightBody {
    /// Its short name.
    #[schema(example = "tue", max_length = 20)]
    key: String,
    /// When it begins, in civil time.
    begins: CivilDocument,
    /// Tables.
    #[schema(example = 6, minimum = 1, maximum = 500)]
    tables: u16,
}

/// Nights of a week; none means absent with notice.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AvailabilityBody {
    /// Short names of the nights.
    #[schema(example = json!(["tue", "thu"]))]
    nights: Vec<String>,
}

/// The weeks of a season in order. All caps are known from the start.
#[utoipa::path(tag = "weeks", params(SeasonPath), security((), ("bearer" = [])), responses((status = 200, body = Vec<WeekView>), ProblemResponses))]
#[get("/weeks")]
pub async fn list_weeks(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<SeasonPath>,
) -> ApiResult<web::Json<Vec<WeekView>>> {
    let season = path.key();
    let weeks = app::seasons::list_weeks(&app, who.0, season).await?;
    Ok(web::Json(
        weeks
            .into_iter()
            .map(|(week, phase)| WeekView::new(week, phase))
            .collect(),
    ))
}

/// One week.
#[utoipa::path(tag = "weeks", params(WeekPath), security((), ("bearer" = [])), responses((status = 200, body = WeekView), ProblemResponses))]
#[get("/weeks/{week}")]
pub async fn find_week(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<WeekPath>,
) -> ApiResult<web::Json<WeekView>> {
    let week = path.key()?;
    let (week, phase) = app::seasons::find_week(&app, who.0, week).await?;
    Ok(web::Json(WeekView::new(week, phase)))
}

/// Change a week where that hurts nobody.
#[utoipa::path(tag = "weeks", params(WeekPath), responses((status = 204, description = "Changed"), ProblemResponses))]
#[patch("/weeks/{week}")]
pub async fn update_week(
    app: Data<App>,
    who: SignedIn,
    path: Path<WeekPath>,
    body: Json<WeekBody>,
) -> ApiResult<NoContent> {
    let week = path.key()?;
    let body = body.0;
    let nights = body.nights.map(|nights| {
        nights
            .into_iter()
            .map(|night| (night.key, civil(night.begins), night.tables))
            .collect()
    });
    let command = UpdateWeek {
        cap: body.cap,
        announce: body.announce.map(civil),
        lists_due: body.lists_due.map(civil),
        play_until: body.play_until.map(civil),
        nights,
        catalogue_number: body.catalogue_number,
    };
    app::seasons::update_week(&app, who.0, week, command).await?;
    Ok(NoContent)
}

fn civil(document: CivilDocument) -> CivilTime {
    CivilTime(document.0)
}

/// Say which nights of a week you can come.
#[utoipa::path(tag = "weeks", params(WeekPath), responses((status = 204, description = "Noted"), ProblemResponses))]
#[put("/weeks/{week}/availability")]
pub async fn tell_availability(
    app: Data<App>,
    who: SignedIn,
    path: Path<WeekPath>,
    body: Json<AvailabilityBody>,
) -> ApiResult<NoContent> {
    let week = path.key()?;
    app::seasons::tell_availability(&app, who.0, week, body.0.nights).await?;
    Ok(NoContent)
}
