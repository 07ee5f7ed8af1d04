//! Is a proposal allowed, is it what it says, and does the [`super::checker`] find it proven the best?
//!
//! Where a proposal says that rounds run dry, the count is the search's word: so many rounds are
//! checked to be possible, not one more to be impossible.

use std::collections::BTreeSet;

use crate::pairing::cost::Tariff;
use crate::pairing::cost::participants::Field;
use crate::pairing::round::certificate::{Node, Place};
use crate::pairing::round::game::{Game, Pair};
use crate::pairing::round::hall::{Capacity, Night, NightKey, TableNo};
use crate::pairing::round::proposal::{LookedAhead, Proposal};
use crate::pairing::round::task::Task;

use super::checker::Claim;

/// What is wrong with a proposal.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Flaw {
    /// The task itself is faulty, or the certificate names other players than the task.
    #[error("the certificate is about other players")]
    OtherPlayers,
    /// Somebody plays twice, not at all, or against somebody they must not meet.
    #[error("the games do not pair every player once and as allowed")]
    Games,
    /// A game is on a night, or at a table, that is not free for it.
    #[error("the games do not fit the hall")]
    Hall,
    /// The stated cost is not that of the games.
    #[error("the cost is not that of the games")]
    Cost,
    /// More byes than shown to be needed.
    #[error("fewer byes are not ruled out")]
    Byes,
    /// This node of the proof does not prove what it claims.
    #[error("node {0} of the proof does not hold")]
    Node(usize),
    /// The rounds said to remain playable are not.
    #[error("the plan for the rounds to come does not hold")]
    Plan,
}

/// Checks every claim of a proposal.
///
/// # Errors
/// The first [`Flaw`]; a proposal with one must not be published.
pub fn verify(task: &Task, proposal: &Proposal) -> Result<(), Flaw> {
    let certificate = &proposal.certificate;
    let field = Field::in_order(task, &certificate.players).map_err(|_| Flaw::OtherPlayers)?;
    let known: BTreeSet<_> = certificate.players.iter().collect();
    if known.len() != task.contenders.len() || field.players() != known.len() {
        return Err(Flaw::OtherPlayers);
    }
    let capacity = Capacity::of(&task.nights);
    let byes = certificate.byes as usize;
    let tariff = |byes| Tariff::new(task, field.clone(), byes).map_err(|_| Flaw::Cost);
    let pairs = pairs(&field, proposal).ok_or(Flaw::Games)?;
    let full = tariff(byes)?;
    let priced = pairs
        .iter()
        .map(|&[a, b]| full.price(a as usize, b as usize));
    let total = priced.sum::<Option<i128>>().ok_or(Flaw::Games)?;
    if full.total(pairs.iter().copied()) != proposal.cost {
        return Err(Flaw::Cost);
    }
    let fits = hall(task, &field, &proposal.games);
    fits.then_some(()).ok_or(Flaw::Hall)?;
    let plan = match &proposal.looked_ahead {
        LookedAhead::Playable(plan) | LookedAhead::RunsDry(plan) => plan.len(),
        _ => 0,
    };
    plan_holds(task, proposal, &field)
        .then_some(())
        .ok_or(Flaw::Plan)?;
    let fewest = (field.players() % 2).max(field.players().saturating_sub(2 * capacity.total()));
    let claim = |tariff: &Tariff, least, tree: &[Node]| {
        let capacity = &capacity;
        let claim = Claim {
            tariff,
            capacity,
            least,
            plan,
        };
        claim.is_shown_by(tree)
    };
    if byes > fewest {
        let fewer = tariff(byes - 2)?;
        claim(&fewer, None, &certificate.fewer).map_err(|_| Flaw::Byes)?;
    }
    claim(&full, Some(total), &certificate.tree).map_err(Flaw::Node)
}

/// The plan for the rounds to come pairs everyone anew, and is as long as it says.
fn plan_holds(task: &Task, proposal: &Proposal, field: &Field) -> bool {
    let plan = match &proposal.looked_ahead {
        LookedAhead::Playable(plan) if plan.len() != usize::from(task.rounds_left) => return false,
        LookedAhead::Playable(plan) | LookedAhead::RunsDry(plan) => plan,
        _ => return true,
    };
    let mut met: BTreeSet<Pair> = task.history.iter().map(|meeting| meeting.pair).collect();
    met.extend(proposal.games.iter().filter_map(|game| game.pair()));
    plan.iter().all(|round| {
        let players: BTreeSet<_> = round.iter().flat_map(|pair| pair.players()).collect();
        let may_meet = |pair: &Pair| {
            field
                .places(*pair)
                .is_some_and(|[a, b]| field.may_meet(a, b))
        };
        players.len() == 2 * round.len()
            && round.len() == field.players() / 2
            && round.iter().all(|pair| may_meet(pair) && met.insert(*pair))
    })
}

/// The pairs of places, when every player has exactly one game or bye.
fn pairs(field: &Field, proposal: &Proposal) -> Option<Vec<[Place; 2]>> {
    let games = proposal.games.iter().map(|game| field.places(game.pair()?));
    let byes = (field.players() as Place..).zip(&proposal.byes);
    let byes = byes.map(|(bye, &player)| Some([field.place(player)?, bye]));
    let pairs: Vec<[Place; 2]> = games.chain(byes).collect::<Option<_>>()?;
    let all: BTreeSet<Place> = pairs.iter().flatten().copied().collect();
    let places = field.players() + proposal.certificate.byes as usize;
    let once = all.len() == places && pairs.len() * 2 == places;
    once.then(|| pairs.iter().map(|&[a, b]| [a.min(b), a.max(b)]).collect())
}

/// Every game has a free table of its own on a night that both players can come.
fn hall(task: &Task, field: &Field, games: &[Game]) -> bool {
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
        let places = [game.attacker, game.defender].map(|player| field.place(player));
        places.into_iter().all(|place| {
            let player = place.and_then(|place| field.entrants.get(place as usize));
            player.is_some_and(|player| player.nights.contains(game.night))
        })
    };
    slots.len() == games.len() && slots.is_subset(&free) && games.iter().all(can_come)
}
