//! The decision of a task: the best pairs of vertices, fewest byes first, then the least cost.

use crate::pairing::cost::PairCosts;
use crate::pairing::cost::participants::Participants;
use crate::pairing::round::certificate::{Node, Vertex};
use crate::pairing::round::cost::Cost;
use crate::pairing::round::game::Pair;
use crate::pairing::round::hall::Capacity;
use crate::pairing::round::proposal::{LookAhead, ProposeError};
use crate::pairing::round::task::Task;

use super::branch_and_bound::{self, BestMatching, BranchError, Constraints};
use super::look_ahead::{self, Feasibility, RoundsPlan, UnmetGraph};
use super::sparse;

/// The best pairs, and all that is known about them.
pub struct Decision {
    pub costs: PairCosts,
    pub capacity: Capacity,
    pub best: BestMatching,
    /// Proof that fewer byes are not enough.
    pub fewer: Vec<Node>,
    /// What is known of the rounds to come.
    pub look_ahead: LookAhead,
    /// Later rounds that were kept playable, where a look-ahead was possible.
    pub kept: Option<usize>,
}

/// A pair, or a player sitting out, that a decision must do without.
#[derive(Clone, Copy, Debug)]
pub struct Without(pub [Vertex; 2]);

/// The best pairing of a task.
///
/// # Errors
/// [`ProposeError`] with every fault of the task, or when no game can be played or none was proven.
pub fn decide(task: &Task) -> Result<Decision, ProposeError> {
    let participants = Participants::new(task).map_err(ProposeError::InvalidTask)?;
    decide_without(task, &participants, None)
}

/// As [`decide`], with participants already built and without one pair.
///
/// # Errors
/// [`ProposeError`] when no game can be played or none was proven.
pub fn decide_without(
    task: &Task,
    participants: &Participants,
    without: Option<Without>,
) -> Result<Decision, ProposeError> {
    let capacity = Capacity::new(&task.nights);
    let mut fewer = Vec::new();
    let least = fewest_byes(participants.count(), &capacity);
    for byes in (least..participants.count()).step_by(2) {
        let costs = PairCosts::new(task, participants.clone(), byes)
            .map_err(|fault| ProposeError::InvalidTask(vec![fault]))?;
        let excluded = without.map_or(Vec::new(), |Without(pair)| {
            bye_variants(pair, participants.count(), byes)
        });
        match solve_with_byes(task, &costs, &capacity, excluded) {
            Ok((best, look_ahead, kept)) => {
                return Ok(Decision {
                    costs,
                    capacity,
                    best,
                    fewer,
                    look_ahead,
                    kept,
                });
            }
            Err(BranchError::Infeasible(tree)) => fewer = tree,
            Err(BranchError::NodeLimit) => {
                return Err(ProposeError::SearchLimit(branch_and_bound::MAX_NODES));
            }
        }
    }
    Err(ProposeError::NoGame)
}

/// The best without one pair.
pub struct Alternative {
    pub cost: Cost,
    /// Later rounds that stay playable after it, where a look-ahead was possible.
    pub kept: Option<usize>,
}

impl Decision {
    /// The best pairing that does without one pair, or without one player sitting out.
    ///
    /// The matcher's duals are kept and only the broken pair is searched again. Where that does not
    /// fit the hall or the later rounds, the whole task is decided anew.
    ///
    /// # Errors
    /// [`ProposeError`] when there is none.
    pub fn without(&self, task: &Task, pair: [Vertex; 2]) -> Result<Alternative, ProposeError> {
        if let Some(cost) = self.reoptimized(pair) {
            return Ok(Alternative {
                cost,
                kept: self.kept,
            });
        }
        let other = decide_without(task, self.costs.participants(), Some(Without(pair)))?;
        let cost = other.costs.total(other.best.pairs.iter().copied());
        Ok(Alternative {
            cost,
            kept: other.kept,
        })
    }

    fn reoptimized(&self, pair: [Vertex; 2]) -> Option<Cost> {
        if self.best.tree.len() > 1 {
            return None;
        }
        let players = self.costs.participants().count();
        let excluded = bye_variants(pair, players, self.costs.byes());
        let matcher =
            sparse::optimum_without(&self.costs, self.best.matcher.clone(), &excluded).ok()?;
        let pairs = matcher.pairs();
        let unmet = UnmetGraph::new(&self.costs, &self.capacity);
        let unmet = self.kept.and_then(|kept| Some((unmet?, kept)));
        let constraints = Constraints {
            costs: &self.costs,
            capacity: &self.capacity,
            unmet: None,
        };
        let dead = unmet.is_some_and(|(unmet, kept)| {
            !matches!(
                unmet.after(&pairs).can_play(kept, None),
                Feasibility::Feasible(_)
            )
        });
        (constraints.fits(&pairs) && !dead).then(|| self.costs.total(pairs))
    }
}

/// Byes that the number of players and tables alone demand.
pub fn fewest_byes(players: usize, capacity: &Capacity) -> usize {
    (players % 2).max(players.saturating_sub(2 * capacity.total()))
}

/// The pair itself; for a bye, the player with each of the bye vertices, which are interchangeable.
fn bye_variants([a, b]: [Vertex; 2], players: usize, byes: usize) -> Vec<[Vertex; 2]> {
    if (b as usize) < players {
        return vec![[a, b]];
    }
    (players..players + byes)
        .map(|bye| [a, bye as Vertex])
        .collect()
}

fn solve_with_byes(
    task: &Task,
    costs: &PairCosts,
    capacity: &Capacity,
    without: Vec<[Vertex; 2]>,
) -> Result<(BestMatching, LookAhead, Option<usize>), BranchError> {
    let left = usize::from(task.rounds_left);
    let best = |unmet| {
        Constraints {
            costs,
            capacity,
            unmet,
        }
        .best(without.clone())
    };
    if left == 0 {
        return Ok((best(None)?, LookAhead::LastRound, None));
    }
    if !look_ahead::avoids_rematches(&task.wishes) {
        return Ok((best(None)?, LookAhead::OneRound, None));
    }
    if look_ahead::never_runs_dry(costs, capacity, left) {
        return Ok((best(None)?, LookAhead::NeverRunsDry, None));
    }
    let Some(unmet) = UnmetGraph::new(costs, capacity) else {
        return Ok((best(None)?, LookAhead::OneRound, None));
    };
    let allowed = |a: usize, b: usize| {
        let pair = [a.min(b) as Vertex, a.max(b) as Vertex];
        costs.edge_cost(a, b).is_some() && !without.contains(&pair)
    };
    let kept = match max_playable_rounds(&unmet, left, &unmet.restricted(allowed)) {
        Some(kept) => kept,
        None => return Ok((best(None)?, LookAhead::OneRound, None)),
    };
    if kept == 0 {
        return Ok((best(None)?, LookAhead::RunsDry(Vec::new()), None));
    }
    let best = best(Some((&unmet, kept)))?;
    let Some(plan) = &best.plan else {
        return Ok((best, LookAhead::OneRound, None));
    };
    let plan = to_player_pairs(plan, costs.participants());
    let look_ahead = if kept == left {
        LookAhead::Playable(plan)
    } else {
        LookAhead::RunsDry(plan)
    };
    Ok((best, look_ahead, Some(kept)))
}

/// How many of the rounds left can follow some pairing of this round; `None` when unknown.
fn max_playable_rounds(unmet: &UnmetGraph<'_>, left: usize, first: &[u32]) -> Option<usize> {
    for rounds in (2..=left + 1).rev() {
        match unmet.can_play(rounds, Some(first.to_vec())) {
            Feasibility::Feasible(_) => return Some(rounds - 1),
            Feasibility::Infeasible => {}
            Feasibility::Unknown => return None,
        }
    }
    Some(0)
}

/// A plan of vertices as pairs of players, byes left out.
fn to_player_pairs(plan: &RoundsPlan, participants: &Participants) -> Vec<Vec<Pair>> {
    let player = |vertex: Vertex| participants.list.get(vertex as usize).map(|e| e.player);
    let pair = |&[a, b]: &[Vertex; 2]| Pair::new(player(a)?, player(b)?);
    plan.iter()
        .map(|round| round.iter().filter_map(pair).collect())
        .collect()
}
