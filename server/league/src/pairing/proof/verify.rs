//! Verification of a proposal: it keeps to the task, states its own cost, and is proven the best.
//!
//! Where a proposal says that rounds run dry, the count is only half proven: so many rounds are
//! checked to be possible, but not that one more is impossible.

use std::collections::BTreeSet;

use messages::{Message, pairing_faults as said};

use crate::pairing::cost::PairCosts;
use crate::pairing::cost::participants::Participants;
use crate::pairing::round::certificate::{Node, Vertex};
use crate::pairing::round::game::{Game, Pair};
use crate::pairing::round::hall::{Capacity, Night, NightKey, TableNo};
use crate::pairing::round::proposal::{LookAhead, Proposal};
use crate::pairing::round::task::Task;

use super::checker::OptimalityClaim;

/// What is wrong with a proposal.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum VerifyError {
    /// The task itself is faulty, or the certificate names other players than the task.
    OtherPlayers,
    /// Somebody plays twice, not at all, or against somebody they must not meet.
    Games,
    /// A game is on a night, or at a table, that is not free for it.
    Hall,
    /// The stated cost is not that of the games.
    Cost,
    /// More byes than shown to be needed.
    Byes,
    /// This node of the proof does not prove what it claims.
    Node(usize),
    /// The rounds said to remain playable are not.
    Plan,
}

impl VerifyError {
    pub fn message(&self) -> Message {
        match *self {
            Self::OtherPlayers => said::round_fault_other_players(),
            Self::Games => said::round_fault_games(),
            Self::Hall => said::round_fault_hall(),
            Self::Cost => said::round_fault_cost(),
            Self::Byes => said::round_fault_byes(),
            Self::Node(node) => said::round_fault_node(node),
            Self::Plan => said::round_fault_plan(),
        }
    }
}

/// Checks every claim of a proposal.
///
/// # Errors
/// The first [`VerifyError`]; a proposal with one must not be published.
pub fn verify(task: &Task, proposal: &Proposal) -> Result<(), VerifyError> {
    let certificate = &proposal.certificate;
    let participants = Participants::in_order(task, &certificate.players)
        .map_err(|_| VerifyError::OtherPlayers)?;
    let known: BTreeSet<_> = certificate.players.iter().collect();
    if known.len() != task.contenders.len() || participants.count() != known.len() {
        return Err(VerifyError::OtherPlayers);
    }
    let capacity = Capacity::new(&task.nights);
    let byes = certificate.byes as usize;
    let costs =
        |byes| PairCosts::new(task, participants.clone(), byes).map_err(|_| VerifyError::Cost);
    let pairs = matched_pairs(&participants, proposal).ok_or(VerifyError::Games)?;
    let full = costs(byes)?;
    let priced = pairs
        .iter()
        .map(|&[a, b]| full.edge_cost(a as usize, b as usize));
    let total = priced.sum::<Option<i128>>().ok_or(VerifyError::Games)?;
    if full.total(pairs.iter().copied()) != proposal.cost {
        return Err(VerifyError::Cost);
    }
    let fits = fits_hall(task, &participants, &proposal.games);
    fits.then_some(()).ok_or(VerifyError::Hall)?;
    let plan = match &proposal.look_ahead {
        LookAhead::Playable(plan) | LookAhead::RunsDry(plan) => plan.len(),
        _ => 0,
    };
    plan_holds(task, proposal, &participants)
        .then_some(())
        .ok_or(VerifyError::Plan)?;
    let fewest =
        (participants.count() % 2).max(participants.count().saturating_sub(2 * capacity.total()));
    let claim = |costs: &PairCosts, least, tree: &[Node]| {
        let capacity = &capacity;
        let claim = OptimalityClaim {
            costs,
            capacity,
            least,
            plan,
        };
        claim.check(tree)
    };
    if byes > fewest {
        let fewer = costs(byes - 2)?;
        claim(&fewer, None, &certificate.fewer).map_err(|_| VerifyError::Byes)?;
    }
    claim(&full, Some(total), &certificate.tree).map_err(VerifyError::Node)
}

/// The plan for the rounds to come pairs everyone anew, and is as long as it says.
fn plan_holds(task: &Task, proposal: &Proposal, participants: &Participants) -> bool {
    let plan = match &proposal.look_ahead {
        LookAhead::Playable(plan) if plan.len() != usize::from(task.rounds_left) => return false,
        LookAhead::Playable(plan) | LookAhead::RunsDry(plan) => plan,
        _ => return true,
    };
    let mut met: BTreeSet<Pair> = task.history.iter().map(|meeting| meeting.pair).collect();
    met.extend(proposal.games.iter().filter_map(|game| game.pair()));
    plan.iter().all(|round| {
        let players: BTreeSet<_> = round.iter().flat_map(|pair| pair.players()).collect();
        let may_meet = |pair: &Pair| {
            participants
                .vertices_of(*pair)
                .is_some_and(|[a, b]| participants.may_meet(a, b))
        };
        players.len() == 2 * round.len()
            && round.len() == participants.count() / 2
            && round.iter().all(|pair| may_meet(pair) && met.insert(*pair))
    })
}

/// The pairs of vertices, when every player has exactly one game or bye.
fn matched_pairs(participants: &Participants, proposal: &Proposal) -> Option<Vec<[Vertex; 2]>> {
    let games = proposal
        .games
        .iter()
        .map(|game| participants.vertices_of(game.pair()?));
    let byes = (participants.count() as Vertex..).zip(&proposal.byes);
    let byes = byes.map(|(bye, &player)| Some([participants.vertex_of(player)?, bye]));
    let pairs: Vec<[Vertex; 2]> = games.chain(byes).collect::<Option<_>>()?;
    let all: BTreeSet<Vertex> = pairs.iter().flatten().copied().collect();
    let vertices = participants.count() + proposal.certificate.byes as usize;
    let once = all.len() == vertices && pairs.len() * 2 == vertices;
    once.then(|| pairs.iter().map(|&[a, b]| [a.min(b), a.max(b)]).collect())
}

/// Every game has a free table of its own on a night that both players can come.
fn fits_hall(task: &Task, participants: &Participants, games: &[Game]) -> bool {
    let tables = |night: &'_ Night| -> Vec<(NightKey, TableNo)> {
        night
            .tables
            .iter()
            .map(|&table| (night.key, table))
            .collect()
    };
    let free: BTreeSet<_> = task.nights.iter().flat_map(tables).collect();
    let slots: BTreeSet<_> = games.iter().map(|game| (game.night, game.table)).collect();
    let can_come = |game: &Game| {
        let vertices = [game.attacker, game.defender].map(|player| participants.vertex_of(player));
        vertices.into_iter().all(|vertex| {
            let player = vertex.and_then(|vertex| participants.list.get(vertex as usize));
            player.is_some_and(|player| player.nights.contains(game.night))
        })
    };
    slots.len() == games.len() && slots.is_subset(&free) && games.iter().all(can_come)
}
