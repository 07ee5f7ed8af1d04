//! The independent checker of optimality: walks a certificate's tree and believes none of it.
//!
//! A dual solution bounds by weak duality, a barrier excludes by Tutte's theorem, a crowd by
//! counting, a dead end by trying every future anew. Nothing here is shared with the solver.

use std::collections::BTreeSet;

use super::certificate::{Dual, Node, Place};
use super::cost::Tariff;
use super::hall::Capacity;
use super::odd_components::odd_components;
use super::{Nights, futures};

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
        let (nights, with, without) = (players.chain(byes).collect(), Vec::new(), BTreeSet::new());
        let mut open = vec![(
            0,
            Chosen {
                nights,
                with,
                without,
            },
        )];
        let mut looked_at = 0..self.tree.len();
        while let Some((at, mut chosen)) = open.pop() {
            looked_at.next().ok_or(at)?;
            let mut other = chosen.clone();
            let holds = match self.tree.get(at).ok_or(at)? {
                Node::Bound(dual) => least.and_then(|least| self.bounds(dual, least, &chosen)),
                Node::Barrier(removed) => Some(self.separates(removed, &chosen)),
                Node::Crowded(nights) => Some(self.crowds(*nights, &chosen)),
                Node::DeadEnd => Some(self.is_dead_end(chosen.with)),
                &Node::Nights {
                    place,
                    nights,
                    inside,
                    outside,
                } => {
                    let own = *chosen.nights.get(place as usize).ok_or(at)?;
                    chosen.nights[place as usize] = own.and(nights);
                    other.nights[place as usize] = own.without(nights);
                    open.extend([(inside, chosen), (outside, other)]);
                    Some(inside > at && outside > at)
                }
                &Node::Paired {
                    places,
                    with,
                    without,
                } => {
                    chosen.with.push(places);
                    other.without.insert(places);
                    open.extend([(with, chosen), (without, other)]);
                    Some(with > at && without > at)
                }
            };
            holds.filter(|&holds| holds).ok_or(at)?;
        }
        Ok(())
    }

    /// The cost of a pair that the choices leave open.
    fn price(&self, a: usize, b: usize, chosen: &Chosen) -> Option<i128> {
        let pair = [a as Place, b as Place];
        let torn = |kept: &[Place; 2]| *kept != pair && kept.iter().any(|p| pair.contains(p));
        let open = !chosen.nights[a].and(chosen.nights[b]).is_empty()
            && !chosen.without.contains(&pair)
            && !chosen.with.iter().any(torn);
        if open { self.tariff.price(a, b) } else { None }
    }

    /// The dual is feasible and its value is at least `least`; `None` when it is malformed or a sum
    /// outgrows 128 bits. A pair that cannot pay for the difference of its scores is not looked up.
    fn bounds(&self, dual: &Dual, least: i128, chosen: &Chosen) -> Option<bool> {
        if dual.potentials.len() != self.tariff.places() {
            return None;
        }
        let mut within = vec![Vec::new(); dual.potentials.len()];
        let mut value = dual
            .potentials
            .iter()
            .try_fold(0_i128, |sum, &y| sum.checked_add(y))?;
        for (number, (set, depth)) in dual.odd_sets.iter().enumerate() {
            let distinct: BTreeSet<Place> = set.iter().copied().collect();
            if distinct.len() != set.len() || set.len() % 2 == 0 || *depth < 0 {
                return None;
            }
            for &place in set {
                within.get_mut(place as usize)?.push(number);
            }
            value = value.checked_sub(depth.checked_mul(set.len() as i128 / 2)?)?;
        }
        for a in 0..within.len() {
            for b in a + 1..within.len() {
                let mut spent = dual.potentials[a].checked_add(dual.potentials[b])?;
                if spent <= 2 * self.tariff.least(a, b) {
                    continue;
                }
                let Some(cost) = self.price(a, b, chosen).filter(|cost| spent > 2 * cost) else {
                    continue;
                };
                for number in &within[a] {
                    if within[b].binary_search(number).is_ok() {
                        spent = spent.checked_sub(dual.odd_sets[*number].1)?;
                    }
                }
                if spent > 2 * cost {
                    return Some(false);
                }
            }
        }
        Some(value >= least.checked_mul(2)?)
    }

    /// Without these places more odd components are left than places were taken (Tutte 1947).
    fn separates(&self, removed: &[Place], chosen: &Chosen) -> bool {
        let taken: BTreeSet<usize> = removed.iter().map(|&place| place as usize).collect();
        let left = (0..self.tariff.places())
            .filter(|place| !taken.contains(place))
            .collect();
        let joined = |a: usize, b: usize| self.price(a.min(b), a.max(b), chosen).is_some();
        odd_components(left, joined) > taken.len()
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
    fn is_dead_end(&self, pairs: Vec<[Place; 2]>) -> bool {
        let paired: BTreeSet<Place> = pairs.iter().flatten().copied().collect();
        let everyone = self.plan > 0 && paired.len() == self.tariff.places();
        let played = pairs.into_iter().collect();
        everyone && !futures::exist(self.tariff, self.capacity, played, self.plan)
    }
}
