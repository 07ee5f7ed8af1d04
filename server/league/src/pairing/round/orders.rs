//! The organiser's orders for a round: games that must be, and games that must not.

use std::collections::BTreeSet;

use crate::ids::PlayerId;

use super::game::Pair;

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Orders {
    /// Games that must be.
    pub pins: Vec<Pair>,
    /// Games that must not be.
    pub forbidden: Vec<Pair>,
}

impl Orders {
    pub fn is_empty(&self) -> bool {
        self.pins.is_empty() && self.forbidden.is_empty()
    }
}

/// The pairs of an order: each of two different players of the season.
///
/// # Errors
/// The index of the first pair that is none.
pub fn read_pairs(
    pairs: &[[PlayerId; 2]],
    players: &BTreeSet<PlayerId>,
) -> Result<Vec<Pair>, usize> {
    let read = |(index, &[a, b]): (usize, &[PlayerId; 2])| {
        let known = players.contains(&a) && players.contains(&b);
        Pair::new(a, b).filter(|_| known).ok_or(index)
    };
    pairs.iter().enumerate().map(read).collect()
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;

    #[test]
    fn an_order_names_two_different_players_of_the_season() {
        let [a, b, stranger] = [1, 2, 3].map(|number| PlayerId(Uuid::from_u128(number)));
        let players = [a, b].into();
        let read = |pairs: &[[PlayerId; 2]]| read_pairs(pairs, &players);
        assert_eq!(read(&[[b, a]]), Ok(vec![Pair::new(a, b).unwrap()]));
        assert_eq!(read(&[[a, b], [a, a]]), Err(1));
        assert_eq!(read(&[[a, stranger]]), Err(0));
    }
}
