//! Why a pairing is as it is, as facts; sentences are made from them where names are known.

use crate::ids::PlayerId;
use crate::points::LeaguePoints;

use super::certificate::Place;
use super::cost::Tariff;
use super::decide::Decision;
use super::solve::{Graph, Matcher};
use super::{Cost, Game, Level, Pair, Task, Wish};

/// Largest field in which every game is priced; each price is another solve.
pub const MOST_PRICED: usize = 128;

/// Why one game, or one bye, stands in the proposal.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reason {
    /// What is explained.
    pub subject: Subject,
    /// Wishes it gives up, with the amount.
    pub given_up: Vec<(Wish, u64)>,
    /// What the best proposal without it would cost.
    pub price: Price,
}

/// What a reason explains.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Subject {
    /// Two players of one score group meet.
    SameScore {
        /// Who.
        pair: Pair,
        /// Their score.
        score: LeaguePoints,
    },
    /// Two players of different scores meet.
    Float {
        /// The higher score: floats down.
        down: PlayerId,
        /// Its score.
        down_score: LeaguePoints,
        /// The lower score: floats up.
        up: PlayerId,
        /// Its score.
        up_score: LeaguePoints,
    },
    /// A player sits out.
    Bye {
        /// Who.
        player: PlayerId,
        /// Their score.
        score: LeaguePoints,
    },
}

/// What it would cost to forbid a game or a bye.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Price {
    /// The organiser fixed it.
    Pinned,
    /// It had to be: the round robin's table has it, or it was reported before the repair.
    Fixed,
    /// There is no pairing without it.
    Indispensable,
    /// Fewer of the rounds to come would be playable without a rematch.
    ShorterSeason,
    /// Another pairing is exactly as good.
    Nothing,
    /// The first level on which every other pairing is worse, and by how much.
    Worse(Level, u64),
    /// The field is too large to ask this for every game.
    NotAsked,
}

/// Why a rematch cannot be avoided: without `removed`, the players fall into so many odd sets whose
/// members have met everyone outside, that some set must pair somebody again (Berge's formula).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Barrier {
    /// Players who could serve one odd set each.
    pub removed: Vec<PlayerId>,
    /// Sets of odd size that have only `removed` left to meet.
    pub odd_sets: Vec<Vec<PlayerId>>,
    /// Games that must be rematches, at least.
    pub rematches: u32,
}

/// Reasons for these games and byes, in that order.
pub(super) fn reasons(
    task: &Task,
    decision: &Decision,
    games: &[Game],
    byes: &[PlayerId],
) -> Vec<Reason> {
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
pub(super) fn barrier(tariff: &Tariff, cost: &Cost) -> Option<Barrier> {
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
