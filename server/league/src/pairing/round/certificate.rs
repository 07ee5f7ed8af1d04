//! The certificate of optimality of a proposal, as data; `proof` checks it.

use crate::ids::PlayerId;

use super::hall::NightSet;

/// A vertex of the matching graph: below the number of players a player, from there on a bye.
pub type Vertex = u32;

/// Proof of optimality: a tree whose leaves bound every pairing from below.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Certificate {
    /// The player at each vertex.
    pub players: Vec<PlayerId>,
    /// Byes, as vertices after the players'.
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
    /// There are none: taking out these vertices leaves more odd sets than vertices taken (Tutte's
    /// theorem).
    Barrier(Vec<Vertex>),
    /// There are none: more players are tied to these nights than their tables seat.
    Crowded(NightSet),
    /// There is one, and after it the rounds that could be played no longer can.
    DeadEnd,
    /// The choice is taken, or it is not.
    Split {
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
    /// This vertex plays on one of these nights.
    Nights(Vertex, NightSet),
    /// These two vertices are paired, the lower first.
    Paired([Vertex; 2]),
}

/// The choices on the way to a node, and whether each is taken.
#[derive(Clone, Debug, Default)]
pub struct BranchPath(Vec<(Choice, bool)>);

impl BranchPath {
    /// The path with one more choice.
    pub fn with(&self, choice: Choice, taken: bool) -> Self {
        Self(self.0.iter().copied().chain([(choice, taken)]).collect())
    }

    pub fn pairs(&self) -> impl Iterator<Item = [Vertex; 2]> {
        self.0.iter().filter_map(|choice| match *choice {
            (Choice::Paired(pair), true) => Some(pair),
            _ => None,
        })
    }

    /// What is left of the nights of a vertex.
    pub fn nights(&self, vertex: Vertex, own: NightSet) -> NightSet {
        self.0.iter().fold(own, |left, choice| match *choice {
            (Choice::Nights(of, nights), true) if of == vertex => left.intersection(nights),
            (Choice::Nights(of, nights), false) if of == vertex => left.difference(nights),
            _ => left,
        })
    }

    /// May this pair, the lower vertex first, still be paired?
    pub fn allows(&self, pair: [Vertex; 2]) -> bool {
        let shares = |kept: &[Vertex; 2]| kept.iter().any(|vertex| pair.contains(vertex));
        self.0.iter().all(|(choice, taken)| match choice {
            Choice::Paired(kept) if *taken => *kept == pair || !shares(kept),
            Choice::Paired(excluded) => *excluded != pair,
            Choice::Nights(..) => true,
        })
    }
}

/// A dual solution of minimum-cost perfect matching (Edmonds 1965), in units of half the cost's.
///
/// Feasible when, for each pair of vertices that may be paired, the two potentials less the depths of
/// all odd sets that hold both do not exceed twice the pair's cost. Then every pairing costs at
/// least half of: all potentials, less depth times (size - 1) / 2 of each odd set.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Dual {
    /// One potential for each vertex.
    pub potentials: Vec<i128>,
    /// Odd sets of vertices with their depths, which are positive.
    pub odd_sets: Vec<(Vec<Vertex>, i128)>,
}
