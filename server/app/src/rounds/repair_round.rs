//! Repairing a published round: the fewest games change, proven, and everybody can read why.

use document::rounds::proposal::ProposalDocument;
use document::rounds::repair::RepairDocument;
use document::rounds::task::TaskDocument;
use document::trail::TrailAct;
use league::ids::{PlayerId, RoundId};
use league::keys::SeasonKey;
use league::pairing::history::past::RoundKey;
use league::pairing::round::changes::{self, AssignmentChange};
use league::pairing::round::repair;
use league::pairing::round::repairable::check_repairable;
use league::pairing::round::task::MIN_CONTENDERS;
use league::pairing::{Draw, Game, Task};
use messages::round_refusals;
use store::rounds::RoundRow;
use store::seasons::Season;
use store::weeks::Week;
use store::{Conn, UniqueConstraint};
use uuid::Uuid;

use super::disruption::gather_disruption;
use super::internal_error::internal_error;
use super::propose_round::{already_paired, compute_draw, solve_task};
use super::seats::apply_round_robin;
use crate::access::{authorize, must_be_started, policy};
use crate::load_season::load_season;
use crate::loaded_season::LoadedSeason;
use crate::refusal::map_unique_violation;
use crate::season_change::OfficersEntry;
use crate::{Action, Actor, App, Reason, Refusal, user_text};

/// What is different since the round was published; what is not named stays.
#[derive(Clone, Debug, Default)]
pub struct RepairRound {
    /// Why. Everybody reads it: it should say nothing of anybody's health.
    pub reason: String,
    /// Nights on which players can come now: none at all is out, with notice. Somebody who was not in
    /// the round comes in.
    pub availabilities: Vec<(PlayerId, Vec<String>)>,
    /// Tables that nights have now; 0 where a night is cancelled.
    pub nights: Vec<(String, u16)>,
    /// Games that must be.
    pub pins: Vec<[PlayerId; 2]>,
    /// Games that must not be.
    pub forbidden: Vec<[PlayerId; 2]>,
}

/// A repair with what it changes.
#[derive(Clone, Debug)]
pub struct RoundRepair {
    /// The next version of the round, not published yet.
    pub round: RoundRow,
    /// Everybody whose opponent, night or table is another.
    pub changes: Vec<AssignmentChange>,
}

/// Proposes a repair of the version of a round that stands. [`publish_round`](super::publish_round)
/// publishes it; until then it is a preview that the next one replaces.
///
/// # Errors
/// [`Reason::WeekState`] before the round is published and once the week is closed,
/// [`Reason::RoundAlreadyPaired`] when a later version stands, [`Reason::Validation`],
/// [`Reason::NotEnoughPlayers`], [`Reason::NoRoundPossible`], [`Reason::ConflictOfInterest`] for orders
/// about a round that one plays in, and for taking out oneself or one's opponent.
pub async fn repair_round(
    app: &App,
    actor: Actor,
    season: SeasonKey,
    round: RoundId,
    command: RepairRound,
) -> Result<RoundRepair, Refusal> {
    app.write(async |mut tx| {
        authorize(&mut tx, actor, season.club, Action::Judge).await?;
        let season = store::seasons::lock(&mut tx, season).await?;
        must_be_started(&season)?;
        let reason = user_text::parse_reason(&command.reason)?
            .as_str()
            .to_owned();
        let before = store::rounds::find(&mut tx, season.key(), round).await?;
        let week = store::weeks::lock(&mut tx, season.key().week(before.week)).await?;
        must_be_repairable(&before, &week)?;
        let now = store::clock::now(&tx).await?;
        let loaded = load_season(&tx, app, &season, now).await?;
        let drawn = drawn_task(&before)?;
        let published = published_games(&before)?;
        let standing = StandingRound {
            row: &before,
            drawn: &drawn,
            published: &published,
        };
        let disruption =
            gather_disruption(&mut tx, &season, &loaded, standing, actor, &command).await?;
        let inputs = repair_inputs(&season, &loaded, standing, disruption)?;
        let draw = compute_draw(&mut tx, &season, &inputs).await?;
        let task = inputs
            .to_task(draw)
            .map_err(|faults| internal_error(&faults))?;
        let proposal = solve_task(app, task).await?;
        let round = RoundRow {
            id: RoundId(Uuid::now_v7()),
            version: before.version + 1,
            repair: Some(RepairDocument {
                of: before.id.0,
                reason: reason.clone(),
            }),
            task: inputs,
            proposal: ProposalDocument::from(&proposal),
            draw: draw.0.to_vec(),
            proposed_at: now,
            published_at: None,
            ..before
        };
        let changes = must_change_something(&before, &round)?;
        save(&mut tx, &season, actor, &round).await?;
        let act = TrailAct::RepairRound {
            week: round.week.number(),
            repairs: before.id.0,
            reason,
        };
        Ok(tx
            .record(OfficersEntry::in_season(season.key(), actor, now, act))
            .await?
            .with(RoundRepair { round, changes }))
    })
    .await
}

fn must_be_repairable(round: &RoundRow, week: &Week) -> Result<(), Refusal> {
    check_repairable(round.published_at, &week.facts)
        .map_err(|fault| Refusal::rule(Reason::WeekState, fault.message()))
}

/// The version of a round that a repair is made of.
#[derive(Clone, Copy)]
pub(super) struct StandingRound<'a> {
    pub row: &'a RoundRow,
    /// The task that it was drawn from.
    pub drawn: &'a Task,
    pub published: &'a [Game],
}

impl StandingRound<'_> {
    pub fn key(&self) -> RoundKey {
        RoundKey {
            week: self.row.week,
            number: self.row.number,
        }
    }
}

/// The task that a round was drawn from, without its draw.
pub(super) fn drawn_task(round: &RoundRow) -> Result<Task, Refusal> {
    let task = round.task.to_task(Draw([0; 32]));
    task.map_err(|faults| internal_error(&faults))
}

fn published_games(round: &RoundRow) -> Result<Vec<Game>, Refusal> {
    let games = round.proposal.games.iter().map(|game| game.to_game());
    let games = games.collect::<Result<_, messages::Message>>();
    games.map_err(|fault| internal_error(&fault))
}

fn repair_inputs(
    season: &Season,
    loaded: &LoadedSeason,
    before: StandingRound<'_>,
    disruption: repair::Disruption,
) -> Result<TaskDocument, Refusal> {
    let mut task = repair::repair_task(before.drawn, before.published, disruption);
    let method = policy::parse(season)?.rounds.method();
    task.allowed = apply_round_robin(task.clone(), loaded, method, before.key())?.allowed;
    if !task.has_enough_contenders() {
        return Err(
            Refusal::rule(Reason::NotEnoughPlayers, round_refusals::too_few_left())
                .fact("actual", task.contenders.len())
                .fact("limit", MIN_CONTENDERS),
        );
    }
    let receipts = before.row.task.receipts.clone();
    Ok(TaskDocument::from_task(&task, receipts))
}

/// What changes, if anything does.
fn must_change_something(
    before: &RoundRow,
    after: &RoundRow,
) -> Result<Vec<AssignmentChange>, Refusal> {
    let changes = changes_between(before, after)?;
    if changes.is_empty() {
        return Err(Refusal::rule(
            Reason::Validation,
            round_refusals::nothing_changes(),
        ));
    }
    Ok(changes)
}

async fn save(
    conn: &mut Conn,
    season: &Season,
    actor: Actor,
    round: &RoundRow,
) -> Result<(), Refusal> {
    let key = season.key();
    let saved = store::rounds::save_proposal(conn, key, round, actor.account).await;
    map_unique_violation(saved, UniqueConstraint::Round, already_paired)
}

/// What another version of a round changes for whom.
pub(super) fn changes_between(
    before: &RoundRow,
    after: &RoundRow,
) -> Result<Vec<AssignmentChange>, Refusal> {
    let read = |round: &RoundRow| {
        let proposal = round
            .proposal
            .to_proposal()
            .map_err(|fault| internal_error(&fault))?;
        Ok::<_, Refusal>((proposal.games, proposal.byes))
    };
    let (before, after) = (read(before)?, read(after)?);
    Ok(changes::compare_rounds(
        (&before.0, &before.1),
        (&after.0, &after.1),
    ))
}

/// Each version of a round with what it changes in the one before.
///
/// # Errors
/// [`Refusal::Internal`] when a round that was kept cannot be read.
pub fn with_changes(rounds: Vec<RoundRow>) -> Result<Vec<RoundRepair>, Refusal> {
    let of = |round: &RoundRow| {
        let before = round.repair.as_ref().map(|repair| repair.of);
        let before = rounds.iter().find(|other| Some(other.id.0) == before);
        before.map_or_else(|| Ok(Vec::new()), |before| changes_between(before, round))
    };
    let changes: Vec<_> = rounds.iter().map(of).collect::<Result<_, _>>()?;
    let both = rounds.into_iter().zip(changes);
    Ok(both
        .map(|(round, changes)| RoundRepair { round, changes })
        .collect())
}
