//! Proposing a round: the best pairing under the season's wishes, with its proof and its reasons.

use document::rounds::proposal::ProposalDocument;
use document::rounds::task::TaskDocument;
use document::trail::TrailAct;
use league::ids::{PlayerId, RoundId};
use league::keys::WeekKey;
use league::pairing::history::past::RoundKey;
use league::pairing::round::draw::DrawSecret;
use league::pairing::round::orders::{Orders, read_pairs};
use league::pairing::round::task::MIN_CONTENDERS;
use league::pairing::{Draw, Proposal, ProposeError, Task, propose};
use league::season::{NoNextRound, next_round};
use league::week::WeekNo;
use messages::round_refusals;
use store::rounds::RoundRow;
use store::seasons::Season;
use store::{Conn, UniqueConstraint};
use uuid::Uuid;

use super::build_task::build_task;
use super::households::household_pairs;
use super::internal_error::internal_error;
use super::neutrality::{must_be_drawn_once, must_give_no_orders};
use super::pairing_timer::PairingStep;
use super::seats::apply_round_robin;
use crate::access::{authorize, must_be_started, policy};
use crate::lists::list_opened_lists;
use crate::load_season::load_season;
use crate::loaded_season::LoadedSeason;
use crate::refusal::map_unique_violation;
use crate::run_blocking::run_blocking;
use crate::season_change::SeasonChange;
use crate::{Action, Actor, App, Fault, Reason, Refusal};

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
    app: &App,
    actor: Actor,
    week: WeekKey,
    command: ProposeRound,
) -> Result<RoundRow, Refusal> {
    app.write(async |mut tx| {
        authorize(&mut tx, actor, week.season.club, Action::RunSeason).await?;
        let season = store::seasons::lock(&mut tx, week.season).await?;
        must_be_started(&season)?;
        // A late list is either in before the round is drawn, or not at all.
        store::weeks::lock(&mut tx, week).await?;
        let now = store::clock::now(&tx).await?;
        let loaded = load_season(&tx, app, &season, now).await?;
        let drawn = store::rounds::list(&mut tx, season.key(), None).await?;
        let key = must_be_ready(&loaded, &drawn, week.week)?;
        let mut orders = parse_orders(&loaded, &command.pins, &command.forbidden)?;
        let method = policy::parse(&season)?.rounds.method();
        let everybody = loaded.players.iter().map(|player| player.id).collect();
        let apart = household_pairs(&loaded, &everybody, method);
        orders.forbidden.retain(|pair| !apart.contains(pair));
        let inputs = lock_inputs(&mut tx, &season, &loaded, &drawn, key, &orders).await?;
        must_give_no_orders(&loaded, actor, &inputs, &orders)?;
        must_be_drawn_once(&loaded, actor, &drawn, &inputs, key.number)?;
        let draw = compute_draw(&mut tx, &season, &inputs).await?;
        let task = inputs
            .to_task(draw)
            .map_err(|faults| internal_error(&faults))?;
        let proposal = solve_task(app, task).await?;
        let round = RoundRow {
            id: RoundId(Uuid::now_v7()),
            week: week.week,
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
            store::rounds::save_proposal(&mut tx, season.key(), &round, actor.account).await;
        map_unique_violation(saved, UniqueConstraint::Round, already_paired)?;
        let act = TrailAct::ProposeRound {
            week: week.week.number(),
            number: round.number,
            draw: hex::encode(&round.draw),
            pins: round.task.pins.clone(),
            forbidden: round.task.forbidden.clone(),
        };
        // A proposal is none of the facts that tables follow from.
        let change = SeasonChange::new(season.key(), actor, now, act);
        let change = SeasonChange {
            loaded: Some((season, loaded)),
            ..change
        };
        Ok(tx.publish(change).await?.with(round))
    })
    .await
}

pub(super) fn already_paired() -> Refusal {
    Refusal::rule(
        Reason::RoundAlreadyPaired,
        round_refusals::round_published(),
    )
}

/// Which of the season's rounds is next in this week.
fn must_be_ready(
    loaded: &LoadedSeason,
    drawn: &[RoundRow],
    week: WeekNo,
) -> Result<RoundKey, Refusal> {
    let facts = &loaded.week(week).ok_or(Refusal::NotFound)?.facts;
    let before = week.previous().and_then(|last| loaded.week(last));
    let before = before.map(|last| &last.facts);
    let published = drawn
        .iter()
        .filter(|round| round.week == week && round.published_at.is_some());
    let published = published.map(|round| round.number).max().unwrap_or(0);
    let next = next_round(facts, before, published, loaded.per_week);
    let number = next.map_err(no_next_round)?;
    Ok(RoundKey { week, number })
}

fn no_next_round(why: NoNextRound) -> Refusal {
    let reason = match why {
        NoNextRound::AllPublished => Reason::RoundAlreadyPaired,
        NoNextRound::ListsSealed => Reason::ListsSealed,
        NoNextRound::WeekClosed | NoNextRound::WeekBeforeNotPaired => Reason::WeekState,
    };
    Refusal::rule(reason, why.message())
}

pub(super) fn parse_orders(
    loaded: &LoadedSeason,
    pins: &[[PlayerId; 2]],
    forbidden: &[[PlayerId; 2]],
) -> Result<Orders, Refusal> {
    let players = loaded.players.iter().map(|player| player.id).collect();
    let read = |pointer: &str, pairs: &[[PlayerId; 2]]| {
        read_pairs(pairs, &players).map_err(|index| {
            let place = format!("{pointer}/{index}");
            let message = round_refusals::two_players_needed();
            Refusal::fault(Reason::Validation, &place, message)
        })
    };
    Ok(Orders {
        pins: read("/pins", pins)?,
        forbidden: read("/forbidden", forbidden)?,
    })
}

async fn lock_inputs(
    conn: &mut Conn,
    season: &Season,
    loaded: &LoadedSeason,
    drawn: &[RoundRow],
    key: RoundKey,
    orders: &Orders,
) -> Result<TaskDocument, Refusal> {
    let week = season.key().week(key.week);
    let availabilities = store::players::list_availabilities(conn, week).await?;
    let policy = policy::parse(season)?;
    let mut task = build_task(loaded, drawn, key, &availabilities, policy.pairing, orders)?;
    let method = policy.rounds.method();
    let there = task.contenders.iter().map(|it| it.player).collect();
    task.forbidden
        .extend(household_pairs(loaded, &there, method));
    task.forbidden.sort_unstable();
    task.forbidden.dedup();
    let task = apply_round_robin(task, loaded, method, key)?;
    if !task.has_enough_contenders() {
        return Err(
            Refusal::rule(Reason::NotEnoughPlayers, round_refusals::too_few_can_come())
                .fact("actual", task.contenders.len())
                .fact("limit", MIN_CONTENDERS),
        );
    }
    let opened_at = loaded
        .week(key.week)
        .and_then(|it| it.facts.lists_opened_at);
    let opened_at =
        opened_at.ok_or_else(|| internal_error(&"a round before its lists are opened"))?;
    let lists = list_opened_lists(conn, week, opened_at).await?;
    let receipts = lists
        .into_iter()
        .filter_map(|list| Some(hex::encode(list.sealed?.digest)))
        .collect();
    Ok(TaskDocument::from_task(&task, receipts))
}

/// The round's draw: the season's secret keyed on the locked inputs.
pub(super) async fn compute_draw(
    conn: &mut Conn,
    season: &Season,
    inputs: &TaskDocument,
) -> Result<Draw, Refusal> {
    let seed = store::seasons::find_seed(conn, season.key()).await?;
    let seed: [u8; 32] = seed
        .try_into()
        .map_err(|_| internal_error(&"the seed is not 32 bytes"))?;
    let digest = inputs.digest().map_err(|cause| internal_error(&cause))?;
    Ok(DrawSecret::new(seed).draw(digest))
}

pub(super) async fn solve_task(app: &App, task: Task) -> Result<Proposal, Refusal> {
    let timer = app.pairing_timer.clone();
    let solved = run_blocking(move || timer.time(PairingStep::Solve, || propose(&task))).await?;
    solved.map_err(|why| match why {
        ProposeError::InvalidTask(faults) => {
            let faults = faults
                .iter()
                .map(|fault| Fault::new("pairing.order", "", fault.message()))
                .collect();
            Refusal::faults(
                Reason::NoRoundPossible,
                round_refusals::orders_contradict(),
                faults,
            )
        }
        ProposeError::NoGame | ProposeError::SearchLimit(_) => Refusal::rule(
            Reason::NoRoundPossible,
            round_refusals::no_round(why.message()),
        ),
    })
}
