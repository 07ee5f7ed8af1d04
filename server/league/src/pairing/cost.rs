//! Edge costs of the matching: what a pair gives up of each wish, and the same as one integer.
//!
//! The integer is lexicographic: the unit of a level is one more than the most that all levels
//! below it can add up to over a whole round, so no heap of lesser wishes outweighs a greater one.
//! The product of these ranges is computed with checks before anything is paired; it must leave
//! room for the solver's doubled costs and dual values ([`MAX_BITS`]).

pub mod participants;

use crate::side::GameRole;

use super::round::certificate::Vertex;
use super::round::cost::{Cost, Level};
use super::round::proposal::TaskFault;
use super::round::task::{Float, Task};
use super::round::wishes::Wish;

use participants::{DRAW_SEATS, Participant, Participants};

/// Bits that a whole round's cost may take.
///
/// The solver doubles costs, and each of its searches, at most one for each vertex, moves a potential
/// by no more than a doubled round. With 2^15 vertices that is 108 + 1 + 1 + 15 = 125 of 127 bits.
pub const MAX_BITS: u32 = 108;

/// The cost of every pair of one task.
#[derive(Clone, Debug)]
pub struct PairCosts {
    participants: Participants,
    byes: usize,
    levels: Vec<Level>,
    units: Vec<i128>,
    /// Weight of one squared point between scores.
    close: i128,
    fewest: i32,
    early: bool,
}

/// Amounts of one pair, by level of its [`PairCosts`].
pub type Amounts = [u64; MAX_LEVELS];

/// All wishes, the players without a game, the changed games and the draw.
pub const MAX_LEVELS: usize = 13;

impl PairCosts {
    /// Costs for these participants with so many byes.
    ///
    /// # Errors
    /// [`TaskFault::TooWide`] when a whole round's cost could exceed [`MAX_BITS`].
    pub fn new(task: &Task, participants: Participants, byes: usize) -> Result<Self, TaskFault> {
        let wishes = task.wishes.order().iter().map(|&wish| Level::Wish(wish));
        let first: &[Level] = match task.published[..] {
            [] => &[Level::SittingOut],
            _ => &[Level::SittingOut, Level::Changed],
        };
        let levels = first.iter().copied().chain(wishes).chain([Level::Draw]);
        let levels: Vec<Level> = levels.collect();
        let fewest = participants.list.iter().map(|e| e.score).min().unwrap_or(0);
        let mut costs = Self {
            units: vec![0; levels.len()],
            early: task.week.number() <= task.wishes.early_weeks(),
            participants,
            byes,
            levels,
            fewest,
            close: 0,
        };
        costs
            .set_units(task.history.len())
            .ok_or(TaskFault::TooWide)?;
        costs.close = costs.unit(Level::Wish(Wish::CloseScores));
        Ok(costs)
    }

    fn set_units(&mut self, meetings: usize) -> Option<()> {
        let pairs = (self.vertex_count() / 2) as u128;
        let mut unit: u128 = 1;
        for at in (0..self.levels.len()).rev() {
            self.units[at] = i128::try_from(unit).ok()?;
            let level = self.levels[at];
            let (game, bye) = self.max_amounts(level);
            let games = match level {
                Level::Wish(Wish::NoRematch) => (pairs * game).min(meetings as u128),
                _ => pairs.checked_mul(game)?,
            };
            let total = games.checked_add(bye.checked_mul(self.byes as u128)?)?;
            unit = unit.checked_mul(total.checked_add(1)?)?;
        }
        (u128::BITS - unit.leading_zeros() <= MAX_BITS).then_some(())
    }

    /// The most that one game, and one bye, can give up on a level.
    fn max_amounts(&self, level: Level) -> (u128, u128) {
        let players = &self.participants.list;
        let range = players
            .iter()
            .map(|e| e.score.abs_diff(self.fewest))
            .max()
            .unwrap_or(0);
        let early = u128::from(self.early);
        match level {
            Level::SittingOut | Level::Wish(Wish::SpareSitsOut) => (0, 1),
            Level::Changed => (1, 0),
            Level::Wish(Wish::NoRematch) => (u128::from(u8::MAX), 0),
            Level::Wish(Wish::NoSecondBye) => (
                0,
                players
                    .iter()
                    .map(|e| u128::from(e.byes))
                    .max()
                    .unwrap_or(0),
            ),
            Level::Wish(Wish::ByeToFewestPoints) => (0, u128::from(range)),
            Level::Wish(Wish::CloseScores) => (u128::from(range).pow(2), 0),
            Level::Wish(Wish::ClubsApart | Wish::FactionsApart) => (early, 0),
            Level::Wish(Wish::NoRepeatedFloat) => (4, 2),
            Level::Wish(Wish::RolesInBounds | Wish::RolesEven) => (1, 0),
            Level::Draw => (u128::from(DRAW_SEATS / 2), u128::from(DRAW_SEATS)),
        }
    }

    pub fn participants(&self) -> &Participants {
        &self.participants
    }

    /// Vertices to be matched: players, then byes.
    pub fn vertex_count(&self) -> usize {
        self.participants.count() + self.byes
    }

    pub fn byes(&self) -> usize {
        self.byes
    }

    /// Levels, most important first.
    pub fn levels(&self) -> &[Level] {
        &self.levels
    }

    /// The cost of pairing two vertices as one integer; `None` when they must not or cannot meet.
    pub fn edge_cost(&self, a: usize, b: usize) -> Option<i128> {
        let amounts = self.amounts(a, b)?;
        let priced = self.units.iter().zip(amounts);
        Some(priced.map(|(unit, amount)| unit * i128::from(amount)).sum())
    }

    /// A lower bound of [`Self::edge_cost`] that is quick to compute: the difference of the two scores.
    pub fn min_edge_cost(&self, a: usize, b: usize) -> i128 {
        match (self.participants.list.get(a), self.participants.list.get(b)) {
            (Some(one), Some(other)) => {
                let gap = i128::from(one.score.abs_diff(other.score));
                self.close * gap * gap
            }
            _ => 0,
        }
    }

    /// Weight of one unit of a level in an edge's cost; 0 where the season does not count it.
    pub fn unit(&self, level: Level) -> i128 {
        let at = self.levels.iter().position(|&counted| counted == level);
        at.map_or(0, |at| self.units[at])
    }

    /// Are clubs and factions kept apart this week?
    pub fn is_early(&self) -> bool {
        self.early
    }

    /// What pairing two vertices gives up, by level; `None` when they must not or cannot meet.
    pub fn amounts(&self, a: usize, b: usize) -> Option<Amounts> {
        let players = self.participants.count();
        match (a.min(b), a.max(b)) {
            (a, _) if a >= players => None,
            (a, b) if b >= players => self.bye(&self.participants.list[a]),
            (a, b) => self.game(a, b),
        }
    }

    fn game(&self, a: usize, b: usize) -> Option<Amounts> {
        let (one, other) = (&self.participants.list[a], &self.participants.list[b]);
        let pinned = |e: &Participant, to: usize| e.pinned.is_none_or(|p| p == to as Vertex);
        if !pinned(one, b) || !pinned(other, a) {
            return None;
        }
        if !self.participants.may_meet(a as Vertex, b as Vertex) {
            return None;
        }
        let relation = self.participants.relation(a, b);
        let same = |x: u32, y: u32| u64::from(self.early && x != 0 && x == y);
        Some(self.by_level(|level| match level {
            Level::SittingOut => 0,
            Level::Changed => u64::from(!relation.published),
            Level::Wish(Wish::NoRematch) => u64::from(relation.met),
            Level::Wish(Wish::NoSecondBye | Wish::SpareSitsOut | Wish::ByeToFewestPoints) => 0,
            Level::Wish(Wish::CloseScores) => u64::from(one.score.abs_diff(other.score)).pow(2),
            Level::Wish(Wish::ClubsApart) => same(one.club, other.club),
            Level::Wish(Wish::FactionsApart) => same(one.faction, other.faction),
            Level::Wish(Wish::NoRepeatedFloat) => repeated_floats(one, other),
            Level::Wish(Wish::RolesInBounds) => assign_roles(one.due_role, other.due_role).1[0],
            Level::Wish(Wish::RolesEven) => assign_roles(one.due_role, other.due_role).1[1],
            Level::Draw => draw_cost(one.draw_seat, other.draw_seat),
        }))
    }

    fn bye(&self, player: &Participant) -> Option<Amounts> {
        if player.pinned.is_some() {
            return None;
        }
        Some(self.by_level(|level| match level {
            Level::SittingOut => 1,
            Level::Wish(Wish::NoSecondBye) => u64::from(player.byes),
            Level::Wish(Wish::SpareSitsOut) => u64::from(!player.spare),
            Level::Wish(Wish::ByeToFewestPoints) => u64::from(player.score.abs_diff(self.fewest)),
            Level::Wish(Wish::NoRepeatedFloat) => repeated_float(player, Float::Down),
            Level::Changed | Level::Wish(_) => 0,
            Level::Draw => u64::from(player.draw_seat),
        }))
    }

    fn by_level(&self, amount: impl Fn(Level) -> u64) -> Amounts {
        let mut amounts = [0; MAX_LEVELS];
        for (slot, &level) in amounts.iter_mut().zip(&self.levels) {
            *slot = amount(level);
        }
        amounts
    }

    /// The cost of pairs that may all meet; others count nothing.
    pub fn total(&self, pairs: impl IntoIterator<Item = [Vertex; 2]>) -> Cost {
        let mut total = [0; MAX_LEVELS];
        let each = pairs
            .into_iter()
            .filter_map(|[a, b]| self.amounts(a as usize, b as usize));
        for amounts in each {
            for (sum, amount) in total.iter_mut().zip(amounts) {
                *sum += amount;
            }
        }
        Cost(self.levels.iter().copied().zip(total).collect())
    }

    /// A cost as one integer.
    pub fn pack(&self, cost: &Cost) -> i128 {
        let amounts = self.levels.iter().map(|&level| cost.amount(level));
        self.units
            .iter()
            .zip(amounts)
            .map(|(unit, amount)| unit * i128::from(amount))
            .sum()
    }
}

/// How far two seats on the ring of the draw are from facing each other: the draw prefers pairs that do.
pub fn draw_cost(one: u8, other: u8) -> u64 {
    let apart = one.abs_diff(other);
    u64::from(DRAW_SEATS / 2 - apart.min(DRAW_SEATS - apart))
}

/// The attacker of a game, and what the roles give up: limits broken, and roles not due.
///
/// Where both should have the same role, the one who must have it gets it; otherwise the first.
pub fn assign_roles(
    one: Option<(GameRole, bool)>,
    other: Option<(GameRole, bool)>,
) -> (Attacker, [u64; 2]) {
    match (one, other) {
        (Some((role, must)), Some((same, other_must))) if role == same => {
            let to_one = must || !other_must;
            let attacker = if to_one == (role == GameRole::Attacker) {
                Attacker::One
            } else {
                Attacker::Other
            };
            (attacker, [u64::from(must && other_must), 1])
        }
        (Some((GameRole::Attacker, _)), _) | (None, Some((GameRole::Defender, _))) => {
            (Attacker::One, [0, 0])
        }
        (Some((GameRole::Defender, _)), _) | (None, Some((GameRole::Attacker, _))) => {
            (Attacker::Other, [0, 0])
        }
        (None, None) => (Attacker::Either, [0, 0]),
    }
}

/// Which of two participants attacks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Attacker {
    One,
    Other,
    /// Neither has had a role: the draw decides.
    Either,
}

fn repeated_floats(one: &Participant, other: &Participant) -> u64 {
    match one.score.cmp(&other.score) {
        std::cmp::Ordering::Equal => 0,
        std::cmp::Ordering::Greater => {
            repeated_float(one, Float::Down) + repeated_float(other, Float::Up)
        }
        std::cmp::Ordering::Less => {
            repeated_float(one, Float::Up) + repeated_float(other, Float::Down)
        }
    }
}

/// 2 for the same float as in the round before, 1 for the one before that.
pub fn repeated_float(player: &Participant, float: Float) -> u64 {
    match player.floats {
        [Some(last), _] if last == float => 2,
        [_, Some(earlier)] if earlier == float => 1,
        _ => 0,
    }
}
