//! Publishing a round: its proof is checked once more, and its games are fixed for good.

use league::ids::{ClubId, GameId, PlayerId, RoundId, SeasonId};
use league::pairing::certificate;
use league::result::Slip;
use league::scenario::{AttackerIs, Roles, ScenarioSheet};
use league::standings::table;
use serde_json::json;
use store::Conn;
use store::games::{Game, Meeting};
use store::rounds::Round;
use store::seasons::Season;
use store::weeks::Week;
use uuid::Uuid;

use super::propose_round::{already_paired, draw};
use crate::facts::{self, Loaded, sheet};
use crate::may::may;
use crate::record::Scene;
use crate::seasons::look::must_be_started;
use crate::{Action, Actor, Desk, Reason, Refusal};

/// # Errors
/// [`Reason::RoundAlreadyPaired`]; [`Reason::CommitmentMismatch`] when the proposal does not follow
/// from its inputs and the committed seed, or its proof does not hold: an incident, not a warning.
pub async fn publish_round(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    round: RoundId,
) -> Result<Vec<Game>, Refusal> {
    desk.store
        .write(async |conn| {
            may(conn, actor, club, Action::RunSeason).await?;
            let season = store::seasons::lock(conn, club, season).await?;
            must_be_started(&season)?;
            let round = store::rounds::find(conn, club, season.id, round).await?;
            let week = store::weeks::lock(conn, club, season.id, round.week).await?;
            if round.published_at.is_some() || week.facts.paired_at.is_some() {
                return Err(already_paired());
            }
            must_hold(conn, &season, &round).await?;
            let now = store::clock::now(conn).await?;
            let loaded = facts::load(conn, &season, now).await?;
            let games = games(&round, &week, &loaded)?;
            store::rounds::mark_published(conn, club, season.id, round.id, actor.account, now)
                .await?;
            store::games::create(conn, club, season.id, &games).await?;
            store::weeks::mark_paired(conn, club, season.id, week.week, now).await?;
            Scene::in_season(&season, actor, now)
                .tell_everyone(
                    conn,
                    "publish_round",
                    json!({
                        "week": week.week.number(),
                        "round": round.id.0,
                        "pins": round.task.pins,
                        "forbidden": round.task.forbidden,
                    }),
                )
                .await?;
            Ok(games)
        })
        .await
}

/// What is published follows from the locked inputs and the committed seed, and is proven best.
async fn must_hold(conn: &mut Conn, season: &Season, round: &Round) -> Result<(), Refusal> {
    let mismatch = |why: String| {
        tracing::error!(round = %round.id, why, "a proposal does not hold");
        Refusal::rule(
            Reason::CommitmentMismatch,
            "The proposal does not follow from its inputs and the committed seed.",
        )
    };
    let draw = draw(conn, season, &round.task).await?;
    if draw.0.as_slice() != round.draw {
        return Err(mismatch("another draw".to_owned()));
    }
    let task = round
        .task
        .task(draw)
        .map_err(|faults| mismatch(format!("{faults:?}")))?;
    let proposal = round.proposal.proposal().map_err(mismatch)?;
    certificate::verify(&task, &proposal).map_err(|flaw| mismatch(format!("{flaw:?}")))
}

fn games(round: &Round, week: &Week, loaded: &Loaded) -> Result<Vec<Game>, Refusal> {
    let sheet = sheet(week)?;
    let ranks = Ranks::new(week, loaded);
    let game = |first, meeting| Game {
        id: GameId(Uuid::now_v7()),
        round: round.id,
        week: week.week,
        round_no: round.number,
        first,
        meeting,
        slip: Slip::Awaited,
        version: 1,
    };
    let mut games = Vec::new();
    for paired in &round.proposal.games {
        let proposed = (PlayerId(paired.attacker), PlayerId(paired.defender));
        let (first, second) = order(sheet.as_ref(), proposed, &ranks);
        let night = week.nights.get(usize::from(paired.night));
        let night = night.map(|night| night.key.clone()).ok_or_else(|| {
            Refusal::Broken(format!("round {} names night {}", round.id, paired.night))
        })?;
        games.push(game(
            first,
            Some(Meeting {
                second,
                night,
                table: paired.table,
            }),
        ));
    }
    games.extend(
        round
            .proposal
            .byes
            .iter()
            .map(|&player| game(PlayerId(player), None)),
    );
    Ok(games)
}

/// Places in the table before the week, for scenarios in which the standing decides who attacks.
struct Ranks(Vec<PlayerId>);

impl Ranks {
    fn new(week: &Week, loaded: &Loaded) -> Self {
        let rows = week
            .week
            .previous()
            .map(|last| table(&loaded.facts, last).rows);
        Self(
            rows.unwrap_or_default()
                .into_iter()
                .map(|row| row.player)
                .collect(),
        )
    }

    fn is_above(&self, a: PlayerId, b: PlayerId) -> Option<bool> {
        let place = |player| self.0.iter().position(|&known| known == player);
        Some(place(a)? < place(b)?)
    }
}

fn order(
    sheet: Option<&ScenarioSheet>,
    (first, second): (PlayerId, PlayerId),
    ranks: &Ranks,
) -> (PlayerId, PlayerId) {
    let swap = match sheet.map(|sheet| sheet.terms().roles) {
        Some(Roles::AttackAndDefence {
            attacker: AttackerIs::LowerStanding,
            ..
        }) => ranks.is_above(first, second).unwrap_or(false),
        Some(Roles::AttackAndDefence {
            attacker: AttackerIs::HigherStanding,
            ..
        }) => ranks.is_above(second, first).unwrap_or(false),
        _ => false,
    };
    if swap {
        (second, first)
    } else {
        (first, second)
    }
}
