//! Nights and tables that other rounds of a week use already: nobody plays twice on one night, and no
//! table holds two games.

use league::ids::PlayerId;
use league::pairing::{Night, NightKey, Nights, TableNo};
use store::games::Game;
use store::weeks::Week;

pub(super) struct Taken(Vec<(NightKey, TableNo, [PlayerId; 2])>);

impl Taken {
    /// By those of the games that are played in the week.
    pub fn new<'g>(week: &Week, games: impl IntoIterator<Item = &'g Game>) -> Self {
        let games = games.into_iter().filter(|game| game.week == week.week);
        let taken = games.filter_map(|game| {
            let meeting = game.meeting.as_ref()?;
            let at = week.nights.iter().position(|it| it.key == meeting.night)?;
            let night = NightKey::new(u8::try_from(at).ok()?)?;
            let players = [game.first, meeting.second];
            Some((night, TableNo(meeting.table), players))
        });
        Self(taken.collect())
    }

    /// Nights on which the player has a game already.
    pub fn nights_of(&self, player: PlayerId) -> Nights {
        let games = self
            .0
            .iter()
            .filter(|(.., players)| players.contains(&player));
        games.map(|&(night, ..)| night).collect()
    }

    /// What is free of these nights and tables.
    pub fn hall_left(&self, mut hall: Vec<Night>) -> Vec<Night> {
        for night in &mut hall {
            let key = night.key;
            let taken = |table: &TableNo| {
                let mut games = self.0.iter();
                games.any(|&(night, at, _)| (night, at) == (key, *table))
            };
            night.tables.retain(|table| !taken(table));
        }
        hall
    }
}
