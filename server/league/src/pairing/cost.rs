//! What a pair gives up, as amounts per wish and as one integer.
//!
//! The integer is lexicographic: the unit of a level is one more than the most that all levels
//! below it can add up to over a whole round, so no heap of lesser wishes outweighs a greater one.
//! The product of these ranges is computed with checks before anything is paired; it must leave
//! room for the solver's doubled costs and dual values ([`MOST_BITS`]).

pub mod participants;

use participants::{Entrant, Field, SEATS};

use crate::side::Role;

use super::round::certificate::Place;
use super::round::cost::{Cost, Level};
use super::round::proposal::Fault;
use super::round::task::{Float, Task};
use super::round::wishes::Wish;

/// Bits that a whole round's cost may take.
///
/// The solver doubles costs, and each of its searches, at most one for each place, moves a potential
/// by no more than a doubled round. With 2^15 places that is 108 + 1 + 1 + 15 = 125 of 127 bits.
pub const MOST_BITS: u32 = 108;

/// Prices of pairs for one task.
#[derive(Clone, Debug)]
pub struct Tariff {
    field: Field,
    byes: usize,
    levels: Vec<Level>,
    units: Vec<i128>,
    /// Weight of one squared point between scores.
    close: i128,
    fewest: i32,
    early: bool,
}

/// Amounts of one pair, by level of its [`Tariff`].
pub type Amounts = [u64; MOST_LEVELS];

/// All wishes, the players without a game, the changed games and the draw.
pub const MOST_LEVELS: usize = 13;

impl Tariff {
    /// Prices for this field with so many byes.
    ///
    /// # Errors
    /// [`Fault::TooWide`] when a whole round's cost could exceed [`MOST_BITS`].
    pub fn new(task: &Task, field: Field, byes: usize) -> Result<Self, Fault> {
        let wishes = task.wishes.order().iter().map(|&wish| Level::Wish(wish));
        let first: &[Level] = match task.published[..] {
            [] => &[Level::SittingOut],
            _ => &[Level::SittingOut, Level::Changed],
        };
        let levels = first.iter().copied().chain(wishes).chain([Level::Draw]);
        let levels: Vec<Level> = levels.collect();
        let fewest = field.entrants.iter().map(|e| e.score).min().unwrap_or(0);
        let mut tariff = Self {
            units: vec![0; levels.len()],
            early: task.week.number() <= task.wishes.early_weeks(),
            field,
            byes,
            levels,
            fewest,
            close: 0,
        };
        tariff.set_units(task.history.len()).ok_or(Fault::TooWide)?;
        tariff.close = tariff.unit(Level::Wish(Wish::CloseScores));
        Ok(tariff)
    }

    fn set_units(&mut self, meetings: usize) -> Option<()> {
        let pairs = (self.places() / 2) as u128;
        let mut unit: u128 = 1;
        for at in (0..self.levels.len()).rev() {
            self.units[at] = i128::try_from(unit).ok()?;
            let level = self.levels[at];
            let (game, bye) = self.most(level);
            let games = match level {
                Level::Wish(Wish::NoRematch) => (pairs * game).min(meetings as u128),
                _ => pairs.checked_mul(game)?,
            };
            let total = games.checked_add(bye.checked_mul(self.byes as u128)?)?;
            unit = unit.checked_mul(total.checked_add(1)?)?;
        }
        (u128::BITS - unit.leading_zeros() <= MOST_BITS).then_some(())
    }

    /// The most that one game, and one bye, can give up on a level.
    fn most(&self, level: Level) -> (u128, u128) {
        let entrants = &self.field.entrants;
        let range = entrants
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
                entrants
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
            Level::Draw => (u128::from(SEATS / 2), u128::from(SEATS)),
        }
    }

    /// The field.
    pub fn field(&self) -> &Field {
        &self.field
    }

    /// Places to be matched: players, then byes.
    pub fn places(&self) -> usize {
        self.field.players() + self.byes
    }

    /// Byes.
    pub fn byes(&self) -> usize {
        self.byes
    }

    /// Levels, most important first.
    pub fn levels(&self) -> &[Level] {
        &self.levels
    }

    /// The price of pairing two places; `None` when they must not or cannot meet.
    pub fn price(&self, a: usize, b: usize) -> Option<i128> {
        let amounts = self.amounts(a, b)?;
        let priced = self.units.iter().zip(amounts);
        Some(priced.map(|(unit, amount)| unit * i128::from(amount)).sum())
    }

    /// What pairing two places gives up at least: the difference of their scores.
    pub fn least(&self, a: usize, b: usize) -> i128 {
        match (self.field.entrants.get(a), self.field.entrants.get(b)) {
            (Some(one), Some(other)) => {
                let gap = i128::from(one.score.abs_diff(other.score));
                self.close * gap * gap
            }
            _ => 0,
        }
    }

    /// Weight of one unit of a level in a price; 0 where the season does not count it.
    pub fn unit(&self, level: Level) -> i128 {
        let at = self.levels.iter().position(|&counted| counted == level);
        at.map_or(0, |at| self.units[at])
    }

    /// Are clubs and factions kept apart this week?
    pub fn is_early(&self) -> bool {
        self.early
    }

    /// What pairing two places gives up, by level; `None` when they must not or cannot meet.
    pub fn amounts(&self, a: usize, b: usize) -> Option<Amounts> {
        let players = self.field.players();
        match (a.min(b), a.max(b)) {
            (a, _) if a >= players => None,
            (a, b) if b >= players => self.bye(&self.field.entrants[a]),
            (a, b) => self.game(a, b),
        }
    }

    fn game(&self, a: usize, b: usize) -> Option<Amounts> {
        let (one, other) = (&self.field.entrants[a], &self.field.entrants[b]);
        let pinned = |e: &Entrant, to: usize| e.pinned.is_none_or(|p| p == to as Place);
        if !pinned(one, b) || !pinned(other, a) {
            return None;
        }
        if !self.field.may_meet(a as Place, b as Place) {
            return None;
        }
        let tie = self.field.between(a, b);
        let same = |x: u32, y: u32| u64::from(self.early && x != 0 && x == y);
        Some(self.filled(|level| match level {
            Level::SittingOut => 0,
            Level::Changed => u64::from(!tie.published),
            Level::Wish(Wish::NoRematch) => u64::from(tie.met),
            Level::Wish(Wish::NoSecondBye | Wish::SpareSitsOut | Wish::ByeToFewestPoints) => 0,
            Level::Wish(Wish::CloseScores) => u64::from(one.score.abs_diff(other.score)).pow(2),
            Level::Wish(Wish::ClubsApart) => same(one.club, other.club),
            Level::Wish(Wish::FactionsApart) => same(one.faction, other.faction),
            Level::Wish(Wish::NoRepeatedFloat) => floats_again(one, other),
            Level::Wish(Wish::RolesInBounds) => roles(one.due, other.due).1[0],
            Level::Wish(Wish::RolesEven) => roles(one.due, other.due).1[1],
            Level::Draw => seats(one.seat, other.seat),
        }))
    }

    fn bye(&self, player: &Entrant) -> Option<Amounts> {
        if player.pinned.is_some() {
            return None;
        }
        Some(self.filled(|level| match level {
            Level::SittingOut => 1,
            Level::Wish(Wish::NoSecondBye) => u64::from(player.byes),
            Level::Wish(Wish::SpareSitsOut) => u64::from(!player.spare),
            Level::Wish(Wish::ByeToFewestPoints) => u64::from(player.score.abs_diff(self.fewest)),
            Level::Wish(Wish::NoRepeatedFloat) => float_again(player, Float::Down),
            Level::Changed | Level::Wish(_) => 0,
            Level::Draw => u64::from(player.seat),
        }))
    }

    fn filled(&self, amount: impl Fn(Level) -> u64) -> Amounts {
        let mut amounts = [0; MOST_LEVELS];
        for (slot, &level) in amounts.iter_mut().zip(&self.levels) {
            *slot = amount(level);
        }
        amounts
    }

    /// The cost of pairs that may all meet; others count nothing.
    pub fn total(&self, pairs: impl IntoIterator<Item = [Place; 2]>) -> Cost {
        let mut total = [0; MOST_LEVELS];
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
    pub fn packed(&self, cost: &Cost) -> i128 {
        let amounts = self.levels.iter().map(|&level| cost.of(level));
        self.units
            .iter()
            .zip(amounts)
            .map(|(unit, amount)| unit * i128::from(amount))
            .sum()
    }
}

/// How far two seats of the ring of the draw are from face to face.
pub fn seats(one: u8, other: u8) -> u64 {
    let apart = one.abs_diff(other);
    u64::from(SEATS / 2 - apart.min(SEATS - apart))
}

/// The attacker of a game, and what the roles give up: limits broken, and roles not due.
///
/// Where both should have the same role, the one who must have it gets it; otherwise the first.
pub fn roles(one: Option<(Role, bool)>, other: Option<(Role, bool)>) -> (Attacker, [u64; 2]) {
    match (one, other) {
        (Some((role, must)), Some((same, other_must))) if role == same => {
            let to_one = must || !other_must;
            let attacker = if to_one == (role == Role::Attacker) {
                Attacker::One
            } else {
                Attacker::Other
            };
            (attacker, [u64::from(must && other_must), 1])
        }
        (Some((Role::Attacker, _)), _) | (None, Some((Role::Defender, _))) => {
            (Attacker::One, [0, 0])
        }
        (Some((Role::Defender, _)), _) | (None, Some((Role::Attacker, _))) => {
            (Attacker::Other, [0, 0])
        }
        (None, None) => (Attacker::Either, [0, 0]),
    }
}

/// Which of two entrants attacks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Attacker {
    /// The first.
    One,
    /// The second.
    Other,
    /// Neither has had a role: the draw decides.
    Either,
}

fn floats_again(one: &Entrant, other: &Entrant) -> u64 {
    match one.score.cmp(&other.score) {
        std::cmp::Ordering::Equal => 0,
        std::cmp::Ordering::Greater => {
            float_again(one, Float::Down) + float_again(other, Float::Up)
        }
        std::cmp::Ordering::Less => float_again(one, Float::Up) + float_again(other, Float::Down),
    }
}

/// 2 for the same float as in the round before, 1 for the one before that.
pub fn float_again(player: &Entrant, float: Float) -> u64 {
    match player.floats {
        [Some(last), _] if last == float => 2,
        [_, Some(earlier)] if earlier == float => 1,
        _ => 0,
    }
}
