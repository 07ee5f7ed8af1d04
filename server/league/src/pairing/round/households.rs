//! Households: players who live together and are kept apart. The pairing gets forbidden pairs instead of
//! households, so that the public inputs number nobody's household.

use messages::{Message, seasons};

use crate::ids::PlayerId;

use super::game::Pair;
use super::method::PairingMethod;

/// A player with the name of their household.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Resident<'a> {
    pub player: PlayerId,
    pub household: Option<&'a str>,
}

impl Resident<'_> {
    fn lives_with(&self, other: &Resident<'_>) -> bool {
        self.household.is_some() && self.household == other.household
    }
}

/// The pairs of these players who live together.
pub fn pairs_at_home(residents: &[Resident<'_>]) -> Vec<Pair> {
    let ahead = residents.iter().enumerate();
    ahead
        .flat_map(|(at, one)| {
            let others = residents.iter().skip(at + 1);
            let together = others.filter(|other| one.lives_with(other));
            together.filter_map(|other| Pair::new(one.player, other.player))
        })
        .collect()
}

/// The pairs of these players that a round keeps apart: who lives together, but in a round robin, where
/// everybody meets.
pub fn pairs_kept_apart(method: PairingMethod, residents: &[Resident<'_>]) -> Vec<Pair> {
    match method {
        PairingMethod::ByScore => pairs_at_home(residents),
        PairingMethod::RoundRobin(_) => Vec::new(),
    }
}

/// Of pairs that are kept apart, those that a repair adds to its round: with a newcomer. Those who were
/// there stay as they were drawn.
pub fn pairs_of_newcomers(pairs: Vec<Pair>, newcomers: &[PlayerId]) -> Vec<Pair> {
    let has_newcomer = |pair: &Pair| newcomers.iter().any(|&it| pair.contains(it));
    pairs.into_iter().filter(has_newcomer).collect()
}

/// A round that was drawn, as a change of a household asks for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DrawnRound {
    pub is_published: bool,
    /// Whether it repairs a round that is published.
    pub is_repair: bool,
    pub is_week_closed: bool,
}

/// A round is proposed: who lives with whom stays until it is published.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RoundProposed;

impl RoundProposed {
    pub fn message(self) -> Message {
        seasons::round_proposed()
    }
}

/// Whether households may change: a round that is drawn is not drawn anew for their sake.
///
/// # Errors
/// [`RoundProposed`].
pub fn check_none_proposed(
    drawn: impl IntoIterator<Item = DrawnRound>,
) -> Result<(), RoundProposed> {
    let is_proposed =
        |round: DrawnRound| !round.is_published && !round.is_repair && !round.is_week_closed;
    if drawn.into_iter().any(is_proposed) {
        return Err(RoundProposed);
    }
    Ok(())
}

/// Whether it would change somebody's own household that `player` has the household of `after` from now
/// on: nobody decides whom they do not meet.
pub fn is_own_household(own: Resident<'_>, player: Resident<'_>, after: Resident<'_>) -> bool {
    own.player == player.player || own.lives_with(&player) || own.lives_with(&after)
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::super::method::Cycles;
    use super::*;

    fn resident(number: u128, household: Option<&str>) -> Resident<'_> {
        Resident {
            player: PlayerId(Uuid::from_u128(number)),
            household,
        }
    }

    #[test]
    fn whoever_lives_together_makes_pairs() {
        let [a, b, c] = [1, 2, 3].map(|number| resident(number, Some("mill")));
        let others = [
            resident(4, Some("forge")),
            resident(5, None),
            resident(6, None),
        ];
        let all = [&[a, b, c][..], &others].concat();
        let pair =
            |one: Resident<'_>, other: Resident<'_>| Pair::new(one.player, other.player).unwrap();
        assert_eq!(pairs_at_home(&all), [pair(a, b), pair(a, c), pair(b, c)]);
        assert_eq!(pairs_at_home(&others), []);
    }

    #[test]
    fn a_round_robin_keeps_nobody_apart() {
        let [a, b] = [1, 2].map(|number| resident(number, Some("mill")));
        let together = pairs_at_home(&[a, b]);
        let apart = |method| pairs_kept_apart(method, &[a, b]);
        assert_eq!(apart(PairingMethod::ByScore), together);
        assert_eq!(apart(PairingMethod::RoundRobin(Cycles::Single)), []);
    }

    #[test]
    fn a_repair_keeps_only_its_newcomers_apart() {
        let [a, b, c] = [1, 2, 3].map(|number| resident(number, Some("mill")));
        let pairs = pairs_at_home(&[a, b, c]);
        let added = pairs_of_newcomers(pairs.clone(), &[c.player]);
        assert_eq!(added, pairs[1..]);
        assert_eq!(pairs_of_newcomers(pairs, &[]), []);
    }

    #[test]
    fn households_stay_while_a_round_of_an_open_week_is_proposed() {
        let proposed = DrawnRound {
            is_published: false,
            is_repair: false,
            is_week_closed: false,
        };
        let published = DrawnRound {
            is_published: true,
            ..proposed
        };
        let repair = DrawnRound {
            is_repair: true,
            ..proposed
        };
        let of_closed_week = DrawnRound {
            is_week_closed: true,
            ..proposed
        };
        let harmless = [published, repair, of_closed_week];
        assert_eq!(check_none_proposed(harmless), Ok(()));
        let with_proposal = [published, proposed];
        assert_eq!(check_none_proposed(with_proposal), Err(RoundProposed));
    }

    #[test]
    fn nobody_changes_their_own_household() {
        let [own, alone] = [resident(1, Some("mill")), resident(1, None)];
        let moves = |own, from, to| is_own_household(own, resident(2, from), resident(2, to));
        assert!(moves(own, None, Some("mill")), "comes to live with them");
        assert!(moves(own, Some("mill"), None), "moves out");
        assert!(!moves(own, Some("forge"), None));
        assert!(!moves(alone, None, Some("mill")));
        assert!(is_own_household(alone, alone, own), "it is their own place");
    }
}
