//! Households: players who live together and are kept apart. The pairing gets forbidden pairs instead of
//! households, so that the public inputs number nobody's household.

use crate::ids::PlayerId;

use super::game::Pair;

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

/// Whether it would change somebody's own household that `player` has the household of `after` from now
/// on: nobody decides whom they do not meet.
pub fn is_own_household(own: Resident<'_>, player: Resident<'_>, after: Resident<'_>) -> bool {
    own.player == player.player || own.lives_with(&player) || own.lives_with(&after)
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

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
