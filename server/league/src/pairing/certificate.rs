//! The proof that a proposal is the best there is, and its checker [`verify`].

use crate::ids::PlayerId;

use super::Nights;
pub use super::verify::{Flaw, verify};

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
    /// A place plays on one of these nights, or on none of them.
    Nights {
        /// Which place.
        place: Place,
        /// Which nights.
        nights: Nights,
        /// Node in which it does.
        inside: usize,
        /// Node in which it does not.
        outside: usize,
    },
    /// Two places are paired, or they are not.
    Paired {
        /// Which places.
        places: [Place; 2],
        /// Node in which they are.
        with: usize,
        /// Node in which they are not.
        without: usize,
    },
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
