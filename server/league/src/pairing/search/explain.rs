//! Explanations of a decision: what each game gives up, and what the best pairing without it costs.

use crate::ids::PlayerId;
use crate::pairing::cost::PairCosts;
use crate::pairing::round::certificate::Vertex;
use crate::pairing::round::cost::{Cost, Level};
use crate::pairing::round::game::{Game, Pair};
use crate::pairing::round::reason::{AlternativeCost, Barrier, PairingReason, Subject};
use crate::pairing::round::task::Task;
use crate::pairing::round::wishes::Wish;
use crate::pairing::solve::Matcher;
use crate::pairing::solve::graph::Graph;
use crate::points::LeaguePoints;

use super::decide::Decision;

/// Most players for whom every game is explained by its best alternative: each is another solve.
pub const MAX_EXPLAINED: usize = 128;

/// Reasons for these games and byes, in that order.
pub fn explain(
    task: &Task,
    decision: &Decision,
    games: &[Game],
    byes: &[PlayerId],
) -> Vec<PairingReason> {
    let (costs, participants) = (&decision.costs, decision.costs.participants());
    let paired = games
        .iter()
        .filter_map(|game| participants.vertices_of(game.pair()?));
    let bye = participants.count() as Vertex;
    let alone = byes
        .iter()
        .filter_map(|&player| Some([participants.vertex_of(player)?, bye]));
    let reason = |[a, b]: [Vertex; 2]| PairingReason {
        subject: subject(costs, a, b),
        given_up: given_up(costs, a, b),
        alternative: alternative_cost(task, decision, [a.min(b), a.max(b)]),
    };
    paired.chain(alone).map(reason).collect()
}

fn subject(costs: &PairCosts, a: Vertex, b: Vertex) -> Subject {
    let players = &costs.participants().list;
    let one = &players[a as usize];
    let score = LeaguePoints::new(one.score);
    let Some(other) = players.get(b as usize) else {
        return Subject::Bye {
            player: one.player,
            score,
        };
    };
    let (down, up) = if one.score >= other.score {
        (one, other)
    } else {
        (other, one)
    };
    match Pair::new(one.player, other.player) {
        Some(pair) if one.score == other.score => Subject::SameScore { pair, score },
        _ => Subject::Float {
            down: down.player,
            down_score: LeaguePoints::new(down.score),
            up: up.player,
            up_score: LeaguePoints::new(up.score),
        },
    }
}

fn given_up(costs: &PairCosts, a: Vertex, b: Vertex) -> Vec<(Wish, u64)> {
    let Cost(levels) = costs.total([[a, b]]);
    let wish = |(level, amount)| match level {
        Level::Wish(wish) if amount > 0 => Some((wish, amount)),
        _ => None,
    };
    levels.into_iter().filter_map(wish).collect()
}

fn alternative_cost(task: &Task, decision: &Decision, pair: [Vertex; 2]) -> AlternativeCost {
    let participants = decision.costs.participants();
    let player = participants.list[pair[0] as usize];
    if player.pinned.is_some() {
        let ordered = task.pins.iter().any(|pin| pin.contains(player.player));
        return if ordered {
            AlternativeCost::Pinned
        } else {
            AlternativeCost::Fixed
        };
    }
    if participants.count() > MAX_EXPLAINED {
        return AlternativeCost::NotComputed;
    }
    let best = decision.costs.total(decision.best.pairs.iter().copied());
    let Ok(other) = decision.without(task, pair) else {
        return AlternativeCost::Indispensable;
    };
    if other.kept != decision.kept {
        return AlternativeCost::ShorterSeason;
    }
    let levels = best.0.iter().zip(&other.cost.0);
    let worse = levels.map(|(&(level, least), &(_, more))| (level, more.saturating_sub(least)));
    let first = worse.into_iter().find(|&(_, more)| more > 0);
    first.map_or(AlternativeCost::EquallyGood, |(level, more)| {
        AlternativeCost::Worse(level, more)
    })
}

/// Why this cost has rematches, when the numbers alone force them.
pub fn find_barrier(costs: &PairCosts, cost: &Cost) -> Option<Barrier> {
    if cost.amount(Level::Wish(Wish::NoRematch)) == 0 {
        return None;
    }
    let participants = costs.participants();
    let fresh = |a: usize, b: usize| {
        let met = b < participants.count() && participants.relation(a, b).met > 0;
        costs.edge_cost(a, b).filter(|_| !met).map(|_| 0)
    };
    let found = Matcher::new(Graph::complete(costs.vertex_count(), fresh)).odd_sets();
    let left_over = found.sets.len().checked_sub(found.removed.len())?;
    let players = |vertices: Vec<Vertex>| -> Vec<PlayerId> {
        let players = vertices
            .iter()
            .filter_map(|&vertex| participants.list.get(vertex as usize));
        players.map(|e| e.player).collect()
    };
    (left_over > 0).then(|| Barrier {
        removed: players(found.removed),
        odd_sets: found
            .sets
            .into_iter()
            .map(players)
            .filter(|set| !set.is_empty())
            .collect(),
        rematches: left_over.div_ceil(2) as u32,
    })
}
