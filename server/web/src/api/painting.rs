//! API: the painting log.

use actix_web::web::{Data, Path};
use actix_web::{get, post, web};
use app::painting::ClaimPainting;
use app::{App, Reason, Refusal};
use document::painting::claim::ClaimDocument;
use document::painting::rules::ModelStagesDocument;
use league::ids::{ClaimId, PlayerId};
use league::keys::SeasonKey;
use league::painting::PhotoDigest;
use messages::painting;
use serde::Deserialize;
use utoipa::{IntoParams, ToSchema};
use uuid::Uuid;

use super::addresses;
use crate::authentication::{MaybeSignedIn, SignedIn};
use crate::body::Json;
use crate::paths::{SeasonPath, WeekPath, photo_digest, season_key};
use crate::problem::{Problem, ProblemResponses};
use crate::query_parameters::Query;
use crate::response::{ApiResult, Created};

/// A claim's address.
#[derive(Clone, Copy, Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct ClaimPath {
    /// The club.
    club: Uuid,
    /// The season.
    season: Uuid,
    /// The claim.
    claim: Uuid,
}

impl ClaimPath {
    fn ids(self) -> (SeasonKey, ClaimId) {
        (season_key(self.club, self.season), ClaimId(self.claim))
    }
}

/// Whose log.
#[derive(Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct PlayerQuery {
    /// One player; everybody when absent.
    player: Option<Uuid>,
}

/// How far the models of a unit are.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ClaimBody {
    /// Key of the unit in your lists.
    #[schema(example = "pole-hands-1")]
    unit: String,
    /// Models at each stage.
    stages: ModelStagesDocument,
    /// Name of a photo that you sent before; without one the models are looked at on the table.
    #[serde(default)]
    photo: Option<String>,
}

/// Why a claim is refused.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct RefusalBody {
    /// For the player to read.
    #[schema(
        example = "Two models have no finished base yet",
        min_length = 1,
        max_length = 4000
    )]
    reason: String,
}

/// Claim how far the models of a unit are. Spray and use an airbrush only where the air is drawn off,
/// with a suitable mask; cut away from the hand; club and local rules go first.
#[utoipa::path(tag = "painting", params(WeekPath), responses((status = 201, body = ClaimDocument), ProblemResponses))]
#[post("/weeks/{week}/painting")]
pub async fn claim_painting(
    app: Data<App>,
    who: SignedIn,
    path: Path<WeekPath>,
    body: Json<ClaimBody>,
) -> ApiResult<Created<ClaimDocument>> {
    let week = path.key()?;
    let ClaimBody {
        unit,
        stages,
        photo,
    } = body.0;
    let command = ClaimPainting {
        unit,
        stages,
        photo: photo.as_deref().map(read_photo).transpose()?,
    };
    let claim = app::painting::claim_painting(&app, who.0, week, command).await?;
    let location = format!("{}/painting", addresses::season(week.season));
    Ok(Created {
        location,
        view: (&claim).into(),
    })
}

fn read_photo(name: &str) -> Result<PhotoDigest, Problem> {
    photo_digest(name).ok_or_else(|| {
        let message = painting::photo_name();
        Refusal::fault(Reason::Validation, "/photo", message).into()
    })
}

/// The painting log, in the order in which claims were made.
#[utoipa::path(tag = "painting", params(SeasonPath, PlayerQuery), security((), ("bearer" = [])), responses((status = 200, body = Vec<ClaimDocument>), ProblemResponses))]
#[get("/painting")]
pub async fn list_claims(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<SeasonPath>,
    of: Query<PlayerQuery>,
) -> ApiResult<web::Json<Vec<ClaimDocument>>> {
    let season = path.key();
    let player = of.player.map(PlayerId);
    let claims = app::painting::list_claims(&app, who.0, season, player).await?;
    Ok(web::Json(claims.iter().map(ClaimDocument::from).collect()))
}

/// Verify a claim, as that week's opponent or as a referee.
#[utoipa::path(tag = "painting", params(ClaimPath), responses((status = 200, body = ClaimDocument), ProblemResponses))]
#[post("/painting/{claim}/verify")]
pub async fn verify_claim(
    app: Data<App>,
    who: SignedIn,
    path: Path<ClaimPath>,
) -> ApiResult<web::Json<ClaimDocument>> {
    let (season, claim) = path.ids();
    let claim = app::painting::verify_claim(&app, who.0, season, claim).await?;
    Ok(web::Json((&claim).into()))
}

/// Refuse a claim with a reason; a referee may also take a check back.
#[utoipa::path(tag = "painting", params(ClaimPath), responses((status = 200, body = ClaimDocument), ProblemResponses))]
#[post("/painting/{claim}/refuse")]
pub async fn refuse_claim(
    app: Data<App>,
    who: SignedIn,
    path: Path<ClaimPath>,
    body: Json<RefusalBody>,
) -> ApiResult<web::Json<ClaimDocument>> {
    let (season, claim) = path.ids();
    let reason = body.0.reason;
    let claim = app::painting::refuse_claim(&app, who.0, season, claim, &reason).await?;
    Ok(web::Json((&claim).into()))
}
