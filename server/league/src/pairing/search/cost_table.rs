//! Edge costs by table lookup: the numbers of [`PairCosts`], several times faster.
//!
//! `PairCosts` defines what a pair costs, and is what a proof is checked with; this only computes the
//! same quickly, for loops over millions of pairs. A test compares the two on every pair.

use std::cmp::Reverse;

use crate::pairing::cost::participants::{DRAW_SEATS, Participant};
use crate::pairing::cost::{self, PairCosts};
use crate::pairing::round::certificate::Vertex;
use crate::pairing::round::cost::Level;
use crate::pairing::round::task::Float;
use crate::pairing::round::wishes::Wish;
use crate::side::GameRole;

/// Costs of games by vertex, from one small record a player.
pub struct CostTable<'a> {
    costs: &'a PairCosts,
    players: Vec<CompactPlayer>,
    /// Of a bye, by player.
    byes: Vec<Option<i128>>,
    classes: Vec<u32>,
    changed: i128,
    rematch: i128,
    close: i128,
    club: i128,
    faction: i128,
    /// Of 0 to 4 repeated floats.
    floats: [i128; 5],
    /// Of two players by what is due to each.
    roles: [[i128; DUE_ROLES]; DUE_ROLES],
    /// Of two seats.
    seats: [[i128; DRAW_SEATS as usize]; DRAW_SEATS as usize],
}

/// What the cost of a game depends on, of one player.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct CompactPlayer {
    score: Reverse<i32>,
    household: u32,
    club: u32,
    faction: u32,
    pinned: Option<Vertex>,
    nights: u8,
    down: u8,
    up: u8,
    due: u8,
    seat: u8,
    /// Has met somebody or must not meet somebody.
    tied: bool,
}

/// Nothing due, and each role with and without need.
const DUE_ROLES: usize = 5;

impl<'a> CostTable<'a> {
    /// The table of these costs.
    pub fn new(costs: &'a PairCosts) -> Self {
        let wish = |wish| costs.unit(Level::Wish(wish));
        let players = costs.participants().list.iter().enumerate();
        let players: Vec<CompactPlayer> = players
            .map(|(at, player)| compact(costs, at, player))
            .collect();
        let bye = players.len();
        let byes = (0..if costs.byes() > 0 { bye } else { 0 }).map(|a| costs.edge_cost(a, bye));
        let early = i128::from(costs.is_early());
        let (bounds, even) = (wish(Wish::RolesInBounds), wish(Wish::RolesEven));
        let role = |one: usize, other: usize| {
            let [broken, uneven] = cost::assign_roles(due_role(one), due_role(other))
                .1
                .map(i128::from);
            broken * bounds + uneven * even
        };
        let draw = costs.unit(Level::Draw);
        let index = |at: usize| at as u8;
        Self {
            costs,
            byes: byes.collect(),
            classes: number_classes(&players),
            players,
            changed: costs.unit(Level::Changed),
            rematch: wish(Wish::NoRematch),
            close: wish(Wish::CloseScores),
            club: early * wish(Wish::ClubsApart),
            faction: early * wish(Wish::FactionsApart),
            floats: std::array::from_fn(|times| times as i128 * wish(Wish::NoRepeatedFloat)),
            roles: std::array::from_fn(|a| std::array::from_fn(|b| role(a, b))),
            seats: std::array::from_fn(|a| {
                std::array::from_fn(|b| i128::from(cost::draw_cost(index(a), index(b))) * draw)
            }),
        }
    }

    /// As [`PairCosts::edge_cost`].
    pub fn edge_cost(&self, a: usize, b: usize) -> Option<i128> {
        let (low, high) = (a.min(b), a.max(b));
        if high >= self.players.len() {
            return self.byes.get(low).copied().flatten();
        }
        self.with_relation(a, b, self.base_cost(a, b)?)
    }

    pub fn player_count(&self) -> usize {
        self.players.len()
    }

    pub fn vertex_count(&self) -> usize {
        self.costs.vertex_count()
    }

    /// The score of a player.
    pub fn score(&self, vertex: usize) -> i32 {
        self.players[vertex].score.0
    }

    /// The equivalence class of a player: players of one class have the same base cost with anybody.
    /// Classes rise as scores fall.
    pub fn class(&self, vertex: usize) -> u32 {
        self.classes[vertex]
    }

    pub fn published(&self) -> impl Iterator<Item = (usize, usize)> {
        let pairs = |a| {
            let relations = self.costs.participants().relations_of(a).iter();
            relations
                .filter(|(_, relation)| relation.published)
                .map(move |&(b, _)| (a, b as usize))
        };
        (0..self.players.len())
            .flat_map(pairs)
            .filter(|(a, b)| a < b)
    }

    /// The least that a game between two scores can cost when it is not published.
    pub fn cost_floor(&self, one: i32, other: i32) -> i128 {
        let gap = u64::from(one.abs_diff(other));
        self.changed + self.close * i128::from(gap * gap)
    }

    /// The cost of the game as if the two had never met and nobody had forbidden it: a lower bound when
    /// it is not published.
    pub fn base_cost(&self, a: usize, b: usize) -> Option<i128> {
        let (one, other) = (&self.players[a], &self.players[b]);
        let pinned =
            |card: &CompactPlayer, to: usize| card.pinned.is_some_and(|p| p as usize != to);
        if one.nights & other.nights == 0
            || (one.household != 0 && one.household == other.household)
            || pinned(one, b)
            || pinned(other, a)
        {
            return None;
        }
        let gap = one.score.0.abs_diff(other.score.0);
        let floats = match one.score.0.cmp(&other.score.0) {
            std::cmp::Ordering::Equal => 0,
            std::cmp::Ordering::Greater => one.down + other.up,
            std::cmp::Ordering::Less => one.up + other.down,
        };
        let mut cost = self.changed
            + self.close * i128::from(u64::from(gap) * u64::from(gap))
            + self.floats[usize::from(floats)]
            + self.roles[usize::from(one.due)][usize::from(other.due)]
            + self.seats[usize::from(one.seat)][usize::from(other.seat)];
        if one.faction != 0 && one.faction == other.faction {
            cost += self.faction;
        }
        if one.club != 0 && one.club == other.club {
            cost += self.club;
        }
        Some(cost)
    }

    /// The cost of a game whose base cost is known.
    pub fn with_relation(&self, a: usize, b: usize, base: i128) -> Option<i128> {
        if !(self.players[a].tied && self.players[b].tied) {
            return Some(base);
        }
        let relation = self.costs.participants().relation(a, b);
        let kept = if relation.published { self.changed } else { 0 };
        (!relation.forbidden).then(|| base - kept + i128::from(relation.met) * self.rematch)
    }
}

fn compact(costs: &PairCosts, at: usize, player: &Participant) -> CompactPlayer {
    let dues = (0..DUE_ROLES).find(|&number| due_role(number) == player.due_role);
    CompactPlayer {
        score: Reverse(player.score),
        household: player.household,
        club: player.club,
        faction: player.faction,
        pinned: player.pinned,
        nights: player.nights.bits(),
        down: cost::repeated_float(player, Float::Down) as u8,
        up: cost::repeated_float(player, Float::Up) as u8,
        due: dues.unwrap_or(0) as u8,
        seat: player.draw_seat,
        tied: !costs.participants().relations_of(at).is_empty(),
    }
}

/// The class of each player, in the order of the records.
fn number_classes(cards: &[CompactPlayer]) -> Vec<u32> {
    let mut order: Vec<usize> = (0..cards.len()).collect();
    order.sort_unstable_by_key(|&at| cards[at]);
    let mut kinds = vec![0; cards.len()];
    for (before, at) in order.iter().zip(&order[1..]) {
        kinds[*at] = kinds[*before] + u32::from(cards[*at] != cards[*before]);
    }
    kinds
}

/// What is due, by number.
fn due_role(number: usize) -> Option<(GameRole, bool)> {
    match number {
        1 => Some((GameRole::Attacker, false)),
        2 => Some((GameRole::Attacker, true)),
        3 => Some((GameRole::Defender, false)),
        4 => Some((GameRole::Defender, true)),
        _ => None,
    }
}
