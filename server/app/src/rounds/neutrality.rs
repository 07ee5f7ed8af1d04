//! Checks against conflicts of interest: whoever plays in a round decides nothing about its games.

use std::collections::BTreeSet;

use document::rounds::task::TaskDocument;
use league::ids::PlayerId;
use league::pairing::round::changes::AssignmentChange;
use league::pairing::round::neutrality::{
    ConflictOfInterest, StandingProposal, check_orders, check_second_draw, needs_other_publisher,
};
use league::pairing::round::orders::Orders;
use messages::round_refusals;
use store::Conn;
use store::rounds::RoundRow;
use store::seasons::Season;

use super::internal_error::internal_error;
use crate::loaded_season::LoadedSeason;
use crate::{Action, Actor, Reason, Refusal};

/// The player that the actor is in the season.
pub(super) fn own_player(loaded: &LoadedSeason, actor: Actor) -> Option<PlayerId> {
    let mut players = loaded.players.iter();
    let own = players.find(|player| player.account == actor.account);
    own.map(|player| player.id)
}

pub(super) fn conflict(found: ConflictOfInterest) -> Refusal {
    Refusal::rule(Reason::ConflictOfInterest, found.message())
}

fn contenders(inputs: &TaskDocument) -> BTreeSet<PlayerId> {
    let contenders = inputs.contenders.iter();
    contenders.map(|it| PlayerId(it.player)).collect()
}

/// # Errors
/// [`Reason::ConflictOfInterest`].
pub(super) fn must_give_no_orders(
    loaded: &LoadedSeason,
    actor: Actor,
    inputs: &TaskDocument,
    orders: &Orders,
) -> Result<(), Refusal> {
    let own = own_player(loaded, actor);
    check_orders(own, &contenders(inputs), orders).map_err(conflict)
}

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
    let before = StandingProposal {
        contenders: &contenders(&standing.task),
        proposed_at: standing.proposed_at,
        has_same_inputs: digest(&standing.task)? == digest(inputs)?,
    };
    let own = own_player(loaded, actor);
    let published = of_week().filter_map(|it| it.published_at);
    check_second_draw(own, &contenders(inputs), before, published).map_err(conflict)
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
    let changed: BTreeSet<PlayerId> = changes.iter().map(|change| change.player).collect();
    let touched = loaded.players.iter();
    let touched = touched.filter(|player| changed.contains(&player.id));
    let touched = touched.map(|player| player.account).collect();
    let members = store::clubs::list_members(conn, season.club).await?;
    let officers = members
        .iter()
        .filter(|it| Action::Judge.allowed_to(it.role));
    let officers = officers.map(|officer| officer.account);
    if needs_other_publisher(actor.account, &touched, officers) {
        return Err(Refusal::rule(
            Reason::ApprovalRequired,
            round_refusals::own_repair(),
        ));
    }
    Ok(())
}
