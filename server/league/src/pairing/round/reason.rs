//! The reasons for a pairing, as data; sentences are made from them where names are known.

use crate::ids::PlayerId;
use crate::points::LeaguePoints;

use super::cost::Level;
use super::game::Pair;
use super::wishes::Wish;

/// Why one game, or one bye, stands in the proposal.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PairingReason {
    pub subject: Subject,
    /// Wishes it gives up, with the amount.
    pub given_up: Vec<(Wish, u64)>,
    /// What the best proposal without it would cost.
    pub alternative: AlternativeCost,
}

/// What a reason explains.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Subject {
    /// Two players of one score group meet.
    SameScore { pair: Pair, score: LeaguePoints },
    /// Two players of different scores meet.
    Float {
        /// The higher score: floats down.
        down: PlayerId,
        down_score: LeaguePoints,
        /// The lower score: floats up.
        up: PlayerId,
        up_score: LeaguePoints,
    },
    /// A player sits out.
    Bye {
        player: PlayerId,
        score: LeaguePoints,
    },
}

/// What it would cost to forbid a game or a bye.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AlternativeCost {
    /// The organiser fixed it.
    Pinned,
    /// It had to be: the round robin's table has it, or it was reported before the repair.
    Fixed,
    /// There is no pairing without it.
    Indispensable,
    /// Fewer of the rounds to come would be playable without a rematch.
    ShorterSeason,
    /// Another pairing is exactly as good.
    EquallyGood,
    /// The first level on which every other pairing is worse, and by how much.
    Worse(Level, u64),
    /// Not computed: there are too many players to solve the round again for every game.
    NotComputed,
}

/// Why a rematch cannot be avoided: without `removed`, the players fall into so many odd sets whose
/// members have met everyone outside, that some set must pair somebody again (Berge's formula).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Barrier {
    /// Players who could serve one odd set each.
    pub removed: Vec<PlayerId>,
    /// Sets of odd size that have only `removed` left to meet.
    pub odd_sets: Vec<Vec<PlayerId>>,
    /// Games that must be rematches, at least.
    pub rematches: u32,
}
