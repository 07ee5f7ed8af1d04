//! API: the players of a season.

use actix_web::web::{Data, Path};
use actix_web::{get, patch, post, web};
use app::App;
use app::seasons::{JoinSeason, LeftAfter, Player, UpdatePlayer};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

use super::addresses;
use crate::authentication::{MaybeSignedIn, SignedIn};
use crate::body::Json;
use crate::paths::{PlayerPath, SeasonPath};
use crate::problem::ProblemResponses;
use crate::response::{ApiResult, Created};

/// What it takes to join.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PlayerBody {
    /// Your name in this season; a nickname is best.
    #[schema(example = "Wennable", min_length = 1, max_length = 60)]
    handle: String,
    /// Key of your faction.
    #[schema(example = "vesper-orrery")]
    faction: String,
    /// Nights you can usually come.
    #[schema(example = json!(["tue", "thu"]))]
    nights: Vec<String>,
}

/// What to change; what is absent stays.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PlayerChangeBody {
    /// Nights the player can usually come.
    #[serde(default)]
    nights: Option<Vec<String>>,
    /// Key of the faction; fixed once the season has started.
    #[serde(default)]
    faction: Option<String>,
    /// Household, by the organiser alone: its members do not meet early. Empty takes it away.
    #[serde(default)]
    household: Option<String>,
}

/// A player.
#[derive(Serialize, ToSchema)]
pub struct PlayerView {
    /// Identity in this season.
    id: Uuid,
    /// Name in this season.
    handle: String,
    /// Key of the faction.
    faction: String,
    /// Usual nights.
    nights: Vec<String>,
    /// First week played.
    joined_week: u8,
    /// Last week played, once withdrawn; 0 before the first.
    left_after_week: Option<u8>,
    /// Number in the table of a round robin, once it is drawn.
    seat: Option<u8>,
    /// Household, for those who run the season.
    #[serde(skip_serializing_if = "Option::is_none")]
    household: Option<String>,
}

impl From<Player> for PlayerView {
    fn from(player: Player) -> Self {
        Self {
            id: player.id.0,
            handle: player.handle,
            faction: player.faction,
            nights: player.nights,
            joined_week: player.joined_week.number(),
            seat: player.seat,
            left_after_week: player.left_after.map(|left| match left {
                LeftAfter::NoWeek => 0,
                LeftAfter::Week(last) => last.number(),
            }),
            household: player.household,
        }
    }
}

/// Join a season, from the first week whose lists are not due yet.
#[utoipa::path(tag = "players", params(SeasonPath), responses((status = 201, body = PlayerView), ProblemResponses))]
#[post("/players")]
pub async fn join_season(
    app: Data<App>,
    who: SignedIn,
    path: Path<SeasonPath>,
    body: Json<PlayerBody>,
) -> ApiResult<Created<PlayerView>> {
    let season = path.key();
    let PlayerBody {
        handle,
        faction,
        nights,
    } = body.0;
    let command = JoinSeason {
        handle,
        faction,
        nights,
    };
    let player = app::seasons::join_season(&app, who.0, season, command).await?;
    let location = format!("{}/players/{}", addresses::season(season), player.id);
    Ok(Created {
        location,
        view: player.into(),
    })
}

/// Everybody who ever joined, by handle.
#[utoipa::path(tag = "players", params(SeasonPath), security((), ("bearer" = [])), responses((status = 200, body = Vec<PlayerView>), ProblemResponses))]
#[get("/players")]
pub async fn list_players(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<SeasonPath>,
) -> ApiResult<web::Json<Vec<PlayerView>>> {
    let season = path.key();
    let players = app::seasons::list_players(&app, who.0, season).await?;
    Ok(web::Json(
        players.into_iter().map(PlayerView::from).collect(),
    ))
}

/// Change a player's usual nights, faction or household.
#[utoipa::path(tag = "players", params(PlayerPath), responses((status = 200, body = PlayerView), ProblemResponses))]
#[patch("/players/{player}")]
pub async fn update_player(
    app: Data<App>,
    who: SignedIn,
    path: Path<PlayerPath>,
    body: Json<PlayerChangeBody>,
) -> ApiResult<web::Json<PlayerView>> {
    let (season, player) = path.ids();
    let PlayerChangeBody {
        nights,
        faction,
        household,
    } = body.0;
    let command = UpdatePlayer {
        nights,
        faction,
        household,
    };
    let player = app::seasons::update_player(&app, who.0, season, player, command).await?;
    Ok(web::Json(player.into()))
}

/// Withdraw. Games already played or paired stand.
#[utoipa::path(tag = "players", params(PlayerPath), responses((status = 200, body = PlayerView), ProblemResponses))]
#[post("/players/{player}/withdraw")]
pub async fn withdraw_player(
    app: Data<App>,
    who: SignedIn,
    path: Path<PlayerPath>,
) -> ApiResult<web::Json<PlayerView>> {
    let (season, player) = path.ids();
    let player = app::seasons::withdraw_player(&app, who.0, season, player).await?;
    Ok(web::Json(player.into()))
}
