//! Publishing a round: its proof is checked once more, and its games are fixed for good.

use document::trail::{PublishedRound, TrailAct};
use league::ids::RoundId;
use league::keys::SeasonKey;
use league::pairing::round::neutrality::is_stale;
use messages::{round_refusals, seasons};
use store::Conn;
use store::games::GameRow;
use store::rounds::RoundRow;
use store::seasons::Season;

use super::build_games::build_games;
use super::neutrality::must_be_approved;
use super::pairing_timer::PairingStep;
use super::propose_round::{already_paired, compute_draw};
use super::publish_repair::{publish_repair, save_nights};
use super::repair_round::changes_between;
use crate::access::{authorize, must_allow, must_be_started};
use crate::load_season::load_season;
use crate::season_change::SeasonChange;
use crate::{Action, Actor, App, Reason, Refusal};

/// Publishes a round as it was drawn, or a repair of it: then games that the repair keeps stay as
/// they are, reports and all. Referees publish repairs, too. Returns the games of the round.
///
/// # Errors
/// [`Reason::RoundAlreadyPaired`], [`Reason::WeekState`] once the week is closed,
/// [`Reason::SlipStateChanged`] when a game that the repair changes was reported in the meantime,
/// [`Reason::ApprovalRequired`] when the repair changes the actor's own game;
/// [`Reason::CommitmentMismatch`] when the proposal does not follow
/// from its inputs and the committed seed, or its proof does not hold: an incident, not a warning.
pub async fn publish_round(
    app: &App,
    actor: Actor,
    season: SeasonKey,
    round: RoundId,
) -> Result<Vec<GameRow>, Refusal> {
    app.write(async |mut tx| {
        let role = authorize(&mut tx, actor, season.club, Action::Judge).await?;
        let found = store::rounds::find(&mut tx, season, round).await?;
        if found.repair.is_none() {
            must_allow(role, Action::RunSeason)?;
        }
        let standing = lock_games(&mut tx, season, &found).await?;
        let season = store::seasons::lock(&mut tx, season).await?;
        must_be_started(&season)?;
        let rounds = store::rounds::list(&mut tx, season.key(), Some(found.week)).await?;
        let round = find_round(&rounds, found.id)?;
        let week = store::weeks::lock(&mut tx, season.key().week(round.week)).await?;
        if round.published_at.is_some() {
            return Err(already_paired());
        }
        if week.facts.closed_at.is_some() {
            return Err(Refusal::rule(Reason::WeekState, seasons::week_is_closed()));
        }
        must_be_fresh(&rounds, round)?;
        must_verify(app, &mut tx, &season, round).await?;
        let now = store::clock::now(&tx).await?;
        let mut loaded = load_season(&tx, app, &season, now).await?;
        let games = build_games(round, &week, &loaded)?;
        let by = actor.account;
        let act = match &round.repair {
            Some(repair) => {
                let before = find_round(&rounds, RoundId(repair.of))?;
                let changes = changes_between(before, round)?;
                must_be_approved(&mut tx, &season, &loaded, actor, &changes).await?;
                store::rounds::mark_published(&mut tx, season.key(), round.id, by, now).await?;
                publish_repair(&mut tx, &season, &standing, &games).await?;
                save_nights(&mut tx, &season, &week, (before, round), now).await?;
                TrailAct::PublishRepair {
                    round: round_facts(round),
                    version: round.version,
                    repairs: repair.of,
                    reason: repair.reason.clone(),
                }
            }
            None => {
                store::rounds::mark_published(&mut tx, season.key(), round.id, by, now).await?;
                store::games::create(&mut tx, season.key(), &games).await?;
                if week.facts.paired_at.is_none() {
                    store::weeks::mark_paired(&mut tx, season.key().week(week.week), now).await?;
                }
                TrailAct::PublishRound(round_facts(round))
            }
        };
        loaded.reload_games(&tx, &season).await?;
        let mut games = loaded.games.clone();
        games.retain(|game| (game.week, game.round_no) == (week.week, round.number));
        let change = SeasonChange::new(season.key(), actor, now, act);
        let change = SeasonChange {
            loaded: Some((season, loaded)),
            ..change
        };
        Ok(tx.publish(change).await?.with(games))
    })
    .await
}

/// The games that a repair may change, locked before the season is, as a report does: else the two
/// would wait for each other.
async fn lock_games(
    conn: &mut Conn,
    season: SeasonKey,
    round: &RoundRow,
) -> Result<Vec<GameRow>, Refusal> {
    match round.repair {
        None => Ok(Vec::new()),
        Some(_) => {
            let (week, number) = (round.week, round.number);
            Ok(store::repairs::lock_games(conn, season.week(week), number).await?)
        }
    }
}

/// What the trail tells of a round.
fn round_facts(round: &RoundRow) -> PublishedRound {
    PublishedRound {
        week: round.week.number(),
        number: round.number,
        round: round.id.0,
        pins: round.task.pins.clone(),
        forbidden: round.task.forbidden.clone(),
    }
}

fn find_round(rounds: &[RoundRow], id: RoundId) -> Result<&RoundRow, Refusal> {
    rounds
        .iter()
        .find(|round| round.id == id)
        .ok_or(Refusal::NotFound)
}

fn must_be_fresh(rounds: &[RoundRow], round: &RoundRow) -> Result<(), Refusal> {
    let published = rounds.iter().filter_map(|other| other.published_at);
    if is_stale(round.proposed_at, published) {
        return Err(Refusal::rule(
            Reason::WeekState,
            round_refusals::other_round_published(),
        ));
    }
    Ok(())
}

/// What is published follows from the locked inputs and the committed seed, and is proven best.
async fn must_verify(
    app: &App,
    conn: &mut Conn,
    season: &Season,
    round: &RoundRow,
) -> Result<(), Refusal> {
    let mismatch = |why: String| {
        tracing::error!(round = %round.id, why, "a proposal does not hold");
        Refusal::rule(
            Reason::CommitmentMismatch,
            round_refusals::proposal_mismatch(),
        )
    };
    let draw = compute_draw(conn, season, &round.task).await?;
    if draw.0.as_slice() != round.draw {
        return Err(mismatch("another draw".to_owned()));
    }
    let task = round
        .task
        .to_task(draw)
        .map_err(|faults| mismatch(format!("{faults:?}")))?;
    let proposal = round.proposal.to_proposal();
    let proposal = proposal.map_err(|fault| mismatch(fault.to_string()))?;
    let check = || league::pairing::verify(&task, &proposal);
    let checked = app.pairing_timer.time(PairingStep::Check, check);
    checked.map_err(|flaw| mismatch(format!("{flaw:?}")))
}
