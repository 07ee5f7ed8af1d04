//! From a task to the best pairs of places: fewest byes first, then the least cost that fits.

use crate::pairing::cost::Tariff;
use crate::pairing::cost::participants::Field;
use crate::pairing::round::certificate::{Node, Place};
use crate::pairing::round::cost::Cost;
use crate::pairing::round::game::Pair;
use crate::pairing::round::hall::Capacity;
use crate::pairing::round::proposal::{Impossible, LookedAhead};
use crate::pairing::round::task::Task;

use super::branch_and_bound::{self, Best, Limits, NoBest};
use super::look_ahead::{self, Answer, Future, Plan};
use super::sparse;

/// The best pairs, and all that is known about them.
pub struct Decision {
    /// Prices.
    pub tariff: Tariff,
    /// Tables.
    pub capacity: Capacity,
    /// Pairs, proof and matcher.
    pub best: Best,
    /// Proof that fewer byes are not enough.
    pub fewer: Vec<Node>,
    /// What is known of the rounds to come.
    pub looked_ahead: LookedAhead,
    /// Rounds that were kept playable, when the future was searched.
    pub kept: Option<usize>,
}

/// A pair, or a player sitting out, that a decision must do without.
#[derive(Clone, Copy, Debug)]
pub struct Without(pub [Place; 2]);

/// The best pairing of a task.
///
/// # Errors
/// [`Impossible`] with every fault of the task, or when no game can be played or none was proven.
pub fn decide(task: &Task) -> Result<Decision, Impossible> {
    let field = Field::new(task).map_err(Impossible::Faulty)?;
    decide_without(task, &field, None)
}

/// As [`decide`], in a field already built and without one pair.
///
/// # Errors
/// [`Impossible`] when no game can be played or none was proven.
pub fn decide_without(
    task: &Task,
    field: &Field,
    without: Option<Without>,
) -> Result<Decision, Impossible> {
    let capacity = Capacity::of(&task.nights);
    let mut fewer = Vec::new();
    let least = fewest_byes(field.players(), &capacity);
    for byes in (least..field.players()).step_by(2) {
        let tariff = Tariff::new(task, field.clone(), byes)
            .map_err(|fault| Impossible::Faulty(vec![fault]))?;
        let torn = without.map_or(Vec::new(), |Without(pair)| {
            spread(pair, field.players(), byes)
        });
        match attempt(task, &tariff, &capacity, torn) {
            Ok((best, looked_ahead, kept)) => {
                return Ok(Decision {
                    tariff,
                    capacity,
                    best,
                    fewer,
                    looked_ahead,
                    kept,
                });
            }
            Err(NoBest::None(tree)) => fewer = tree,
            Err(NoBest::TooHard) => return Err(Impossible::TooHard(branch_and_bound::MOST_NODES)),
        }
    }
    Err(Impossible::NoGame)
}

/// The best without one pair.
pub struct Alternative {
    /// What it costs.
    pub cost: Cost,
    /// Rounds that stay playable after it, when the future was searched.
    pub kept: Option<usize>,
}

impl Decision {
    /// The best pairing that does without one pair, or without one player sitting out.
    ///
    /// The matcher's duals are kept and only the broken pair is searched again. Where that does not
    /// fit the hall or the future, the whole task is decided anew.
    ///
    /// # Errors
    /// [`Impossible`] when there is none.
    pub fn without(&self, task: &Task, pair: [Place; 2]) -> Result<Alternative, Impossible> {
        if let Some(cost) = self.nearby(pair) {
            return Ok(Alternative {
                cost,
                kept: self.kept,
            });
        }
        let other = decide_without(task, self.tariff.field(), Some(Without(pair)))?;
        let cost = other.tariff.total(other.best.pairs.iter().copied());
        Ok(Alternative {
            cost,
            kept: other.kept,
        })
    }

    fn nearby(&self, pair: [Place; 2]) -> Option<Cost> {
        if self.best.tree.len() > 1 {
            return None;
        }
        let players = self.tariff.field().players();
        let torn = spread(pair, players, self.tariff.byes());
        let matcher = sparse::without(&self.tariff, self.best.matcher.clone(), &torn).ok()?;
        let pairs = matcher.pairs();
        let future = Future::of(&self.tariff, &self.capacity);
        let future = self.kept.and_then(|kept| Some((future?, kept)));
        let limits = Limits {
            tariff: &self.tariff,
            capacity: &self.capacity,
            future: None,
        };
        let dead = future.is_some_and(|(future, kept)| {
            !matches!(future.after(&pairs).playable(kept, None), Answer::Yes(_))
        });
        (limits.fits(&pairs) && !dead).then(|| self.tariff.total(pairs))
    }
}

/// Byes that the number of players and tables alone demand.
pub fn fewest_byes(players: usize, capacity: &Capacity) -> usize {
    (players % 2).max(players.saturating_sub(2 * capacity.total()))
}

/// A bye can be taken in any bye place.
fn spread([a, b]: [Place; 2], players: usize, byes: usize) -> Vec<[Place; 2]> {
    if (b as usize) < players {
        return vec![[a, b]];
    }
    (players..players + byes)
        .map(|bye| [a, bye as Place])
        .collect()
}

fn attempt(
    task: &Task,
    tariff: &Tariff,
    capacity: &Capacity,
    without: Vec<[Place; 2]>,
) -> Result<(Best, LookedAhead, Option<usize>), NoBest> {
    let left = usize::from(task.rounds_left);
    let best = |future| {
        Limits {
            tariff,
            capacity,
            future,
        }
        .best(without.clone())
    };
    if left == 0 {
        return Ok((best(None)?, LookedAhead::LastRound, None));
    }
    if !look_ahead::is_wanted(&task.wishes) {
        return Ok((best(None)?, LookedAhead::OneRound, None));
    }
    if look_ahead::never_runs_dry(tariff, capacity, left) {
        return Ok((best(None)?, LookedAhead::NeverRunsDry, None));
    }
    let Some(future) = Future::of(tariff, capacity) else {
        return Ok((best(None)?, LookedAhead::OneRound, None));
    };
    let allowed = |a: usize, b: usize| {
        let pair = [a.min(b) as Place, a.max(b) as Place];
        tariff.price(a, b).is_some() && !without.contains(&pair)
    };
    let kept = match farthest(&future, left, &future.restricted(allowed)) {
        Some(kept) => kept,
        None => return Ok((best(None)?, LookedAhead::OneRound, None)),
    };
    if kept == 0 {
        return Ok((best(None)?, LookedAhead::RunsDry(Vec::new()), None));
    }
    let best = best(Some((&future, kept)))?;
    let Some(plan) = &best.plan else {
        return Ok((best, LookedAhead::OneRound, None));
    };
    let plan = named(plan, tariff.field());
    let looked_ahead = if kept == left {
        LookedAhead::Playable(plan)
    } else {
        LookedAhead::RunsDry(plan)
    };
    Ok((best, looked_ahead, Some(kept)))
}

/// How many of the rounds left can follow some pairing of this round; `None` when unknown.
fn farthest(future: &Future<'_>, left: usize, first: &[u32]) -> Option<usize> {
    for rounds in (2..=left + 1).rev() {
        match future.playable(rounds, Some(first.to_vec())) {
            Answer::Yes(_) => return Some(rounds - 1),
            Answer::No => {}
            Answer::Unknown => return None,
        }
    }
    Some(0)
}

/// A plan of places as pairs of players, byes left out.
fn named(plan: &Plan, field: &Field) -> Vec<Vec<Pair>> {
    let player = |place: Place| field.entrants.get(place as usize).map(|e| e.player);
    let pair = |&[a, b]: &[Place; 2]| Pair::new(player(a)?, player(b)?);
    plan.iter()
        .map(|round| round.iter().filter_map(pair).collect())
        .collect()
}
