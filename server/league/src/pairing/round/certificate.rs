//! The proof that a proposal is the best there is, as data.

use crate::ids::PlayerId;

use super::hall::Nights;

/// A place in the matching: below the number of players a player, from there on a bye.
pub type Place = u32;

/// Proof of optimality: a tree whose leaves bound every pairing from below.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Certificate {
    /// The player at each place.
    pub players: Vec<PlayerId>,
    /// Byes, as places after the players'.
    pub byes: u32,
    /// Proof that two byes fewer are not enough, where neither an even number nor the tables say so:
    /// a tree without [`Node::Bound`].
    pub fewer: Vec<Node>,
    /// Nodes; the first is the root, children stand after their parent.
    pub tree: Vec<Node>,
}

/// A node of the proof: all pairings that respect the choices above it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Node {
    /// They all cost at least what this dual solution says.
    Bound(Dual),
    /// There are none: taking out these places leaves more odd sets than places taken (Tutte's
    /// theorem).
    Barrier(Vec<Place>),
    /// There are none: more players are tied to these nights than their tables seat.
    Crowded(Nights),
    /// There is one, and after it the rounds that could be played no longer can.
    DeadEnd,
    /// The choice is taken, or it is not.
    Split {
        /// What is chosen.
        choice: Choice,
        /// Node of the pairings that take it.
        yes: usize,
        /// Node of those that do not.
        no: usize,
    },
}

/// What splits pairings in two.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Choice {
    /// This place plays on one of these nights.
    Nights(Place, Nights),
    /// These two places are paired, the lower first.
    Paired([Place; 2]),
}

/// The choices on the way to a node, and whether each is taken.
#[derive(Clone, Debug, Default)]
pub struct Path(Vec<(Choice, bool)>);

impl Path {
    /// One choice further.
    pub fn with(&self, choice: Choice, taken: bool) -> Self {
        Self(self.0.iter().copied().chain([(choice, taken)]).collect())
    }

    /// The pairs chosen.
    pub fn pairs(&self) -> impl Iterator<Item = [Place; 2]> {
        self.0.iter().filter_map(|choice| match *choice {
            (Choice::Paired(pair), true) => Some(pair),
            _ => None,
        })
    }

    /// What is left of the nights of a place.
    pub fn nights(&self, place: Place, own: Nights) -> Nights {
        self.0.iter().fold(own, |left, choice| match *choice {
            (Choice::Nights(of, nights), true) if of == place => left.and(nights),
            (Choice::Nights(of, nights), false) if of == place => left.without(nights),
            _ => left,
        })
    }

    /// May this pair, the lower place first, still be paired?
    pub fn leaves(&self, pair: [Place; 2]) -> bool {
        let shares = |kept: &[Place; 2]| kept.iter().any(|place| pair.contains(place));
        self.0.iter().all(|(choice, taken)| match choice {
            Choice::Paired(kept) if *taken => *kept == pair || !shares(kept),
            Choice::Paired(torn) => *torn != pair,
            Choice::Nights(..) => true,
        })
    }
}

/// A dual solution of minimum-cost perfect matching (Edmonds 1965), in units of half the cost's.
///
/// Feasible when, for each pair of places that may be paired, the two potentials less the depths of
/// all odd sets that hold both do not exceed twice the pair's cost. Then every pairing costs at
/// least half of: all potentials, less depth times (size - 1) / 2 of each odd set.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Dual {
    /// One potential for each place.
    pub potentials: Vec<i128>,
    /// Odd sets of places with their depths, which are positive.
    pub odd_sets: Vec<(Vec<Place>, i128)>,
}
