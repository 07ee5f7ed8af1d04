//! The independent checker of optimality: walks a certificate's tree and believes none of it.
//!
//! A dual solution bounds by weak duality, a barrier excludes by Tutte's theorem, a crowd by
//! counting, a dead end by trying every future anew. Nothing here is shared with the solver.

use std::collections::BTreeSet;

use super::Nights;
use super::certificate::{Dual, Node, Place};
use super::cost::Tariff;
use super::hall::Capacity;

/// A tree that claims that no matching costs less.
pub struct Proof<'a> {
    /// What a pair costs.
    pub tariff: &'a Tariff,
    /// How many games a set of nights holds.
    pub capacity: &'a Capacity,
    /// The claim.
    pub tree: &'a [Node],
    /// Rounds to come that a dead end fails to leave playable.
    pub plan: usize,
}

/// Choices on the way to a node.
#[derive(Clone)]
struct Chosen {
    nights: Vec<Nights>,
    with: Vec<[Place; 2]>,
    without: BTreeSet<[Place; 2]>,
}

impl Proof<'_> {
    /// Does the tree show that no matching costs less than `least`, or that there is none at all?
    ///
    /// # Errors
    /// The node that does not hold.
    pub fn shows(&self, least: Option<i128>) -> Result<(), usize> {
        let players = self.tariff.field().entrants.iter().map(|e| e.nights);
        let byes = (0..self.tariff.byes()).map(|_| self.capacity.open());
        let nights = players.chain(byes).collect();
        self.node(
            0,
            least,
            Chosen {
                nights,
                with: Vec::new(),
                without: BTreeSet::new(),
            },
        )
    }

    fn node(&self, at: usize, least: Option<i128>, chosen: Chosen) -> Result<(), usize> {
        let children = match self.tree.get(at).ok_or(at)? {
            Node::Bound(dual) => {
                let bounds =
                    least.is_some_and(|least| self.bounds(dual, least, &chosen) == Some(true));
                return bounds.then_some(()).ok_or(at);
            }
            Node::Barrier(removed) => {
                return self.separates(removed, &chosen).then_some(()).ok_or(at);
            }
            Node::Crowded(nights) => return self.crowds(*nights, &chosen).then_some(()).ok_or(at),
            Node::DeadEnd => return self.is_dead_end(&chosen).then_some(()).ok_or(at),
            Node::Nights {
                place,
                nights,
                inside,
                outside,
            } => {
                let mut parts = [chosen.clone(), chosen];
                let own = *parts[0].nights.get(*place as usize).ok_or(at)?;
                parts[0].nights[*place as usize] = own.and(*nights);
                parts[1].nights[*place as usize] = own.without(*nights);
                [*inside, *outside].into_iter().zip(parts)
            }
            Node::Paired {
                places,
                with,
                without,
            } => {
                let mut parts = [chosen.clone(), chosen];
                parts[0].with.push(*places);
                parts[1].without.insert(*places);
                [*with, *without].into_iter().zip(parts)
            }
        };
        for (child, chosen) in children {
            (child > at).then_some(()).ok_or(at)?;
            self.node(child, least, chosen)?;
        }
        Ok(())
    }

    /// The cost of a pair that the choices leave open.
    fn price(&self, a: usize, b: usize, chosen: &Chosen) -> Option<i128> {
        let pair = [a as Place, b as Place];
        let torn = |kept: &&[Place; 2]| **kept != pair && kept.iter().any(|p| pair.contains(p));
        let open = !chosen.nights[a].and(chosen.nights[b]).is_empty()
            && !chosen.without.contains(&pair)
            && chosen.with.iter().find(torn).is_none();
        if open { self.tariff.price(a, b) } else { None }
    }

    /// The dual is feasible and its value is at least `least`; `None` when a sum outgrows 128 bits.
    /// Prices are never negative, so a pair with nothing to spend is not looked up.
    fn bounds(&self, dual: &Dual, least: i128, chosen: &Chosen) -> Option<bool> {
        let places = self.tariff.places();
        let mut within = vec![Vec::new(); places];
        let mut value: i128 = 0;
        for (number, (set, depth)) in dual.odd_sets.iter().enumerate() {
            let distinct: BTreeSet<Place> = set.iter().copied().collect();
            if distinct.len() != set.len() || set.len() % 2 == 0 || *depth < 0 {
                return Some(false);
            }
            for &place in set {
                within.get_mut(place as usize)?.push(number);
            }
            value = value.checked_sub(depth.checked_mul(set.len() as i128 / 2)?)?;
        }
        for potential in &dual.potentials {
            value = value.checked_add(*potential)?;
        }
        let depth = |a: usize, b: usize| -> i128 {
            let common = within[a].iter().filter(|number| within[b].contains(number));
            common.map(|&number| dual.odd_sets[number].1).sum()
        };
        let mut all = (0..places).flat_map(|a| (a + 1..places).map(move |b| (a, b)));
        let feasible = all.all(|(a, b)| {
            let spent = dual.potentials[a] + dual.potentials[b] - depth(a, b);
            spent <= 0
                || self
                    .price(a, b, chosen)
                    .is_none_or(|cost| spent <= 2 * cost)
        });
        Some(dual.potentials.len() == places && feasible && value >= least.checked_mul(2)?)
    }

    /// Without these places more odd components are left than places were taken (Tutte 1947).
    fn separates(&self, removed: &[Place], chosen: &Chosen) -> bool {
        let taken: BTreeSet<usize> = removed.iter().map(|&place| place as usize).collect();
        let places = self.tariff.places();
        let mut left: BTreeSet<usize> = (0..places).filter(|p| !taken.contains(p)).collect();
        let mut odd = 0;
        while let Some(first) = left.pop_first() {
            let (mut size, mut reached) = (1, vec![first]);
            while let Some(a) = reached.pop() {
                let joined = |b: &usize| self.price(a.min(*b), a.max(*b), chosen).is_some();
                let near: Vec<usize> = left.iter().copied().filter(joined).collect();
                size += near.len();
                left.retain(|b| !near.contains(b));
                reached.extend(near);
            }
            odd += size % 2;
        }
        odd > taken.len()
    }

    /// More players are tied to these nights than their tables and byes can take.
    fn crowds(&self, nights: Nights, chosen: &Chosen) -> bool {
        let (players, byes) = chosen.nights.split_at(self.tariff.field().players());
        let tied = players.iter().filter(|own| own.within(nights)).count();
        let free = byes
            .iter()
            .filter(|own| !own.and(nights).is_empty())
            .count();
        self.capacity
            .sets()
            .any(|(set, games)| set == nights && tied > 2 * games + free)
    }

    /// Everyone's pair is chosen, and after it so many rounds cannot be played.
    fn is_dead_end(&self, chosen: &Chosen) -> bool {
        let paired: BTreeSet<Place> = chosen.with.iter().flatten().copied().collect();
        let played = chosen.with.iter().copied().collect();
        let everyone = paired.len() == self.tariff.places();
        self.plan > 0
            && everyone
            && !super::futures::exist(self.tariff, self.capacity, played, self.plan)
    }
}
