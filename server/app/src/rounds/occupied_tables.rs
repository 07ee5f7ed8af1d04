//! Nights and tables that other rounds of a week use already: nobody plays twice on one night, and no
//! table holds two games.

use league::ids::PlayerId;
use league::pairing::{Night, NightKey, NightSet, TableNo};
use store::games::GameRow;
use store::weeks::Week;

pub(super) struct OccupiedTables(Vec<(NightKey, TableNo, [PlayerId; 2])>);

impl OccupiedTables {
    /// By those of the games that are played in the week.
    pub fn new<'g>(week: &Week, games: impl IntoIterator<Item = &'g GameRow>) -> Self {
        let games = games.into_iter().filter(|game| game.week == week.week);
        let occupied = games.filter_map(|game| {
            let meeting = game.meeting.as_ref()?;
            let at = week.nights.iter().position(|it| it.key == meeting.night)?;
            let night = NightKey::new(u8::try_from(at).ok()?)?;
            let players = [game.first, meeting.second];
            Some((night, TableNo(meeting.table), players))
        });
        Self(occupied.collect())
    }

    /// Nights on which the player has a game already.
    pub fn nights_of(&self, player: PlayerId) -> NightSet {
        let games = self
            .0
            .iter()
            .filter(|(.., players)| players.contains(&player));
        games.map(|&(night, ..)| night).collect()
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
