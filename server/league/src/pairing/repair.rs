//! A published round after a shock: somebody is ill at noon, a night is lost.

use std::collections::BTreeSet;

use crate::ids::PlayerId;

use super::{Game, Impossible, Pair, Proposal, Task, propose};

/// A repaired round. Its proposal is proven like any other: after the players without a game, its
/// cost counts the games that differ from the published ones, so no repair changes fewer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Repair {
    /// The task that was solved: who is left, and the published round.
    pub task: Task,
    /// The best repair.
    pub proposal: Proposal,
    /// Games that were not published.
    pub changed: Vec<Pair>,
}

/// Repairs a published round without the players who are out. `task` says what holds now: nights
/// and tables that are still there, pins and prohibitions.
///
/// # Errors
/// [`Impossible`] as for [`propose`].
pub fn repair(task: &Task, published: &[Game], out: &[PlayerId]) -> Result<Repair, Impossible> {
    let mut task = task.clone();
    task.contenders
        .retain(|contender| !out.contains(&contender.player));
    task.pins
        .retain(|pin| !out.iter().any(|&player| pin.has(player)));
    task.published = published.to_vec();
    let proposal = propose(&task)?;
    let before: BTreeSet<Pair> = published.iter().filter_map(Game::pair).collect();
    let games = proposal.games.iter().filter_map(Game::pair);
    let changed = games.filter(|pair| !before.contains(pair)).collect();
    Ok(Repair {
        task,
        proposal,
        changed,
    })
}
