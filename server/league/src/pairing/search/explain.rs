//! Why the best pairing is as it is: what each game gives up, and what the best pairing without it costs.

use crate::ids::PlayerId;
use crate::pairing::cost::Tariff;
use crate::pairing::round::certificate::Place;
use crate::pairing::round::cost::{Cost, Level};
use crate::pairing::round::game::{Game, Pair};
use crate::pairing::round::reason::{Barrier, Price, Reason, Subject};
use crate::pairing::round::task::Task;
use crate::pairing::round::wishes::Wish;
use crate::pairing::solve::Matcher;
use crate::pairing::solve::graph::Graph;
use crate::points::LeaguePoints;

use super::decide::Decision;

/// Largest field in which every game is priced; each price is another solve.
pub const MOST_PRICED: usize = 128;

/// Reasons for these games and byes, in that order.
pub fn reasons(task: &Task, decision: &Decision, games: &[Game], byes: &[PlayerId]) -> Vec<Reason> {
    let (tariff, field) = (&decision.tariff, decision.tariff.field());
    let paired = games.iter().filter_map(|game| field.places(game.pair()?));
    let bye = field.players() as Place;
    let alone = byes
        .iter()
        .filter_map(|&player| Some([field.place(player)?, bye]));
    let reason = |[a, b]: [Place; 2]| Reason {
        subject: subject(tariff, a, b),
        given_up: given_up(tariff, a, b),
        price: price(task, decision, [a.min(b), a.max(b)]),
    };
    paired.chain(alone).map(reason).collect()
}

fn subject(tariff: &Tariff, a: Place, b: Place) -> Subject {
    let entrants = &tariff.field().entrants;
    let one = &entrants[a as usize];
    let score = LeaguePoints::new(one.score);
    let Some(other) = entrants.get(b as usize) else {
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

fn given_up(tariff: &Tariff, a: Place, b: Place) -> Vec<(Wish, u64)> {
    let Cost(levels) = tariff.total([[a, b]]);
    let wish = |(level, amount)| match level {
        Level::Wish(wish) if amount > 0 => Some((wish, amount)),
        _ => None,
    };
    levels.into_iter().filter_map(wish).collect()
}

fn price(task: &Task, decision: &Decision, pair: [Place; 2]) -> Price {
    let field = decision.tariff.field();
    let entrant = field.entrants[pair[0] as usize];
    if entrant.pinned.is_some() {
        let ordered = task.pins.iter().any(|pin| pin.has(entrant.player));
        return if ordered { Price::Pinned } else { Price::Fixed };
    }
    if field.players() > MOST_PRICED {
        return Price::NotAsked;
    }
    let best = decision.tariff.total(decision.best.pairs.iter().copied());
    let Ok(other) = decision.without(task, pair) else {
        return Price::Indispensable;
    };
    if other.kept != decision.kept {
        return Price::ShorterSeason;
    }
    let levels = best.0.iter().zip(&other.cost.0);
    let worse = levels.map(|(&(level, least), &(_, more))| (level, more.saturating_sub(least)));
    let first = worse.into_iter().find(|&(_, more)| more > 0);
    first.map_or(Price::Nothing, |(level, more)| Price::Worse(level, more))
}

/// Why this cost has rematches, when the numbers alone force them.
pub fn barrier(tariff: &Tariff, cost: &Cost) -> Option<Barrier> {
    if cost.of(Level::Wish(Wish::NoRematch)) == 0 {
        return None;
    }
    let field = tariff.field();
    let fresh = |a: usize, b: usize| {
        let met = b < field.players() && field.between(a, b).met > 0;
        tariff.price(a, b).filter(|_| !met).map(|_| 0)
    };
    let found = Matcher::new(Graph::complete(tariff.places(), fresh)).odd_sets();
    let left_over = found.sets.len().checked_sub(found.removed.len())?;
    let players = |places: Vec<Place>| -> Vec<PlayerId> {
        let entrants = places
            .iter()
            .filter_map(|&place| field.entrants.get(place as usize));
        entrants.map(|e| e.player).collect()
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
