//! The proposal of a task: the best pairs with nights, tables, roles, reasons and proof.

use crate::pairing::cost::participants::Entrant;
use crate::pairing::cost::{self, Attacker, Tariff};
use crate::pairing::round::certificate::{Certificate, Place};
use crate::pairing::round::game::{Fixture, Game, Pair};
use crate::pairing::round::proposal::{Impossible, Proposal};
use crate::pairing::round::task::Task;

use super::decide::{Decision, decide};
use super::explain;
use super::table_assignment::{self, Wanted};

/// The best pairing of a task. The same task gives the same proposal, in whatever order its lists
/// stand.
///
/// # Errors
/// [`Impossible`] with every fault of the task, or when no game can be played.
pub fn propose(task: &Task) -> Result<Proposal, Impossible> {
    let decision = decide(task)?;
    let tariff = &decision.tariff;
    let players = tariff.field().players();
    let (games, byes): (Vec<[Place; 2]>, Vec<[Place; 2]>) = decision
        .best
        .pairs
        .iter()
        .partition(|[_, b]| (*b as usize) < players);
    let mut games = seat(task, tariff, &games).ok_or(Impossible::NoGame)?;
    games.sort();
    let sits_out = |&[a, _]: &[Place; 2]| tariff.field().entrants[a as usize].player;
    let mut byes: Vec<_> = byes.iter().map(sits_out).collect();
    byes.sort();
    let total = |pairs: &[[Place; 2]]| tariff.total(pairs.iter().copied());
    let (cost, unlimited) = (total(&decision.best.pairs), total(&decision.best.unlimited));
    Ok(Proposal {
        reasons: explain::reasons(task, &decision, &games, &byes),
        barrier: explain::barrier(tariff, &cost),
        certificate: certificate(&decision),
        cost,
        cost_without_hall: unlimited,
        looked_ahead: decision.looked_ahead,
        games,
        byes,
    })
}

/// Nights, tables and roles for pairs.
fn seat(task: &Task, tariff: &Tariff, pairs: &[[Place; 2]]) -> Option<Vec<Game>> {
    let entrants = &tariff.field().entrants;
    let used = |player| {
        let found = task.contenders.iter().find(|c| c.player == player);
        found.map_or(&[][..], |c| &c.tables[..])
    };
    let both = pairs
        .iter()
        .map(|&[a, b]| (&entrants[a as usize], &entrants[b as usize]));
    let both: Vec<_> = both.collect();
    let wanted: Vec<Wanted<'_>> = both
        .iter()
        .map(|(one, other)| Wanted {
            nights: one.nights.and(other.nights),
            used: [used(one.player), used(other.player)],
            kept: published(task, one, other).map(|game| (game.night, game.table)),
        })
        .collect();
    let slots = table_assignment::assign(&wanted, &task.nights)?;
    let games = both
        .iter()
        .zip(slots)
        .map(|((one, other), (night, table))| {
            if let Some(game) = published(task, one, other) {
                return Game {
                    night,
                    table,
                    ..*game
                };
            }
            if let Some(fixture) = fixed(task, one, other) {
                return Game {
                    night,
                    table,
                    attacker: fixture.attacker,
                    defender: fixture.defender,
                };
            }
            let one_attacks = match cost::roles(one.due, other.due).0 {
                Attacker::One => true,
                Attacker::Other => false,
                Attacker::Either => one.drawn <= other.drawn,
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
fn published<'t>(task: &'t Task, one: &Entrant, other: &Entrant) -> Option<&'t Game> {
    let pair = Pair::new(one.player, other.player);
    task.published.iter().find(|game| game.pair() == pair)
}

/// The fixed game of these two.
fn fixed(task: &Task, one: &Entrant, other: &Entrant) -> Option<Fixture> {
    let pair = Pair::new(one.player, other.player);
    let mut fixed = task.fixed.iter().copied();
    fixed.find(|fixture| fixture.pair() == pair)
}

fn certificate(decision: &Decision) -> Certificate {
    Certificate {
        players: decision
            .tariff
            .field()
            .entrants
            .iter()
            .map(|e| e.player)
            .collect(),
        byes: decision.tariff.byes() as u32,
        fewer: decision.fewer.clone(),
        tree: decision.best.tree.clone(),
    }
}
