//! Conflicts of interest: whoever plays in a round decides nothing about its games.

use std::collections::BTreeSet;

use messages::{Message, round_refusals};

use crate::ids::{AccountId, PlayerId};
use crate::time::Instant;

use super::orders::Orders;

/// What somebody may not decide because it is about a game of their own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ConflictOfInterest {
    /// Orders for a round that one plays in.
    Orders,
    /// A second draw of a round that one plays in.
    SecondDraw,
    /// Taking out oneself or one's opponent.
    OwnGame,
}

impl ConflictOfInterest {
    pub fn message(self) -> Message {
        match self {
            Self::Orders => round_refusals::own_round_orders(),
            Self::SecondDraw => round_refusals::own_round_drawn(),
            Self::OwnGame => round_refusals::own_game_repair(),
        }
    }
}

/// A proposal that stands, as somebody sees it who would draw it anew.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StandingProposal<'a> {
    pub contenders: &'a BTreeSet<PlayerId>,
    pub proposed_at: Instant,
    /// Whether the new proposal is drawn from the same inputs, and so is the same.
    pub has_same_inputs: bool,
}

/// An order about others moves one's own game, too.
///
/// # Errors
/// [`ConflictOfInterest::Orders`].
pub fn check_orders(
    own: Option<PlayerId>,
    contenders: &BTreeSet<PlayerId>,
    orders: &Orders,
) -> Result<(), ConflictOfInterest> {
    if !orders.is_empty() && plays(own, contenders) {
        return Err(ConflictOfInterest::Orders);
    }
    Ok(())
}

/// Whoever plays in a round that is proposed has seen its games: for them its inputs are locked. Another
/// round of the week, published since, opens them: this one must then be drawn anew. `published` is when
/// rounds of the week were published.
///
/// # Errors
/// [`ConflictOfInterest::SecondDraw`].
pub fn check_second_draw(
    own: Option<PlayerId>,
    contenders: &BTreeSet<PlayerId>,
    standing: StandingProposal<'_>,
    published: impl IntoIterator<Item = Instant>,
) -> Result<(), ConflictOfInterest> {
    let is_own = plays(own, contenders) || plays(own, standing.contenders);
    let is_stale = is_stale(standing.proposed_at, published);
    if is_own && !standing.has_same_inputs && !is_stale {
        return Err(ConflictOfInterest::SecondDraw);
    }
    Ok(())
}

/// Whether a proposal is overtaken: another round of the week, published since, may have taken its
/// tables.
pub fn is_stale(proposed_at: Instant, published: impl IntoIterator<Item = Instant>) -> bool {
    published.into_iter().any(|at| at > proposed_at)
}

/// Nobody takes themselves or their opponent out of a round. `own_game` is oneself and, without a bye, the
/// opponent.
///
/// # Errors
/// [`ConflictOfInterest::OwnGame`] when one of the `named` players is in one's own game.
pub fn check_own_game(
    own_game: &[PlayerId],
    named: impl IntoIterator<Item = PlayerId>,
) -> Result<(), ConflictOfInterest> {
    let mut named = named.into_iter();
    if named.any(|player| own_game.contains(&player)) {
        return Err(ConflictOfInterest::OwnGame);
    }
    Ok(())
}

/// Whether a repair must be published by somebody else: it changes the actor's own game, and the club has
/// an officer whose game it leaves alone. `touched` are those whose games it changes.
pub fn needs_other_publisher(
    actor: AccountId,
    touched: &BTreeSet<AccountId>,
    officers: impl IntoIterator<Item = AccountId>,
) -> bool {
    let mut officers = officers.into_iter();
    touched.contains(&actor) && officers.any(|officer| !touched.contains(&officer))
}

fn plays(own: Option<PlayerId>, contenders: &BTreeSet<PlayerId>) -> bool {
    own.is_some_and(|own| contenders.contains(&own))
}

#[cfg(test)]
mod tests {
    use chrono::Duration;
    use uuid::Uuid;

    use super::super::game::Pair;
    use super::*;

    fn players() -> [PlayerId; 3] {
        [1, 2, 3].map(|number| PlayerId(Uuid::from_u128(number)))
    }

    #[test]
    fn whoever_plays_in_a_round_gives_no_orders_for_it() {
        let [a, b, c] = players();
        let contenders = [a, b].into();
        let orders = Orders {
            pins: vec![Pair::new(a, b).unwrap()],
            ..Orders::default()
        };
        let none = Orders::default();
        let check = |own, orders| check_orders(own, &contenders, orders);
        assert_eq!(check(Some(a), &orders), Err(ConflictOfInterest::Orders));
        assert_eq!(check(Some(a), &none), Ok(()));
        for neutral in [Some(c), None] {
            assert_eq!(check(neutral, &orders), Ok(()));
        }
    }

    #[test]
    fn whoever_plays_in_a_round_draws_it_once() {
        let [a, b, c] = players();
        let (with, without) = ([a, b].into(), [b, c].into());
        let drawn: Instant = "2026-01-13T12:00:00Z".parse().unwrap();
        let standing = |contenders, has_same_inputs| StandingProposal {
            contenders,
            proposed_at: drawn,
            has_same_inputs,
        };
        let again = |own, standing| check_second_draw(own, &with, standing, [drawn]);
        let fault = Err(ConflictOfInterest::SecondDraw);
        assert_eq!(again(Some(a), standing(&with, false)), fault);
        assert_eq!(again(Some(a), standing(&with, true)), Ok(()));
        assert_eq!(again(Some(c), standing(&with, false)), Ok(()));
        assert_eq!(again(Some(c), standing(&without, false)), fault);
        assert_eq!(again(None, standing(&with, false)), Ok(()));
        let since = [drawn + Duration::microseconds(1)];
        let stale = check_second_draw(Some(a), &with, standing(&with, false), since);
        assert_eq!(stale, Ok(()), "another round was published since");
    }

    #[test]
    fn nobody_takes_themselves_or_their_opponent_out() {
        let [own, opponent, other] = players();
        let check = |named: &[PlayerId]| check_own_game(&[own, opponent], named.iter().copied());
        assert_eq!(check(&[other]), Ok(()));
        for named in [own, opponent] {
            let fault = Err(ConflictOfInterest::OwnGame);
            assert_eq!(check(&[other, named]), fault);
        }
    }

    #[test]
    fn somebody_neutral_publishes_a_repair_where_the_club_has_anybody_neutral() {
        let [actor, second, third] = [1, 2, 3].map(|number| AccountId(Uuid::from_u128(number)));
        let touched = [actor, second].into();
        let needs = |officers: &[AccountId]| {
            needs_other_publisher(actor, &touched, officers.iter().copied())
        };
        assert!(needs(&[actor, third]));
        assert!(!needs(&[actor, second]), "all officers are touched");
        assert!(!needs_other_publisher(third, &touched, [actor, third]));
    }
}
