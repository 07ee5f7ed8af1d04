//! Publishing a round: its proof is checked once more, and its games are fixed for good.

use document::rounds::repair::RepairDocument;
use league::ids::{ClubId, RoundId, SeasonId};
use serde_json::{Value, json};
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
use crate::access::{authorize, must_be_started};
use crate::load_season::load_season;
use crate::record::Scene;
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
    club: ClubId,
    season: SeasonId,
    round: RoundId,
) -> Result<Vec<GameRow>, Refusal> {
    app.store
        .write(async |conn| {
            authorize(conn, actor, club, Action::Judge).await?;
            let found = store::rounds::find(conn, club, season, round).await?;
            if found.repair.is_none() {
                authorize(conn, actor, club, Action::RunSeason).await?;
            }
            let standing = lock_games(conn, club, season, &found).await?;
            let season = store::seasons::lock(conn, club, season).await?;
            must_be_started(&season)?;
            let round = store::rounds::find(conn, club, season.id, round).await?;
            let week = store::weeks::lock(conn, club, season.id, round.week).await?;
            if round.published_at.is_some() {
                return Err(already_paired());
            }
            if week.facts.closed_at.is_some() {
                return Err(Refusal::rule(Reason::WeekState, "The week is closed."));
            }
            must_be_fresh(conn, &season, &round).await?;
            must_verify(app, conn, &season, &round).await?;
            let now = store::clock::now(conn).await?;
            let loaded = load_season(conn, app, &season, now).await?;
            if let Some(repair) = &round.repair {
                let before = RoundId(repair.of);
                let before = store::rounds::find(conn, club, season.id, before).await?;
                let changes = changes_between(&before, &round)?;
                must_be_approved(conn, &season, &loaded, actor, &changes).await?;
            }
            let games = build_games(&round, &week, &loaded)?;
            store::rounds::mark_published(conn, club, season.id, round.id, actor.account, now)
                .await?;
            let scene = Scene::in_season(season.key(), actor, now);
            if let Some(repair) = &round.repair {
                publish_repair(conn, &season, &standing, &games).await?;
                save_nights(conn, &season, &week, &round, repair, now).await?;
                let facts = repair_facts(&round, repair);
                scene
                    .tell_everyone(app, conn, "publish_repair", facts)
                    .await?;
            } else {
                store::games::create(conn, club, season.id, &games).await?;
                if week.facts.paired_at.is_none() {
                    store::weeks::mark_paired(conn, club, season.id, week.week, now).await?;
                }
                let facts = round_facts(&round);
                scene
                    .tell_everyone(app, conn, "publish_round", facts)
                    .await?;
            }
            let mut games = store::games::list(conn, club, season.id, Some(week.week)).await?;
            games.retain(|game| game.round_no == round.number);
            Ok(games)
        })
        .await
}

/// The games that a repair may change, locked before the season is, as a report does: else the two
/// would wait for each other.
async fn lock_games(
    conn: &mut Conn,
    club: ClubId,
    season: SeasonId,
    round: &RoundRow,
) -> Result<Vec<GameRow>, Refusal> {
    match round.repair {
        None => Ok(Vec::new()),
        Some(_) => {
            let (week, number) = (round.week, round.number);
            Ok(store::repairs::lock_games(conn, club, season, week, number).await?)
        }
    }
}

/// What the trail tells of a round.
fn round_facts(round: &RoundRow) -> Value {
    json!({
        "week": round.week.number(),
        "number": round.number,
        "round": round.id.0,
        "pins": round.task.pins,
        "forbidden": round.task.forbidden,
    })
}

/// What the trail tells of a repair.
fn repair_facts(round: &RoundRow, repair: &RepairDocument) -> Value {
    let mut facts = round_facts(round);
    facts["version"] = json!(round.version);
    facts["repairs"] = json!(repair.of);
    facts["reason"] = json!(repair.reason);
    facts
}

/// Another round of the week, published since, may have taken its tables.
async fn must_be_fresh(conn: &mut Conn, season: &Season, round: &RoundRow) -> Result<(), Refusal> {
    let (club, week) = (season.club, Some(round.week));
    let others = store::rounds::list(conn, club, season.id, week).await?;
    let since = |other: &RoundRow| other.published_at.is_some_and(|at| at > round.proposed_at);
    if others.iter().any(since) {
        return Err(Refusal::rule(
            Reason::WeekState,
            "Another round of the week was published since. Propose this one anew.",
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
            "The proposal does not follow from its inputs and the committed seed.",
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
    let proposal = round.proposal.to_proposal().map_err(mismatch)?;
    let check = || league::pairing::verify(&task, &proposal);
    let checked = app.pairing_timer.time(PairingStep::Check, check);
    checked.map_err(|flaw| mismatch(format!("{flaw:?}")))
}
