//! Proposing a round: the best pairing under the season's wishes, with its proof and its reasons.

use document::pairing::TaskDocument;
use document::proposal::ProposalDocument;
use league::ids::{ClubId, PlayerId, RoundId, SeasonId};
use league::pairing::history::past::RoundKey;
use league::pairing::round::draw::Secret;
use league::pairing::{Draw, Impossible, Pair, Proposal, Task, propose};
use league::week::WeekNo;
use serde_json::json;
use store::rounds::Round;
use store::seasons::Season;
use store::{Conn, Taken};
use uuid::Uuid;

use super::households::pairs_at_home;
use super::neutral::{must_be_drawn_once, must_give_no_orders};
use super::seats::as_the_table_says;
use super::task::{Orders, task};
use super::timing::Step;
use crate::aside::aside;
use crate::facts::{self, Loaded};
use crate::lists::list_opened;
use crate::may::may;
use crate::record::Scene;
use crate::refusal::when_taken;
use crate::seasons::look::must_be_started;
use crate::seasons::policy;
use crate::{Action, Actor, Desk, Fault, Reason, Refusal};

/// What the organiser wants besides the season's wishes; everybody will see it.
#[derive(Clone, Debug, Default)]
pub struct ProposeRound {
    /// Games that must be.
    pub pins: Vec<[PlayerId; 2]>,
    /// Games that must not be.
    pub forbidden: Vec<[PlayerId; 2]>,
}

/// Proposes the week's next round in the place of an earlier proposal. Everybody is told of each draw,
/// so that nobody draws until the round suits them.
///
/// # Errors
/// [`Reason::ListsSealed`] before the lists are opened, [`Reason::RoundAlreadyPaired`],
/// [`Reason::NotEnoughPlayers`], [`Reason::NoRoundPossible`], [`Reason::ConflictOfInterest`] for orders
/// about a round that one plays in, or a second draw of it.
pub async fn propose_round(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
    command: ProposeRound,
) -> Result<Round, Refusal> {
    desk.store
        .write(async |conn| {
            may(conn, actor, club, Action::RunSeason).await?;
            let season = store::seasons::lock(conn, club, season).await?;
            must_be_started(&season)?;
            // A late list is either in before the round is drawn, or not at all.
            store::weeks::lock(conn, club, season.id, week).await?;
            let now = store::clock::now(conn).await?;
            let loaded = facts::load(conn, desk, &season, now).await?;
            let drawn = store::rounds::list(conn, club, season.id, None).await?;
            let key = must_be_ready(&loaded, &drawn, week)?;
            let mut orders = orders(&loaded, &command.pins, &command.forbidden)?;
            let method = policy::read(&season)?.rounds.method();
            let everybody = loaded.players.iter().map(|player| player.id).collect();
            let apart = pairs_at_home(&loaded, &everybody, method);
            orders.forbidden.retain(|pair| !apart.contains(pair));
            let inputs = lock_inputs(conn, &season, &loaded, &drawn, key, &orders).await?;
            must_give_no_orders(&loaded, actor, &inputs, &orders)?;
            must_be_drawn_once(&loaded, actor, &drawn, &inputs, key.number)?;
            let draw = draw(conn, &season, &inputs).await?;
            let task = inputs.task(draw).map_err(|faults| broken(&faults))?;
            let proposal = solve(desk, task).await?;
            let round = Round {
                id: RoundId(Uuid::now_v7()),
                week,
                number: key.number,
                version: 1,
                repair: None,
                task: inputs,
                proposal: ProposalDocument::from(&proposal),
                draw: draw.0.to_vec(),
                proposed_at: now,
                published_at: None,
            };
            let saved =
                store::rounds::save_proposal(conn, club, season.id, &round, actor.account).await;
            when_taken(saved, Taken::Round, already_paired)?;
            Scene::in_season(season.key(), actor, now)
                .tell_everyone(
                    desk,
                    conn,
                    "propose_round",
                    json!({
                        "week": week.number(),
                        "number": round.number,
                        "draw": document::hex(&round.draw),
                        "pins": round.task.pins,
                        "forbidden": round.task.forbidden,
                    }),
                )
                .await?;
            Ok(round)
        })
        .await
}

pub(super) fn already_paired() -> Refusal {
    Refusal::rule(
        Reason::RoundAlreadyPaired,
        "This round is published. It is never drawn again.",
    )
}

/// Which of the season's rounds is next in this week.
fn must_be_ready(loaded: &Loaded, drawn: &[Round], week: WeekNo) -> Result<RoundKey, Refusal> {
    let facts = loaded.week(week).ok_or(Refusal::NotFound)?.facts;
    if facts.closed_at.is_some() {
        return Err(Refusal::rule(Reason::WeekState, "The week is closed."));
    }
    let published = drawn
        .iter()
        .filter(|round| round.week == week && round.published_at.is_some());
    let number = 1 + published.map(|round| round.number).max().unwrap_or(0);
    if number > loaded.per_week {
        return Err(already_paired());
    }
    if facts.lists_opened_at.is_none() {
        return Err(Refusal::rule(
            Reason::ListsSealed,
            "Rounds are paired once the lists are opened, so that the draw depends on them.",
        ));
    }
    let before = week.previous().and_then(|last| loaded.week(last));
    let early =
        before.is_some_and(|last| last.facts.paired_at.is_none() && last.facts.closed_at.is_none());
    if early {
        return Err(Refusal::rule(
            Reason::WeekState,
            "The week before is not paired yet.",
        ));
    }
    Ok(RoundKey { week, number })
}

pub(super) fn orders(
    loaded: &Loaded,
    pins: &[[PlayerId; 2]],
    forbidden: &[[PlayerId; 2]],
) -> Result<Orders, Refusal> {
    let read = |pointer: &str, pairs: &[[PlayerId; 2]]| {
        pairs
            .iter()
            .enumerate()
            .map(|(index, &[a, b])| {
                let known = |id| loaded.players.iter().any(|player| player.id == id);
                Pair::new(a, b)
                    .filter(|_| known(a) && known(b))
                    .ok_or_else(|| {
                        let place = format!("{pointer}/{index}");
                        Refusal::fault(
                            Reason::Validation,
                            &place,
                            "Name two players of the season.",
                        )
                    })
            })
            .collect::<Result<Vec<Pair>, Refusal>>()
    };
    Ok(Orders {
        pins: read("/pins", pins)?,
        forbidden: read("/forbidden", forbidden)?,
    })
}

async fn lock_inputs(
    conn: &mut Conn,
    season: &Season,
    loaded: &Loaded,
    drawn: &[Round],
    key: RoundKey,
    orders: &Orders,
) -> Result<TaskDocument, Refusal> {
    let (club, id) = (season.club, season.id);
    let availabilities = store::players::list_availabilities(conn, club, id, key.week).await?;
    let policy = policy::read(season)?;
    let mut task = task(loaded, drawn, key, &availabilities, policy.pairing, orders)?;
    let method = policy.rounds.method();
    let there = task.contenders.iter().map(|it| it.player).collect();
    task.forbidden.extend(pairs_at_home(loaded, &there, method));
    task.forbidden.sort_unstable();
    task.forbidden.dedup();
    let task = as_the_table_says(task, loaded, method, key)?;
    if task.contenders.len() < 2 {
        return Err(
            Refusal::rule(Reason::NotEnoughPlayers, "Fewer than two players can come.")
                .fact("actual", task.contenders.len())
                .fact("limit", 2),
        );
    }
    let opened_at = loaded
        .week(key.week)
        .and_then(|it| it.facts.lists_opened_at);
    let opened_at = opened_at.ok_or_else(|| broken(&"a round before its lists are opened"))?;
    let lists = list_opened(conn, club, id, key.week, opened_at).await?;
    let receipts = lists
        .into_iter()
        .filter_map(|list| Some(document::hex(&list.sealed?.digest)))
        .collect();
    Ok(TaskDocument::of(&task, receipts))
}

/// The round's draw: the season's secret keyed on the locked inputs.
pub(super) async fn draw(
    conn: &mut Conn,
    season: &Season,
    inputs: &TaskDocument,
) -> Result<Draw, Refusal> {
    let seed = store::seasons::find_seed(conn, season.club, season.id).await?;
    let seed: [u8; 32] = seed
        .try_into()
        .map_err(|_| broken(&"the seed is not 32 bytes"))?;
    let digest = inputs.digest().map_err(|cause| broken(&cause))?;
    Ok(Secret::new(seed).draw(digest))
}

pub(super) async fn solve(desk: &Desk, task: Task) -> Result<Proposal, Refusal> {
    let timed = desk.timed.clone();
    let solved = aside(move || timed.take(Step::Solve, || propose(&task))).await?;
    solved.map_err(|why| match why {
        Impossible::Faulty(faults) => {
            let faults = faults
                .iter()
                .map(|fault| Fault::new("pairing.order", "", fault.to_string()))
                .collect();
            Refusal::faults(
                Reason::NoRoundPossible,
                "The orders contradict the facts.",
                faults,
            )
        }
        Impossible::NoGame | Impossible::TooHard(_) => Refusal::rule(
            Reason::NoRoundPossible,
            format!("There is no such round: {why}."),
        ),
    })
}

pub(super) fn broken(cause: &impl std::fmt::Debug) -> Refusal {
    Refusal::Broken(format!("pairing: {cause:?}"))
}
