//! Pairing rounds.

use actix_web::web::{Data, Path};
use actix_web::{get, post, web};
use app::Desk;
use app::rounds::{ProposeRound, Round};
use chrono::{DateTime, Utc};
use document::pairing::TaskDocument;
use document::proposal::ProposalDocument;
use league::ids::{ClubId, PlayerId, RoundId, SeasonId};
use serde::{Deserialize, Serialize};
use utoipa::{IntoParams, ToSchema};
use uuid::Uuid;

use super::games::GameView;
use super::weeks::InWeek;
use crate::answer::{Answer, Created};
use crate::body::Json;
use crate::problem::Problems;
use crate::who::{Caller, SignedIn};

/// A round's address.
#[derive(Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct OneRound {
    /// The club.
    club: Uuid,
    /// The season.
    season: Uuid,
    /// The round.
    round: Uuid,
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

/// A round with its locked inputs, its proof and its reasons.
#[derive(Serialize, ToSchema)]
pub struct RoundView {
    /// Identity.
    id: Uuid,
    /// Of which week.
    week: u8,
    /// Which of the week's rounds.
    number: u8,
    /// All that the pairing depends on, but for the season's secret.
    inputs: TaskDocument,
    /// HMAC-SHA-256 of the digest of the inputs under the season's secret, in hexadecimal.
    draw: String,
    /// Games, byes, proof and reasons.
    proposal: ProposalDocument,
    /// When it was proposed.
    proposed_at: DateTime<Utc>,
    /// When it was published.
    published_at: Option<DateTime<Utc>>,
}

impl From<Round> for RoundView {
    fn from(round: Round) -> Self {
        Self {
            id: round.id.0,
            week: round.week.number(),
            number: round.number,
            inputs: round.task,
            draw: document::hex(&round.draw),
            proposal: round.proposal,
            proposed_at: round.proposed_at,
            published_at: round.published_at,
        }
    }
}

/// Propose a week's round. A new proposal takes the place of an unpublished one.
#[utoipa::path(tag = "pairing", responses((status = 201, body = RoundView), Problems))]
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/rounds")]
pub async fn propose_round(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<InWeek>,
    body: Json<RoundBody>,
) -> Answer<Created<RoundView>> {
    let (club, season, week) = path.ids()?;
    let players =
        |pairs: Vec<[Uuid; 2]>| pairs.into_iter().map(|pair| pair.map(PlayerId)).collect();
    let command = ProposeRound {
        pins: players(body.0.pins),
        forbidden: players(body.0.forbidden),
    };
    let round = app::rounds::propose_round(&desk, who.0, club, season, week, command).await?;
    let location = format!(
        "/api/v1/clubs/{club}/seasons/{season}/weeks/{}/rounds",
        week
    );
    Ok(Created {
        location,
        view: round.into(),
    })
}

/// The rounds of a week. A proposal is seen by those who run the season; once published, by all.
#[utoipa::path(tag = "pairing", security((), ("bearer" = [])), responses((status = 200, body = Vec<RoundView>), Problems))]
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/rounds")]
pub async fn list_rounds(
    desk: Data<Desk>,
    who: Caller,
    path: Path<InWeek>,
) -> Answer<web::Json<Vec<RoundView>>> {
    let (club, season, week) = path.ids()?;
    let rounds = app::rounds::list_rounds(&desk, who.0, club, season, week).await?;
    Ok(web::Json(rounds.into_iter().map(RoundView::from).collect()))
}

/// Publish a round: its proof is checked once more and its games are fixed for good.
#[utoipa::path(tag = "pairing", responses((status = 200, body = Vec<GameView>), Problems))]
#[post("/clubs/{club}/seasons/{season}/rounds/{round}/publish")]
pub async fn publish_round(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<OneRound>,
) -> Answer<web::Json<Vec<GameView>>> {
    let (club, season) = (ClubId(path.club), SeasonId(path.season));
    let round = RoundId(path.round);
    let games = app::rounds::publish_round(&desk, who.0, club, season, round).await?;
    Ok(web::Json(games.into_iter().map(GameView::from).collect()))
}
