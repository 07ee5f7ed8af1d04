//! The proposal for a round: games with night, table and roles, byes, and the proof.

use crate::ids::PlayerId;

use super::certificate::Certificate;
use super::cost::Cost;
use super::game::{Game, Pair};
use super::reason::{Barrier, PairingReason};

/// The best pairing for a task.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Proposal {
    /// Games, by night and table.
    pub games: Vec<Game>,
    /// Who sits out, by identity.
    pub byes: Vec<PlayerId>,
    /// What the pairing gives up.
    pub cost: Cost,
    /// What it would give up if the hall had tables without end: the difference is the hall's.
    pub cost_without_hall: Cost,
    /// Proof that no pairing gives up less.
    pub certificate: Certificate,
    /// One reason for each game, in the same order, then one for each bye.
    pub reasons: Vec<PairingReason>,
    /// Why players meet again, where they must.
    pub barrier: Option<Barrier>,
    /// How far the rounds to come were considered.
    pub look_ahead: LookAhead,
}

/// How far the rounds to come were considered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LookAhead {
    /// This is the last round.
    LastRound,
    /// Every round left can be played without a rematch; here is one way.
    Playable(Vec<Vec<Pair>>),
    /// Every round left can be played whatever happens: enough opponents remain for everyone
    /// (Dirac's theorem; Schmand, Schroeder, Vargas Koch, arXiv 2007.10704).
    NeverRunsDry,
    /// However this round is paired, only so many further rounds avoid a rematch; here they are.
    RunsDry(Vec<Vec<Pair>>),
    /// Too many players, or too long a search: only this round was considered.
    OneRound,
}

/// Why there is no proposal.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ProposeError {
    /// The task contradicts itself; all its faults.
    #[error("the task has faults: {0:?}")]
    InvalidTask(Vec<TaskFault>),
    /// No two players may meet.
    #[error("no two players may meet on a night with a free table")]
    NoGame,
    /// The search for the best use of the hall outgrew its limit of steps.
    #[error("no proof within {0} steps of the search")]
    SearchLimit(usize),
}

/// One fault of a task.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum TaskFault {
    /// Fewer than two players.
    #[error("{0} players cannot play")]
    TooFew(usize),
    /// More than the limit of participants in one round.
    #[error("{actual} players; at most {limit} are paired")]
    TooMany { limit: usize, actual: usize },
    /// A player is listed twice.
    #[error("player {0} is listed twice")]
    Twice(PlayerId),
    /// A score outside ±[`super::task::MAX_SCORE`].
    #[error("player {0} has a score out of range")]
    Score(PlayerId),
    /// No table on any night.
    #[error("no table is free")]
    HallClosed,
    /// A pin names somebody who does not play this round.
    #[error("player {0} is pinned but not playing")]
    PinAbsent(PlayerId),
    /// Two pins share a player.
    #[error("player {0} is pinned twice")]
    PinTwice(PlayerId),
    /// A pin joins two players who must not meet or share no night.
    #[error("the pinned pair {0:?} must not or cannot meet")]
    PinExcluded(Pair),
    /// The wishes together need more bits than are counted exactly.
    #[error("the wishes together are too wide to be counted exactly")]
    TooWide,
}
