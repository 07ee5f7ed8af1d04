//! Nights and tables that other rounds of a week use already: nobody plays twice on one night, and no
//! table holds two games.

use crate::ids::PlayerId;

use super::hall::{Night, NightKey, NightSet, TableNo};

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct OccupiedTables(Vec<(NightKey, TableNo, [PlayerId; 2])>);

impl OccupiedTables {
    /// By games at these tables.
    pub fn new(games: impl IntoIterator<Item = (NightKey, TableNo, [PlayerId; 2])>) -> Self {
        Self(games.into_iter().collect())
    }

    /// Nights on which the player has a game already.
    pub fn nights_of(&self, player: PlayerId) -> NightSet {
        let games = self
            .0
            .iter()
            .filter(|(.., players)| players.contains(&player));
        games.map(|&(night, ..)| night).collect()
    }

    /// What is left of the nights that players were drawn with, of those who have a game on some night already.
    pub fn nights_left(
        &self,
        drawn: impl IntoIterator<Item = (PlayerId, NightSet)>,
    ) -> Vec<(PlayerId, NightSet)> {
        let left = |(player, nights): (PlayerId, NightSet)| {
            let taken = self.nights_of(player);
            (!taken.is_empty()).then_some((player, nights.difference(taken)))
        };
        drawn.into_iter().filter_map(left).collect()
    }

    /// What is free of these nights and tables.
    pub fn free_tables(&self, mut nights: Vec<Night>) -> Vec<Night> {
        for night in &mut nights {
            let key = night.key;
            let is_occupied = |table: &TableNo| {
                let mut games = self.0.iter();
                games.any(|&(night, at, _)| (night, at) == (key, *table))
            };
            night.tables.retain(|table| !is_occupied(table));
        }
        nights
    }
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;

    #[test]
    fn whoever_has_a_game_on_a_night_has_no_second_and_its_table_is_taken() {
        let [a, b, c] = [1, 2, 3].map(|number| PlayerId(Uuid::from_u128(number)));
        let [tuesday, thursday] = [0, 1].map(|number| NightKey::new(number).unwrap());
        let occupied = OccupiedTables::new([(tuesday, TableNo(2), [a, b])]);
        assert_eq!(occupied.nights_of(a), [tuesday].into_iter().collect());
        assert_eq!(occupied.nights_of(c), NightSet::NONE);
        let night = |key, tables: &[u16]| Night {
            key,
            tables: tables.iter().copied().map(TableNo).collect(),
        };
        let both: NightSet = [tuesday, thursday].into_iter().collect();
        let left = occupied.nights_left([(a, both), (c, both)]);
        assert_eq!(left, [(a, [thursday].into_iter().collect())]);
        let free = occupied.free_tables(vec![night(tuesday, &[1, 2]), night(thursday, &[1, 2])]);
        assert_eq!(free, [night(tuesday, &[1]), night(thursday, &[1, 2])]);
    }
}
