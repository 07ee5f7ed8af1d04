//! Whether the rounds to come can still be played without a rematch.
//!
//! A round is a perfect matching of the pairs not yet used (with a bye as one more place), so the
//! question is whether so many disjoint perfect matchings remain. It is answered exactly for up to
//! [`MOST_PLAYERS`] players, by trying rounds pair by pair within [`MOST_STEPS`] steps; larger fields
//! are safe by a theorem or are told that only one round was considered.

use std::collections::HashMap;

use crate::pairing::cost::Tariff;
use crate::pairing::cost::participants::Field;
use crate::pairing::round::certificate::Place;
use crate::pairing::round::hall::{Capacity, Nights};
use crate::pairing::round::wishes::{Wish, Wishes};

/// Largest field for which the future is searched.
pub const MOST_PLAYERS: usize = 24;

/// Pairs tried before a search gives up.
pub const MOST_STEPS: usize = 200_000;

/// Rounds of pairs of places.
pub type Plan = Vec<Vec<[Place; 2]>>;

/// Answer of a search.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Answer {
    /// Yes, for example so.
    Yes(Plan),
    /// No; every way was tried or ruled out.
    No,
    /// Not within the steps allowed.
    Unknown,
}

/// Pairs that have not met and may, as one bit mask for each place.
#[derive(Clone, Debug)]
pub struct Future<'a> {
    unmet: Vec<u32>,
    nights: Vec<Nights>,
    players: usize,
    capacity: &'a Capacity,
}

impl<'a> Future<'a> {
    /// The future as it stands before this round; pins bind this round only and are left out.
    /// `None` where it is not searched: too many players, or more than one bye.
    pub fn of(tariff: &Tariff, capacity: &'a Capacity) -> Option<Self> {
        let field = tariff.field();
        if field.players() > MOST_PLAYERS || tariff.byes() > 1 {
            return None;
        }
        let places = tariff.places();
        let fresh = |a: usize, b: usize| a != b && is_fresh(field, a.min(b), a.max(b));
        let mask = |a| {
            (0..places)
                .filter(|&b| fresh(a, b))
                .fold(0, |mask, b| mask | 1 << b)
        };
        Some(Self {
            unmet: (0..places).map(mask).collect(),
            nights: field.entrants.iter().map(|e| e.nights).collect(),
            players: field.players(),
            capacity,
        })
    }

    /// The future after these pairs have played.
    pub fn after(&self, pairs: &[[Place; 2]]) -> Self {
        let mut after = self.clone();
        for &[a, b] in pairs {
            after.unmet[a as usize] &= !(1 << b);
            after.unmet[b as usize] &= !(1 << a);
        }
        after
    }

    /// Can so many rounds be played, the first of them with these pairs only?
    pub fn playable(&self, rounds: usize, first: Option<Vec<u32>>) -> Answer {
        let mut search = Search {
            future: self.clone(),
            first,
            steps: MOST_STEPS,
            plan: Vec::new(),
        };
        match search.round(rounds) {
            Some(true) => Answer::Yes(search.plan),
            Some(false) => Answer::No,
            None => Answer::Unknown,
        }
    }

    /// The pairs of this round that keep to `allowed`.
    pub fn restricted(&self, allowed: impl Fn(usize, usize) -> bool) -> Vec<u32> {
        let places = 0..self.unmet.len();
        let mask = |a: usize| {
            let kept = places
                .clone()
                .filter(|&b| self.unmet[a] & 1 << b != 0 && allowed(a, b));
            kept.fold(0, |mask, b| mask | 1 << b)
        };
        places.clone().map(mask).collect()
    }

    fn fits(&self, pairs: &[[Place; 2]]) -> bool {
        let games = pairs.iter().filter(|[_, b]| (*b as usize) < self.players);
        let common = |&[a, b]: &[Place; 2]| self.nights[a as usize].and(self.nights[b as usize]);
        self.capacity
            .crowded(&games.map(common).collect::<Vec<_>>())
            .is_none()
    }

    /// Every place has an opponent for each round, and no component is odd.
    fn promising(&self, rounds: usize) -> bool {
        let enough = |mask: &u32| mask.count_ones() as usize >= rounds;
        self.unmet.iter().all(enough) && self.components_are_even()
    }

    fn components_are_even(&self) -> bool {
        let mut left: u32 = self
            .unmet
            .iter()
            .enumerate()
            .fold(0, |all, (at, _)| all | 1 << at);
        while left != 0 {
            let (mut component, mut grown) = (0, left & left.wrapping_neg());
            while component != grown {
                component = grown;
                grown = bits(component).fold(grown, |all, at| all | self.unmet[at]);
            }
            if component.count_ones() % 2 == 1 {
                return false;
            }
            left &= !component;
        }
        true
    }
}

/// May these two be paired in a later round without a rematch or a second bye?
fn is_fresh(field: &Field, a: usize, b: usize) -> bool {
    match field.entrants.get(b) {
        None => field.entrants[a].byes == 0,
        Some(_) => field.may_meet(a as Place, b as Place) && field.between(a, b).met == 0,
    }
}

fn bits(mask: u32) -> impl Iterator<Item = usize> {
    (0..u32::BITS as usize).filter(move |at| mask & 1 << at != 0)
}

struct Search<'a> {
    future: Future<'a>,
    first: Option<Vec<u32>>,
    steps: usize,
    plan: Plan,
}

impl Search<'_> {
    /// `None` when the steps are used up.
    fn round(&mut self, left: usize) -> Option<bool> {
        if left == 0 {
            return Some(true);
        }
        if !self.future.promising(left) {
            return Some(false);
        }
        self.plan.push(Vec::new());
        let everyone = (0..self.future.unmet.len()).fold(0, |all, at| all | 1 << at);
        let found = self.pairs(left, everyone)?;
        if !found {
            self.plan.pop();
        }
        Some(found)
    }

    fn pairs(&mut self, left: usize, free: u32) -> Option<bool> {
        let current = self.plan.len() - 1;
        if free == 0 {
            return if self.future.fits(&self.plan[current]) {
                self.round(left - 1)
            } else {
                Some(false)
            };
        }
        let (place, options) = self.next(free);
        for other in bits(options) {
            self.steps = self.steps.checked_sub(1)?;
            let before = (self.future.unmet[place], self.future.unmet[other]);
            self.future.unmet[place] &= !(1 << other);
            self.future.unmet[other] &= !(1 << place);
            let pair = [place.min(other) as Place, place.max(other) as Place];
            self.plan[current].push(pair);
            if self.pairs(left, free & !(1 << place) & !(1 << other))? {
                return Some(true);
            }
            self.plan[current].pop();
            (self.future.unmet[place], self.future.unmet[other]) = before;
        }
        Some(false)
    }

    /// The place to pair next with its possible partners: place 0 first in each round, then the one
    /// with the fewest. Later rounds are interchangeable, so place 0's partners only go up.
    fn next(&self, free: u32) -> (usize, u32) {
        let current = self.plan.len() - 1;
        let pairs = match &self.first {
            Some(first) if current == 0 => first,
            _ => &self.future.unmet,
        };
        if free & 1 == 0 {
            let fewest = bits(free).min_by_key(|&at| (pairs[at] & free).count_ones());
            let place = fewest.unwrap_or(0);
            return (place, pairs[place] & free);
        }
        let ordered = current > usize::from(self.first.is_some());
        let before = if ordered {
            self.plan[current - 1].first()
        } else {
            None
        };
        let above = before.map_or(0, |&[_, partner]| (2_u32 << partner) - 1);
        (0, pairs[0] & free & !above)
    }
}

/// Is every further round safe whatever happens? By Dirac's theorem a graph on an even number of
/// places has a perfect matching when each place is joined to at least half of them, and each round
/// takes one opponent from everyone. With one night only: tables then never bind.
pub fn never_runs_dry(tariff: &Tariff, capacity: &Capacity, rounds_left: usize) -> bool {
    let (field, places) = (tariff.field(), tariff.places());
    let mut households: HashMap<u32, usize> = HashMap::new();
    for entrant in field.entrants.iter().filter(|e| e.household != 0) {
        *households.entry(entrant.household).or_default() += 1;
    }
    let one_night = capacity.sets().count() == 1;
    let somewhere = field.entrants.iter().all(|e| !e.nights.is_empty());
    let needed = places / 2 + rounds_left;
    let bye = field.entrants.iter().filter(|e| e.byes == 0).count();
    one_night
        && somewhere
        && tariff.byes() <= 1
        && (tariff.byes() == 0 || bye >= needed)
        && (0..field.players()).all(|at| {
            let entrant = &field.entrants[at];
            let home = households.get(&entrant.household).copied().unwrap_or(1);
            let open = usize::from(tariff.byes() == 1 && entrant.byes == 0);
            (field.players() + open).saturating_sub(field.ties(at).len() + home) >= needed
        })
}

/// Does the season wish to avoid rematches at all?
pub fn is_wanted(wishes: &Wishes) -> bool {
    wishes.order().contains(&Wish::NoRematch)
}
