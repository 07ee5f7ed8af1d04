//! Look-ahead: whether the rounds to come can still be played without a rematch.
//!
//! A round is a perfect matching of the pairs not yet used (with a bye as one more vertex), so the
//! question is whether so many disjoint perfect matchings remain. It is answered exactly for up to
//! [`MAX_PLAYERS`] players, by trying rounds pair by pair within [`MAX_STEPS`] steps; with more
//! players it is either certain by a theorem or not looked ahead at all.

use std::collections::HashMap;

use crate::pairing::cost::PairCosts;
use crate::pairing::cost::participants::Participants;
use crate::pairing::round::certificate::Vertex;
use crate::pairing::round::hall::{Capacity, NightSet};
use crate::pairing::round::wishes::{Wish, Wishes};

/// Most players for whom later rounds are searched.
pub const MAX_PLAYERS: usize = 24;

/// Pairs tried before the search gives up.
pub const MAX_STEPS: usize = 200_000;

/// Rounds of pairs of vertices.
pub type RoundsPlan = Vec<Vec<[Vertex; 2]>>;

/// Whether rounds can be played.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Feasibility {
    /// They can, for example so.
    Feasible(RoundsPlan),
    /// They cannot: every way was tried or ruled out.
    Infeasible,
    /// Not known: the steps were used up.
    Unknown,
}

/// Pairs that have not met and may, as one bit mask for each vertex.
#[derive(Clone, Debug)]
pub struct UnmetGraph<'a> {
    unmet: Vec<u32>,
    nights: Vec<NightSet>,
    players: usize,
    capacity: &'a Capacity,
}

impl<'a> UnmetGraph<'a> {
    /// The pairs as they stand before this round; pins bind this round only and are left out.
    /// `None` where it is not searched: too many players, or more than one bye.
    pub fn new(costs: &PairCosts, capacity: &'a Capacity) -> Option<Self> {
        let participants = costs.participants();
        if participants.count() > MAX_PLAYERS || costs.byes() > 1 {
            return None;
        }
        let vertices = costs.vertex_count();
        let fresh = |a: usize, b: usize| a != b && is_fresh(participants, a.min(b), a.max(b));
        let mask = |a| {
            (0..vertices)
                .filter(|&b| fresh(a, b))
                .fold(0, |mask, b| mask | 1 << b)
        };
        Some(Self {
            unmet: (0..vertices).map(mask).collect(),
            nights: participants.list.iter().map(|e| e.nights).collect(),
            players: participants.count(),
            capacity,
        })
    }

    /// What is left after these pairs have played.
    pub fn after(&self, pairs: &[[Vertex; 2]]) -> Self {
        let mut after = self.clone();
        for &[a, b] in pairs {
            after.unmet[a as usize] &= !(1 << b);
            after.unmet[b as usize] &= !(1 << a);
        }
        after
    }

    /// Can so many rounds be played, the first of them with these pairs only?
    pub fn can_play(&self, rounds: usize, first: Option<Vec<u32>>) -> Feasibility {
        let mut search = Search {
            graph: self.clone(),
            first,
            steps: MAX_STEPS,
            plan: Vec::new(),
        };
        match search.round(rounds) {
            Some(true) => Feasibility::Feasible(search.plan),
            Some(false) => Feasibility::Infeasible,
            None => Feasibility::Unknown,
        }
    }

    /// The pairs of this round that keep to `allowed`.
    pub fn restricted(&self, allowed: impl Fn(usize, usize) -> bool) -> Vec<u32> {
        let vertices = 0..self.unmet.len();
        let mask = |a: usize| {
            let kept = vertices
                .clone()
                .filter(|&b| self.unmet[a] & 1 << b != 0 && allowed(a, b));
            kept.fold(0, |mask, b| mask | 1 << b)
        };
        vertices.clone().map(mask).collect()
    }

    fn fits(&self, pairs: &[[Vertex; 2]]) -> bool {
        let games = pairs.iter().filter(|[_, b]| (*b as usize) < self.players);
        let common =
            |&[a, b]: &[Vertex; 2]| self.nights[a as usize].intersection(self.nights[b as usize]);
        self.capacity
            .find_crowded(&games.map(common).collect::<Vec<_>>())
            .is_none()
    }

    /// Every vertex has an opponent for each round, and no component is odd.
    fn may_be_playable(&self, rounds: usize) -> bool {
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
fn is_fresh(participants: &Participants, a: usize, b: usize) -> bool {
    match participants.list.get(b) {
        None => participants.list[a].byes == 0,
        Some(_) => {
            participants.may_meet(a as Vertex, b as Vertex) && participants.relation(a, b).met == 0
        }
    }
}

fn bits(mask: u32) -> impl Iterator<Item = usize> {
    (0..u32::BITS as usize).filter(move |at| mask & 1 << at != 0)
}

struct Search<'a> {
    graph: UnmetGraph<'a>,
    first: Option<Vec<u32>>,
    steps: usize,
    plan: RoundsPlan,
}

impl Search<'_> {
    /// `None` when the steps are used up.
    fn round(&mut self, left: usize) -> Option<bool> {
        if left == 0 {
            return Some(true);
        }
        if !self.graph.may_be_playable(left) {
            return Some(false);
        }
        self.plan.push(Vec::new());
        let everyone = (0..self.graph.unmet.len()).fold(0, |all, at| all | 1 << at);
        let found = self.pairs(left, everyone)?;
        if !found {
            self.plan.pop();
        }
        Some(found)
    }

    fn pairs(&mut self, left: usize, free: u32) -> Option<bool> {
        let current = self.plan.len() - 1;
        if free == 0 {
            return if self.graph.fits(&self.plan[current]) {
                self.round(left - 1)
            } else {
                Some(false)
            };
        }
        let (vertex, options) = self.next_vertex(free);
        for other in bits(options) {
            self.steps = self.steps.checked_sub(1)?;
            let before = (self.graph.unmet[vertex], self.graph.unmet[other]);
            self.graph.unmet[vertex] &= !(1 << other);
            self.graph.unmet[other] &= !(1 << vertex);
            let pair = [vertex.min(other) as Vertex, vertex.max(other) as Vertex];
            self.plan[current].push(pair);
            if self.pairs(left, free & !(1 << vertex) & !(1 << other))? {
                return Some(true);
            }
            self.plan[current].pop();
            (self.graph.unmet[vertex], self.graph.unmet[other]) = before;
        }
        Some(false)
    }

    /// The vertex to pair next with its possible partners: vertex 0 first in each round, then the one
    /// with the fewest. Later rounds are interchangeable, so vertex 0's partners only go up.
    fn next_vertex(&self, free: u32) -> (usize, u32) {
        let current = self.plan.len() - 1;
        let pairs = match &self.first {
            Some(first) if current == 0 => first,
            _ => &self.graph.unmet,
        };
        if free & 1 == 0 {
            let fewest = bits(free).min_by_key(|&at| (pairs[at] & free).count_ones());
            let vertex = fewest.unwrap_or(0);
            return (vertex, pairs[vertex] & free);
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
/// vertices has a perfect matching when each vertex is joined to at least half of them, and each round
/// takes one opponent from everyone. With one night only: tables then never bind.
pub fn never_runs_dry(costs: &PairCosts, capacity: &Capacity, rounds_left: usize) -> bool {
    let (participants, vertices) = (costs.participants(), costs.vertex_count());
    let mut households: HashMap<u32, usize> = HashMap::new();
    for player in participants.list.iter().filter(|e| e.household != 0) {
        *households.entry(player.household).or_default() += 1;
    }
    let one_night = capacity.sets().count() == 1;
    let somewhere = participants.list.iter().all(|e| !e.nights.is_empty());
    let needed = vertices / 2 + rounds_left;
    let bye = participants.list.iter().filter(|e| e.byes == 0).count();
    one_night
        && somewhere
        && costs.byes() <= 1
        && (costs.byes() == 0 || bye >= needed)
        && (0..participants.count()).all(|at| {
            let player = &participants.list[at];
            let home = households.get(&player.household).copied().unwrap_or(1);
            let open = usize::from(costs.byes() == 1 && player.byes == 0);
            (participants.count() + open).saturating_sub(participants.relations_of(at).len() + home)
                >= needed
        })
}

/// Whether the season wishes to avoid rematches at all.
pub fn avoids_rematches(wishes: &Wishes) -> bool {
    wishes.order().contains(&Wish::NoRematch)
}
