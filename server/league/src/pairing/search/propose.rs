//! Builds the proposal of a task: the best pairs with nights, tables, roles, reasons and proof.

use crate::pairing::cost::participants::Participant;
use crate::pairing::cost::{self, Attacker, PairCosts};
use crate::pairing::round::certificate::{Certificate, Vertex};
use crate::pairing::round::game::{FixedGame, Game, Pair};
use crate::pairing::round::proposal::{Proposal, ProposeError};
use crate::pairing::round::task::Task;

use super::decide::{Decision, decide};
use super::explain;
use super::table_assignment::{self, TableRequest};

/// The best pairing of a task. The same task gives the same proposal, in whatever order its lists
/// stand.
///
/// # Errors
/// [`ProposeError`] with every fault of the task, or when no game can be played.
pub fn propose(task: &Task) -> Result<Proposal, ProposeError> {
    let decision = decide(task)?;
    let costs = &decision.costs;
    let players = costs.participants().count();
    let (games, byes): (Vec<[Vertex; 2]>, Vec<[Vertex; 2]>) = decision
        .best
        .pairs
        .iter()
        .partition(|[_, b]| (*b as usize) < players);
    let mut games = assign_slots(task, costs, &games).ok_or(ProposeError::NoGame)?;
    games.sort();
    let sits_out = |&[a, _]: &[Vertex; 2]| costs.participants().list[a as usize].player;
    let mut byes: Vec<_> = byes.iter().map(sits_out).collect();
    byes.sort();
    let total = |pairs: &[[Vertex; 2]]| costs.total(pairs.iter().copied());
    let (cost, unlimited) = (total(&decision.best.pairs), total(&decision.best.unlimited));
    Ok(Proposal {
        reasons: explain::explain(task, &decision, &games, &byes),
        barrier: explain::find_barrier(costs, &cost),
        certificate: certificate(&decision),
        cost,
        cost_without_hall: unlimited,
        look_ahead: decision.look_ahead,
        games,
        byes,
    })
}

/// Nights, tables and roles for pairs.
fn assign_slots(task: &Task, costs: &PairCosts, pairs: &[[Vertex; 2]]) -> Option<Vec<Game>> {
    let players = &costs.participants().list;
    let used = |player| {
        let found = task.contenders.iter().find(|c| c.player == player);
        found.map_or(&[][..], |c| &c.tables[..])
    };
    let both = pairs
        .iter()
        .map(|&[a, b]| (&players[a as usize], &players[b as usize]));
    let both: Vec<_> = both.collect();
    let wanted: Vec<TableRequest<'_>> = both
        .iter()
        .map(|(one, other)| TableRequest {
            nights: one.nights.intersection(other.nights),
            used: [used(one.player), used(other.player)],
            published: published_game(task, one, other).map(|game| (game.night, game.table)),
        })
        .collect();
    let slots = table_assignment::assign_tables(&wanted, &task.nights)?;
    let games = both
        .iter()
        .zip(slots)
        .map(|((one, other), (night, table))| {
            if let Some(game) = published_game(task, one, other) {
                return Game {
                    night,
                    table,
                    ..*game
                };
            }
            if let Some(fixture) = fixed_game(task, one, other) {
                return Game {
                    night,
                    table,
                    attacker: fixture.attacker,
                    defender: fixture.defender,
                };
            }
            let one_attacks = match cost::assign_roles(one.due_role, other.due_role).0 {
                Attacker::One => true,
                Attacker::Other => false,
                Attacker::Either => one.draw_number <= other.draw_number,
            };
            let (attacker, defender) = if one_attacks {
                (one, other)
            } else {
                (other, one)
            };
            Game {
                night,
                table,
                attacker: attacker.player,
                defender: defender.player,
            }
        });
    Some(games.collect())
}

/// The published game of these two.
fn published_game<'t>(task: &'t Task, one: &Participant, other: &Participant) -> Option<&'t Game> {
    let pair = Pair::new(one.player, other.player);
    task.published.iter().find(|game| game.pair() == pair)
}

/// The fixed game of these two.
fn fixed_game(task: &Task, one: &Participant, other: &Participant) -> Option<FixedGame> {
    let pair = Pair::new(one.player, other.player);
    let mut fixed = task.fixed.iter().copied();
    fixed.find(|fixture| fixture.pair() == pair)
}

fn certificate(decision: &Decision) -> Certificate {
    Certificate {
        players: decision
            .costs
            .participants()
            .list
            .iter()
            .map(|e| e.player)
            .collect(),
        byes: decision.costs.byes() as u32,
        fewer: decision.fewer.clone(),
        tree: decision.best.tree.clone(),
    }
}
