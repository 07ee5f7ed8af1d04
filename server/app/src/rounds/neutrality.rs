//! Checks against conflicts of interest: whoever plays in a round decides nothing about its games.

use document::rounds::task::TaskDocument;
use league::ids::{AccountId, PlayerId};
use league::pairing::round::changes::AssignmentChange;
use messages::round_refusals;
use store::Conn;
use store::rounds::RoundRow;
use store::seasons::Season;

use super::build_task::Orders;
use super::internal_error::internal_error;
use crate::loaded_season::LoadedSeason;
use crate::{Action, Actor, Reason, Refusal};

/// The player that the actor is in the season.
pub(super) fn own_player(loaded: &LoadedSeason, actor: Actor) -> Option<PlayerId> {
    let mut players = loaded.players.iter();
    let own = players.find(|player| player.account == actor.account);
    own.map(|player| player.id)
}

fn plays(loaded: &LoadedSeason, actor: Actor, inputs: &TaskDocument) -> bool {
    let own = own_player(loaded, actor);
    let mut contenders = inputs.contenders.iter();
    own.is_some_and(|own| contenders.any(|contender| contender.player == own.0))
}

/// An order about others moves one's own game, too.
///
/// # Errors
/// [`Reason::ConflictOfInterest`].
pub(super) fn must_give_no_orders(
    loaded: &LoadedSeason,
    actor: Actor,
    inputs: &TaskDocument,
    orders: &Orders,
) -> Result<(), Refusal> {
    let gives_none = orders.pins.is_empty() && orders.forbidden.is_empty();
    if gives_none || !plays(loaded, actor, inputs) {
        return Ok(());
    }
    Err(Refusal::rule(
        Reason::ConflictOfInterest,
        round_refusals::own_round_orders(),
    ))
}

/// Whoever plays in a round that is proposed has seen its games: for them its inputs are locked.
/// Another round of the week, published since, opens them: this one must then be drawn anew.
///
/// # Errors
/// [`Reason::ConflictOfInterest`].
pub(super) fn must_be_drawn_once(
    loaded: &LoadedSeason,
    actor: Actor,
    drawn: &[RoundRow],
    inputs: &TaskDocument,
    number: u8,
) -> Result<(), Refusal> {
    let of_week = || drawn.iter().filter(|it| it.week.number() == inputs.week);
    let standing = of_week()
        .find(|it| it.number == number && it.repair.is_none() && it.published_at.is_none());
    let Some(standing) = standing else {
        return Ok(());
    };
    let digest = |task: &TaskDocument| task.digest().map_err(|cause| internal_error(&cause));
    let same = digest(&standing.task)? == digest(inputs)?;
    let stale = of_week().any(|it| it.published_at.is_some_and(|at| at > standing.proposed_at));
    let own = plays(loaded, actor, inputs) || plays(loaded, actor, &standing.task);
    if same || stale || !own {
        return Ok(());
    }
    Err(Refusal::rule(
        Reason::ConflictOfInterest,
        round_refusals::own_round_drawn(),
    ))
}

/// A repair of one's own game takes effect once somebody publishes it whose game it leaves alone,
/// where the club has anybody of that kind who may.
///
/// # Errors
/// [`Reason::ApprovalRequired`].
pub(super) async fn must_be_approved(
    conn: &mut Conn,
    season: &Season,
    loaded: &LoadedSeason,
    actor: Actor,
    changes: &[AssignmentChange],
) -> Result<(), Refusal> {
    let touched = |account: AccountId| {
        let mut players = loaded.players.iter();
        let player = players.find(|player| player.account == account);
        let mut changes = changes.iter();
        player.is_some_and(|player| changes.any(|change| change.player == player.id))
    };
    if !touched(actor.account) {
        return Ok(());
    }
    let members = store::clubs::list_members(conn, season.club).await?;
    let mut officers = members
        .iter()
        .filter(|member| Action::Judge.allowed_to(member.role));
    if officers.all(|officer| touched(officer.account)) {
        return Ok(());
    }
    Err(Refusal::rule(
        Reason::ApprovalRequired,
        round_refusals::own_repair(),
    ))
}
