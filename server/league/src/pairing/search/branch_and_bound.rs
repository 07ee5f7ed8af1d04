//! The best matching that fits the hall and leaves a future, by branching over what a plain matching
//! cannot know.
//!
//! Best first: the open node with the lowest bound is looked at next. If its matching fits, nothing
//! cheaper is left anywhere. If not, its pairings are split in two, each is solved again, and the
//! split becomes a node of the certificate.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use crate::pairing::cost::Tariff;
use crate::pairing::round::certificate::{Choice, Node, Place};
use crate::pairing::round::hall::{Capacity, Nights};
use crate::pairing::solve::Matcher;

use super::look_ahead::{Answer, Future, Plan};
use super::sparse;

/// Nodes of a certificate before the search gives up.
pub const MOST_NODES: usize = 20_000;

/// What the matching must fit.
pub struct Limits<'a> {
    /// Prices.
    pub tariff: &'a Tariff,
    /// Tables.
    pub capacity: &'a Capacity,
    /// The future, and the rounds of it that must stay playable.
    pub future: Option<(&'a Future<'a>, usize)>,
}

/// The best matching with its proof.
pub struct Best {
    /// Pairs of places.
    pub pairs: Vec<[Place; 2]>,
    /// Proof.
    pub tree: Vec<Node>,
    /// The best matching without regard to the hall and the future.
    pub unlimited: Vec<[Place; 2]>,
    /// The matcher of the root, for questions that change little.
    pub matcher: Matcher,
    /// A plan for the rounds that stay playable, when the future was searched to the end.
    pub plan: Option<Plan>,
}

/// Why there is no best matching.
pub enum NoBest {
    /// No matching fits, as this tree proves.
    None(Vec<Node>),
    /// [`MOST_NODES`] were not enough.
    TooHard,
}

/// Choices made on the way to a node.
#[derive(Clone)]
struct Choices {
    nights: Vec<Nights>,
    with: Vec<[Place; 2]>,
    without: Vec<[Place; 2]>,
}

struct Open {
    pairs: Vec<[Place; 2]>,
    choices: Choices,
}

struct Branching<'a> {
    limits: &'a Limits<'a>,
    tree: Vec<Node>,
    open: Vec<Option<Open>>,
    queue: BinaryHeap<Reverse<(i128, usize)>>,
}

impl Limits<'_> {
    /// The best matching that fits and has none of the pairs `without`.
    ///
    /// # Errors
    /// [`NoBest`] when there is none, or none was proven.
    pub fn best(&self, without: Vec<[Place; 2]>) -> Result<Best, NoBest> {
        let players = self.tariff.field().entrants.iter().map(|e| e.nights);
        let byes = (0..self.tariff.byes()).map(|_| self.capacity.open());
        let choices = Choices {
            nights: players.chain(byes).collect(),
            with: Vec::new(),
            without,
        };
        let mut branching = Branching {
            limits: self,
            tree: Vec::new(),
            open: Vec::new(),
            queue: BinaryHeap::new(),
        };
        let (_, root) = branching.add(choices);
        let Some(matcher) = root else {
            return Err(NoBest::None(branching.tree));
        };
        let unlimited = matcher.pairs();
        while let Some(Reverse((_, at))) = branching.queue.pop() {
            let Some(open) = branching.open[at].take() else {
                continue;
            };
            if let Some(nights) = self.crowded(&open.pairs, &open.choices) {
                branching.split_nights(at, &open, nights);
            } else {
                let plan = match self
                    .future
                    .map(|(f, n)| f.after(&open.pairs).playable(n, None))
                {
                    Some(Answer::No) => {
                        branching.split_pairs(at, &open);
                        continue;
                    }
                    Some(Answer::Yes(plan)) => Some(plan),
                    Some(Answer::Unknown) | None => None,
                };
                let Open { pairs, .. } = open;
                return Ok(Best {
                    pairs,
                    tree: branching.tree,
                    unlimited,
                    matcher,
                    plan,
                });
            }
            if branching.tree.len() > MOST_NODES {
                return Err(NoBest::TooHard);
            }
        }
        Err(NoBest::None(branching.tree))
    }

    /// Does every game of these pairs find a table?
    pub fn fits(&self, pairs: &[[Place; 2]]) -> bool {
        let nights = |place: Place| self.tariff.field().entrants[place as usize].nights;
        let games = self.games(pairs).map(|[a, b]| nights(a).and(nights(b)));
        self.capacity.crowded(&games.collect::<Vec<_>>()).is_none()
    }

    fn crowded(&self, pairs: &[[Place; 2]], choices: &Choices) -> Option<Nights> {
        let games: Vec<Nights> = self.games(pairs).map(|pair| choices.common(pair)).collect();
        self.capacity.crowded(&games)
    }

    fn games<'p>(&self, pairs: &'p [[Place; 2]]) -> impl Iterator<Item = [Place; 2]> + 'p {
        let players = self.tariff.field().players();
        pairs
            .iter()
            .copied()
            .filter(move |pair| pair.iter().all(|&p| (p as usize) < players))
    }
}

impl Choices {
    fn common(&self, [a, b]: [Place; 2]) -> Nights {
        self.nights[a as usize].and(self.nights[b as usize])
    }

    fn price(&self, tariff: &Tariff, a: usize, b: usize) -> Option<i128> {
        let pair = [a as Place, b as Place];
        let torn = self
            .with
            .iter()
            .any(|kept| *kept != pair && shares(*kept, pair));
        if torn || self.common(pair).is_empty() || self.without.contains(&pair) {
            return None;
        }
        tariff.price(a, b)
    }
}

fn shares(one: [Place; 2], other: [Place; 2]) -> bool {
    one.iter().any(|place| other.contains(place))
}

impl Branching<'_> {
    /// Solves a node and enters it; the matcher comes back when it has a matching.
    fn add(&mut self, choices: Choices) -> (usize, Option<Matcher>) {
        let at = self.tree.len();
        self.open.push(None);
        if let Some(nights) = self.overfull(&choices) {
            self.tree.push(Node::Crowded(nights));
            return (at, None);
        }
        let tariff = self.limits.tariff;
        let solved = if choices.with.is_empty() && choices.without.is_empty() && at == 0 {
            sparse::optimum(tariff)
        } else {
            Matcher::optimum(tariff.places(), |a, b| choices.price(tariff, a, b))
        };
        let matcher = match solved {
            Ok(matcher) => matcher,
            Err(found) => {
                self.tree.push(Node::Barrier(found.removed));
                return (at, None);
            }
        };
        let pairs = matcher.pairs();
        let priced = pairs
            .iter()
            .filter_map(|&[a, b]| tariff.price(a as usize, b as usize));
        self.queue.push(Reverse((priced.sum(), at)));
        self.tree.push(Node::Bound(matcher.dual()));
        self.open[at] = Some(Open { pairs, choices });
        (at, Some(matcher))
    }

    /// A set of nights to which more players are tied than its tables and byes can take.
    fn overfull(&self, choices: &Choices) -> Option<Nights> {
        let (players, byes) = choices
            .nights
            .split_at(self.limits.tariff.field().players());
        let too_many = |&(set, games): &(Nights, usize)| {
            let tied = players.iter().filter(|nights| nights.within(set)).count();
            let free = byes
                .iter()
                .filter(|nights| !nights.and(set).is_empty())
                .count();
            tied > 2 * games + free
        };
        self.limits
            .capacity
            .sets()
            .find(too_many)
            .map(|(set, _)| set)
    }

    /// Splits on whether a flexible place plays on the crowded nights.
    fn split_nights(&mut self, at: usize, open: &Open, nights: Nights) {
        let Some(place) = self.flexible(open, nights) else {
            self.tree[at] = Node::Crowded(nights);
            return;
        };
        let mut child = |kept: Nights| {
            let mut choices = open.choices.clone();
            choices.nights[place as usize] = kept;
            self.add(choices).0
        };
        let all = open.choices.nights[place as usize];
        let (inside, outside) = (child(all.and(nights)), child(all.without(nights)));
        self.tree[at] = Node::Split {
            choice: Choice::Nights(place, nights),
            yes: inside,
            no: outside,
        };
    }

    /// A place that can play inside and outside these nights: first of the games that crowd them,
    /// then a bye, then anyone.
    fn flexible(&self, open: &Open, nights: Nights) -> Option<Place> {
        let inside = |pair: &[Place; 2]| open.choices.common(*pair).within(nights);
        let crowding = self.limits.games(&open.pairs).filter(inside).flatten();
        let players = self.limits.tariff.field().players();
        let places = open.choices.nights.len();
        let byes = players..places;
        let rest = byes.chain(0..players).map(|place| place as Place);
        crowding.chain(rest).find(|&place| {
            let can = open.choices.nights[place as usize];
            !can.and(nights).is_empty() && !can.without(nights).is_empty()
        })
    }

    /// Splits a matching that leads to a dead end from all others, pair by pair.
    fn split_pairs(&mut self, at: usize, open: &Open) {
        let mut parent = at;
        let mut choices = open.choices.clone();
        for &places in open
            .pairs
            .iter()
            .filter(|pair| !open.choices.with.contains(pair))
        {
            let mut torn = choices.clone();
            torn.without.push(places);
            let without = self.add(torn).0;
            choices.with.push(places);
            let with = self.tree.len();
            self.tree.push(Node::DeadEnd);
            self.open.push(None);
            self.tree[parent] = Node::Split {
                choice: Choice::Paired(places),
                yes: with,
                no: without,
            };
            parent = with;
        }
        if parent == at {
            self.tree[at] = Node::DeadEnd;
        }
    }
}
