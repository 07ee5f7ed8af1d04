//! Repairing a published round: the fewest games change, proven, and everybody can read why.

use document::pairing::TaskDocument;
use document::proposal::ProposalDocument;
use document::repair::RepairDocument;
use league::ids::{ClubId, PlayerId, RoundId, SeasonId};
use league::pairing::history::past::RoundKey;
use league::pairing::round::changes::{self, Change};
use league::pairing::round::repair;
use league::pairing::{Draw, Game};
use serde_json::json;
use store::rounds::Round;
use store::seasons::Season;
use store::weeks::Week;
use store::{Conn, Taken};
use uuid::Uuid;

use super::propose_round::{already_paired, broken, draw, solve};
use super::seats::as_the_table_says;
use super::shock::shock;
use crate::facts::{self, Loaded};
use crate::may::may;
use crate::record::Scene;
use crate::refusal::when_taken;
use crate::seasons::look::must_be_started;
use crate::seasons::policy;
use crate::{Action, Actor, Desk, Reason, Refusal, words};

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
pub struct Repair {
    /// The next version of the round, not published yet.
    pub round: Round,
    /// Everybody whose opponent, night or table is another.
    pub changes: Vec<Change>,
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
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    round: RoundId,
    command: RepairRound,
) -> Result<Repair, Refusal> {
    desk.store
        .write(async |conn| {
            may(conn, actor, club, Action::Judge).await?;
            let season = store::seasons::lock(conn, club, season).await?;
            must_be_started(&season)?;
            let reason = words::reason(&command.reason)?.as_str().to_owned();
            let before = store::rounds::find(conn, club, season.id, round).await?;
            let week = store::weeks::lock(conn, club, season.id, before.week).await?;
            must_be_repairable(&before, &week)?;
            let now = store::clock::now(conn).await?;
            let loaded = facts::load(conn, desk, &season, now).await?;
            let shock = shock(conn, &season, &loaded, &before, actor, &command).await?;
            let inputs = inputs(&season, &loaded, &before, shock)?;
            let draw = draw(conn, &season, &inputs).await?;
            let task = inputs.task(draw).map_err(|faults| broken(&faults))?;
            let proposal = solve(desk, task).await?;
            let round = Round {
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
            let changes = changed(&before, &round)?;
            save(conn, &season, actor, &round).await?;
            Scene::in_season(season.key(), actor, now)
                .tell_officers(
                    conn,
                    "repair_round",
                    json!({"week": round.week.number(), "repairs": before.id.0, "reason": reason}),
                )
                .await?;
            Ok(Repair { round, changes })
        })
        .await
}

fn must_be_repairable(round: &Round, week: &Week) -> Result<(), Refusal> {
    let state = |detail: &str| Err(Refusal::rule(Reason::WeekState, detail));
    if round.published_at.is_none() {
        return state("The round is not published yet; propose it anew.");
    }
    if week.facts.closed_at.is_some() {
        return state("The week is closed.");
    }
    Ok(())
}

fn inputs(
    season: &Season,
    loaded: &Loaded,
    before: &Round,
    shock: repair::Shock,
) -> Result<TaskDocument, Refusal> {
    let drawn = before.task.task(Draw([0; 32]));
    let drawn = drawn.map_err(|faults| broken(&faults))?;
    let games = before.proposal.games.iter().map(|game| game.game());
    let published = games.collect::<Result<Vec<Game>, String>>();
    let published = published.map_err(|fault| broken(&fault))?;
    let mut task = repair::task(&drawn, &published, shock);
    let key = RoundKey {
        week: before.week,
        number: before.number,
    };
    let method = policy::read(season)?.rounds.method();
    task.allowed = as_the_table_says(task.clone(), loaded, method, key)?.allowed;
    if task.contenders.len() < 2 {
        return Err(
            Refusal::rule(Reason::NotEnoughPlayers, "Fewer than two players are left.")
                .fact("actual", task.contenders.len())
                .fact("limit", 2),
        );
    }
    Ok(TaskDocument::of(&task, before.task.receipts.clone()))
}

/// What changes, if anything does.
fn changed(before: &Round, after: &Round) -> Result<Vec<Change>, Refusal> {
    let changes = changes(before, after)?;
    if changes.is_empty() {
        return Err(Refusal::rule(
            Reason::Validation,
            "Nothing changes for anybody.",
        ));
    }
    Ok(changes)
}

async fn save(
    conn: &mut Conn,
    season: &Season,
    actor: Actor,
    round: &Round,
) -> Result<(), Refusal> {
    let (club, id) = (season.club, season.id);
    let saved = store::rounds::save_proposal(conn, club, id, round, actor.account).await;
    when_taken(saved, Taken::Round, already_paired)
}

/// What another version of a round changes for whom.
pub(super) fn changes(before: &Round, after: &Round) -> Result<Vec<Change>, Refusal> {
    let read = |round: &Round| {
        let proposal = round.proposal.proposal().map_err(Refusal::Broken)?;
        Ok::<_, Refusal>((proposal.games, proposal.byes))
    };
    let (before, after) = (read(before)?, read(after)?);
    Ok(changes::changes(
        (&before.0, &before.1),
        (&after.0, &after.1),
    ))
}

/// Each version of a round with what it changes in the one before.
///
/// # Errors
/// [`Refusal::Broken`] when a round that was kept cannot be read.
pub fn with_changes(rounds: Vec<Round>) -> Result<Vec<Repair>, Refusal> {
    let of = |round: &Round| {
        let before = round.repair.as_ref().map(|repair| repair.of);
        let before = rounds.iter().find(|other| Some(other.id.0) == before);
        before.map_or_else(|| Ok(Vec::new()), |before| changes(before, round))
    };
    let changes: Vec<_> = rounds.iter().map(of).collect::<Result<_, _>>()?;
    let both = rounds.into_iter().zip(changes);
    Ok(both
        .map(|(round, changes)| Repair { round, changes })
        .collect())
}
