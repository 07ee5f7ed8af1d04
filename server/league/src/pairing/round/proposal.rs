//! The proposal for a round: games with night, table and roles, byes, and the proof.

use messages::{Message, pairing_faults as said};

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
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ProposeError {
    /// The task contradicts itself; all its faults.
    InvalidTask(Vec<TaskFault>),
    /// No two players may meet.
    NoGame,
    /// The search for the best use of the hall outgrew its limit of steps.
    SearchLimit(usize),
}

impl ProposeError {
    pub fn message(&self) -> Message {
        match self {
            Self::InvalidTask(faults) => said::round_fault_task(format!("{faults:?}")),
            Self::NoGame => said::round_fault_no_game(),
            Self::SearchLimit(steps) => said::round_fault_too_hard(*steps),
        }
    }
}

/// One fault of a task.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TaskFault {
    /// Fewer than two players.
    TooFew(usize),
    /// More than the limit of participants in one round.
    TooMany { limit: usize, actual: usize },
    /// A player is listed twice.
    Twice(PlayerId),
    /// A score outside ±[`super::task::MAX_SCORE`].
    Score(PlayerId),
    /// No table on any night.
    HallClosed,
    /// A pin names somebody who does not play this round.
    PinAbsent(PlayerId),
    /// Two pins share a player.
    PinTwice(PlayerId),
    /// A pin joins two players who must not meet or share no night.
    PinExcluded(Pair),
    /// The wishes together need more bits than are counted exactly.
    TooWide,
}

impl TaskFault {
    pub fn message(&self) -> Message {
        match *self {
            Self::TooFew(players) => said::round_fault_too_few(players),
            Self::TooMany { limit, actual } => said::round_fault_too_many(actual, limit),
            Self::Twice(player) => said::round_fault_twice(player),
            Self::Score(player) => said::round_fault_score(player),
            Self::HallClosed => said::round_fault_hall_closed(),
            Self::PinAbsent(player) => said::round_fault_pin_absent(player),
            Self::PinTwice(player) => said::round_fault_pin_twice(player),
            Self::PinExcluded(pair) => said::round_fault_pin_excluded(format!("{pair:?}")),
            Self::TooWide => said::round_fault_too_wide(),
        }
    }
}
