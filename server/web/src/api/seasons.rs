//! API: seasons.

use actix_web::web::{Data, Path};
use actix_web::{HttpRequest, get, patch, post, web};
use app::seasons::{CreateSeason, Season, UpdateSeason, parse_policy};
use app::{App, Refusal};
use chrono::{DateTime, Utc};
use document::season::calendar::{CalendarDocument, CapsDocument};
use document::season::policy::PolicyDocument;
use league::ids::CatalogueId;
use league::season::{SeasonState, Visibility};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

use super::addresses;
use crate::authentication::{MaybeSignedIn, SignedIn};
use crate::body::Json;
use crate::if_match::required_if_match;
use crate::paths::{ClubPath, SeasonPath};
use crate::problem::ProblemResponses;
use crate::response::{ApiResult, Created, Versioned};

/// Who may look.
#[derive(Clone, Copy, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum VisibilityWord {
    /// Everybody.
    Public,
    /// The club.
    Club,
}

impl From<VisibilityWord> for Visibility {
    fn from(word: VisibilityWord) -> Self {
        match word {
            VisibilityWord::Public => Self::Public,
            VisibilityWord::Club => Self::Club,
        }
    }
}

/// Where a season stands.
#[derive(Clone, Copy, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum SeasonStateWord {
    /// Being set up.
    Draft,
    /// Running.
    Started,
    /// Over.
    Ended,
}

/// What it takes to set up a season.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SeasonBody {
    /// Name.
    #[schema(example = "Autumn at the ford", min_length = 1, max_length = 60)]
    name: String,
    /// Who may look once it has started.
    visibility: VisibilityWord,
    /// IANA zone of all civil times of the season.
    #[schema(example = "Europe/Berlin")]
    zone: String,
    /// The catalogue; it needs a version by now.
    catalogue: Uuid,
    /// The caps of the weeks.
    caps: CapsDocument,
    /// The rhythm.
    calendar: CalendarDocument,
    /// Minutes after the deadline in which a list still counts as in time.
    #[serde(default)]
    #[schema(example = 60, maximum = 1440)]
    grace_minutes: u16,
    /// Most players.
    #[serde(default)]
    #[schema(minimum = 2, maximum = 10_000)]
    places: Option<u16>,
    /// The rules; each part has a good default.
    #[serde(default)]
    policy: PolicyDocument,
}

/// What to change; what is absent stays.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SeasonChangeBody {
    /// Name.
    #[serde(default)]
    #[schema(min_length = 1, max_length = 60)]
    name: Option<String>,
    /// Who may look.
    #[serde(default)]
    visibility: Option<VisibilityWord>,
    /// Most players.
    #[serde(default)]
    #[schema(minimum = 2, maximum = 10_000)]
    places: Option<u16>,
    /// The rules as a whole; fixed once the season has started.
    #[serde(default)]
    policy: Option<PolicyDocument>,
}

/// A season.
#[derive(Serialize, ToSchema)]
pub struct SeasonView {
    /// Identity.
    id: Uuid,
    /// Whose.
    club: Uuid,
    /// Name.
    name: String,
    /// Who may look.
    visibility: VisibilityWord,
    /// IANA zone.
    zone: String,
    /// Where it stands.
    state: SeasonStateWord,
    /// The catalogue.
    catalogue: Uuid,
    /// Most players.
    places: Option<u16>,
    /// The rules.
    policy: PolicyDocument,
    /// The rules as sentences.
    rules: Vec<String>,
    /// Rises with every change that a reader may see.
    version: i64,
    /// SHA-256 of the secret seed of the season's draws, in hexadecimal, from the start on.
    seed_commitment: Option<String>,
    /// When it started.
    started_at: Option<DateTime<Utc>>,
    /// When it ended.
    ended_at: Option<DateTime<Utc>>,
}

impl TryFrom<Season> for SeasonView {
    type Error = Refusal;

    /// # Errors
    /// [`Refusal::Internal`] when the rules that were kept cannot be read.
    fn try_from(season: Season) -> Result<Self, Refusal> {
        let rules = parse_policy(&season)?.messages();
        Ok(Self {
            id: season.id.0,
            club: season.club.0,
            name: season.name,
            visibility: match season.visibility {
                Visibility::Public => VisibilityWord::Public,
                Visibility::Club => VisibilityWord::Club,
            },
            zone: season.zone.name().to_owned(),
            state: match season.state {
                SeasonState::Draft => SeasonStateWord::Draft,
                SeasonState::Started => SeasonStateWord::Started,
                SeasonState::Ended => SeasonStateWord::Ended,
            },
            catalogue: season.catalogue.0,
            places: season.places,
            rules: rules.iter().map(ToString::to_string).collect(),
            policy: season.policy,
            version: season.version,
            seed_commitment: season.seed_commitment.as_deref().map(hex::encode),
            started_at: season.started_at,
            ended_at: season.ended_at,
        })
    }
}

fn versioned(season: Season) -> ApiResult<Versioned<SeasonView>> {
    Ok(Versioned {
        version: season.version,
        view: season.try_into()?,
    })
}

/// Set up a season. It is a draft until it is started.
#[utoipa::path(tag = "seasons", params(ClubPath), responses((status = 201, body = SeasonView), ProblemResponses))]
#[post("/clubs/{club}/seasons")]
pub async fn create_season(
    app: Data<App>,
    who: SignedIn,
    path: Path<ClubPath>,
    body: Json<SeasonBody>,
) -> ApiResult<Created<SeasonView>> {
    let body = body.0;
    let command = CreateSeason {
        name: body.name,
        visibility: body.visibility.into(),
        zone: body.zone,
        catalogue: CatalogueId(body.catalogue),
        caps: body.caps,
        calendar: body.calendar,
        grace_minutes: body.grace_minutes,
        places: body.places,
        policy: body.policy,
    };
    let season = app::seasons::create_season(&app, who.0, path.id(), command).await?;
    let location = addresses::season(season.key());
    Ok(Created {
        location,
        view: season.try_into()?,
    })
}

/// The seasons of a club that you may know of, newest first.
#[utoipa::path(tag = "seasons", params(ClubPath), security((), ("bearer" = [])), responses((status = 200, body = Vec<SeasonView>), ProblemResponses))]
#[get("/clubs/{club}/seasons")]
pub async fn list_seasons(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<ClubPath>,
) -> ApiResult<web::Json<Vec<SeasonView>>> {
    let seasons = app::seasons::list_seasons(&app, who.0, path.id()).await?;
    let views = seasons.into_iter().map(SeasonView::try_from);
    Ok(web::Json(views.collect::<Result<_, _>>()?))
}

/// A season. The `ETag` is its version.
#[utoipa::path(tag = "seasons", params(SeasonPath), security((), ("bearer" = [])), responses((status = 200, body = SeasonView), ProblemResponses))]
#[get("")]
pub async fn find_season(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<SeasonPath>,
) -> ApiResult<Versioned<SeasonView>> {
    let season = path.key();
    versioned(app::seasons::find_season(&app, who.0, season).await?)
}

/// Change a season. Send the version you change as `If-Match`.
#[utoipa::path(
    tag = "seasons",
    params(SeasonPath, ("If-Match" = String, Header, description = "The ETag of the version you change")),
    responses((status = 200, body = SeasonView), ProblemResponses)
)]
#[patch("")]
pub async fn update_season(
    app: Data<App>,
    who: SignedIn,
    path: Path<SeasonPath>,
    request: HttpRequest,
    body: Json<SeasonChangeBody>,
) -> ApiResult<Versioned<SeasonView>> {
    let season = path.key();
    let body = body.0;
    let command = UpdateSeason {
        version: required_if_match(&request)?,
        name: body.name,
        visibility: body.visibility.map(Visibility::from),
        places: body.places,
        policy: body.policy,
    };
    versioned(app::seasons::update_season(&app, who.0, season, command).await?)
}

/// Start a season: its rules are fixed and the seed of its draws is committed to.
#[utoipa::path(tag = "seasons", params(SeasonPath), responses((status = 200, body = SeasonView), ProblemResponses))]
#[post("/start")]
pub async fn start_season(
    app: Data<App>,
    who: SignedIn,
    path: Path<SeasonPath>,
) -> ApiResult<Versioned<SeasonView>> {
    let season = path.key();
    versioned(app::seasons::start_season(&app, who.0, season).await?)
}

/// End a season whose weeks are closed; the seed of its draws is revealed.
#[utoipa::path(tag = "seasons", params(SeasonPath), responses((status = 200, body = SeasonView), ProblemResponses))]
#[post("/end")]
pub async fn end_season(
    app: Data<App>,
    who: SignedIn,
    path: Path<SeasonPath>,
) -> ApiResult<Versioned<SeasonView>> {
    let season = path.key();
    versioned(app::seasons::end_season(&app, who.0, season).await?)
}
