//! API: rounds: propose, publish, repair.

use actix_web::web::{Data, Path};
use actix_web::{get, post, web};
use app::rounds::{ProposeRound, RepairRound, RoundRepair};
use app::{App, Viewer};
use chrono::{DateTime, Utc};
use document::rounds::proposal::ProposalDocument;
use document::rounds::repair::{ChangeDocument, RepairDocument};
use document::rounds::task::TaskDocument;
use league::ids::{PlayerId, RoundId};
use league::keys::{SeasonKey, WeekKey};
use serde::{Deserialize, Serialize};
use utoipa::{IntoParams, ToSchema};
use uuid::Uuid;

use super::addresses;
use super::games::GameView;
use super::round_words::{Names, RoundWordsView};
use crate::authentication::{MaybeSignedIn, SignedIn};
use crate::body::Json;
use crate::paths::{WeekPath, season_key};
use crate::problem::{Problem, ProblemResponses};
use crate::response::{ApiResult, Created};

/// A round's address.
#[derive(Clone, Copy, Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct RoundPath {
    /// The club.
    club: Uuid,
    /// The season.
    season: Uuid,
    /// The round.
    round: Uuid,
}

impl RoundPath {
    fn ids(self) -> (SeasonKey, RoundId) {
        (season_key(self.club, self.season), RoundId(self.round))
    }
}

/// Orders about a round; everybody will see them.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct RoundBody {
    /// Games that must be, each by its two players.
    #[serde(default)]
    pins: Vec<[Uuid; 2]>,
    /// Games that must not be.
    #[serde(default)]
    forbidden: Vec<[Uuid; 2]>,
}

/// What is different since a round was published; what is not named stays.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct RepairBody {
    /// Why. Everybody reads it: it should say nothing of anybody's health.
    #[schema(example = "One player less tonight", min_length = 1, max_length = 4000)]
    reason: String,
    /// Nights on which players can come now.
    #[serde(default)]
    availabilities: Vec<AvailableBody>,
    /// Tables that nights have now.
    #[serde(default)]
    nights: Vec<NightLeftBody>,
    /// Games that must be, each by its two players.
    #[serde(default)]
    pins: Vec<[Uuid; 2]>,
    /// Games that must not be.
    #[serde(default)]
    forbidden: Vec<[Uuid; 2]>,
}

/// When a player can come now; somebody who was not in the round comes in.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AvailableBody {
    /// Who.
    player: Uuid,
    /// Short names of the nights; none at all is out, with notice.
    nights: Vec<String>,
}

/// What is left of a night.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct NightLeftBody {
    /// Short name of the night.
    night: String,
    /// Tables; 0 where it is cancelled.
    #[schema(maximum = 500)]
    tables: u16,
}

impl From<RepairBody> for RepairRound {
    fn from(body: RepairBody) -> Self {
        let availabilities = body.availabilities.into_iter();
        let nights = body.nights.into_iter();
        Self {
            reason: body.reason,
            availabilities: availabilities
                .map(|it| (PlayerId(it.player), it.nights))
                .collect(),
            nights: nights.map(|left| (left.night, left.tables)).collect(),
            pins: pairs(body.pins),
            forbidden: pairs(body.forbidden),
        }
    }
}

fn pairs(pairs: Vec<[Uuid; 2]>) -> Vec<[PlayerId; 2]> {
    pairs.into_iter().map(|pair| pair.map(PlayerId)).collect()
}

/// A round with its locked inputs, its proof and its reasons.
#[derive(Serialize, ToSchema)]
pub struct RoundView {
    /// Identity.
    id: Uuid,
    /// Of which week.
    week: u8,
    /// Which of the week's rounds.
    number: u8,
    /// 1 as it was drawn; each repair is one more. The last that is published stands.
    version: u8,
    /// What it repairs, and why.
    repair: Option<RepairDocument>,
    /// What a repair changes, and for whom.
    changes: Vec<ChangeDocument>,
    /// All that the pairing depends on, but for the season's secret.
    inputs: TaskDocument,
    /// HMAC-SHA-256 of the digest of the inputs under the season's secret, in hexadecimal.
    draw: String,
    /// The same in sentences.
    words: RoundWordsView,
    /// Games, byes, proof and reasons.
    proposal: ProposalDocument,
    /// When it was proposed.
    proposed_at: DateTime<Utc>,
    /// When it was published.
    published_at: Option<DateTime<Utc>>,
}

impl RoundView {
    fn new(repair: RoundRepair, names: &Names) -> Result<Self, Problem> {
        let words = names.describe(&repair)?;
        let RoundRepair { round, changes } = repair;
        Ok(Self {
            id: round.id.0,
            week: round.week.number(),
            number: round.number,
            version: round.version,
            repair: round.repair,
            changes: changes.iter().map(ChangeDocument::from).collect(),
            inputs: round.task,
            draw: hex::encode(round.draw),
            words,
            proposal: round.proposal,
            proposed_at: round.proposed_at,
            published_at: round.published_at,
        })
    }
}

/// How the people and nights of a week are called.
async fn names(app: &App, viewer: Viewer, week: WeekKey) -> ApiResult<Names> {
    let players = app::seasons::list_players(app, viewer, week.season).await?;
    let (week, _) = app::seasons::find_week(app, viewer, week).await?;
    Ok(Names::new(players, &week))
}

/// Propose a week's round. A new proposal takes the place of an unpublished one.
#[utoipa::path(tag = "pairing", params(WeekPath), responses((status = 201, body = RoundView), ProblemResponses))]
#[post("/weeks/{week}/rounds")]
pub async fn propose_round(
    app: Data<App>,
    who: SignedIn,
    path: Path<WeekPath>,
    body: Json<RoundBody>,
) -> ApiResult<Created<RoundView>> {
    let week = path.key()?;
    let command = ProposeRound {
        pins: pairs(body.0.pins),
        forbidden: pairs(body.0.forbidden),
    };
    let round = app::rounds::propose_round(&app, who.0, week, command).await?;
    let names = names(&app, Some(who.0), week).await?;
    let changes = Vec::new();
    Ok(Created {
        location: format!("{}/rounds", addresses::week(week)),
        view: RoundView::new(RoundRepair { round, changes }, &names)?,
    })
}

/// Propose a repair of a published round: as few games as possible change. Publish it like a round.
#[utoipa::path(tag = "pairing", params(RoundPath), responses((status = 201, body = RoundView), ProblemResponses))]
#[post("/rounds/{round}/repairs")]
pub async fn repair_round(
    app: Data<App>,
    who: SignedIn,
    path: Path<RoundPath>,
    body: Json<RepairBody>,
) -> ApiResult<Created<RoundView>> {
    let (season, round) = path.ids();
    let command = body.0.into();
    let repair = app::rounds::repair_round(&app, who.0, season, round, command).await?;
    let week = season.week(repair.round.week);
    let names = names(&app, Some(who.0), week).await?;
    Ok(Created {
        location: format!("{}/rounds", addresses::week(week)),
        view: RoundView::new(repair, &names)?,
    })
}

/// The rounds of a week, every version of them. A proposal is seen by those who run the season; once published, by all.
#[utoipa::path(tag = "pairing", params(WeekPath), security((), ("bearer" = [])), responses((status = 200, body = Vec<RoundView>), ProblemResponses))]
#[get("/weeks/{week}/rounds")]
pub async fn list_rounds(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<WeekPath>,
) -> ApiResult<web::Json<Vec<RoundView>>> {
    let week = path.key()?;
    let rounds = app::rounds::list_rounds(&app, who.0, week).await?;
    let names = names(&app, who.0, week).await?;
    let repairs = app::rounds::with_changes(rounds)?.into_iter();
    let views = repairs.map(|repair| RoundView::new(repair, &names));
    Ok(web::Json(views.collect::<ApiResult<_>>()?))
}

/// Publish a round or a repair: its proof is checked once more and its games are fixed for good.
#[utoipa::path(tag = "pairing", params(RoundPath), responses((status = 200, body = Vec<GameView>), ProblemResponses))]
#[post("/rounds/{round}/publish")]
pub async fn publish_round(
    app: Data<App>,
    who: SignedIn,
    path: Path<RoundPath>,
) -> ApiResult<web::Json<Vec<GameView>>> {
    let (season, round) = path.ids();
    let games = app::rounds::publish_round(&app, who.0, season, round).await?;
    Ok(web::Json(games.into_iter().map(GameView::from).collect()))
}
