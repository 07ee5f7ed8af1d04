//! The nights and tables of a week that games of published rounds use.

use league::pairing::round::occupied_tables::OccupiedTables;
use league::pairing::{NightKey, TableNo};
use store::games::GameRow;
use store::weeks::Week;

/// By those of the games that are played in the week.
pub(super) fn occupied_tables<'g>(
    week: &Week,
    games: impl IntoIterator<Item = &'g GameRow>,
) -> OccupiedTables {
    let games = games.into_iter().filter(|game| game.week == week.week);
    OccupiedTables::new(games.filter_map(|game| {
        let meeting = game.meeting.as_ref()?;
        let at = week.nights.iter().position(|it| it.key == meeting.night)?;
        let night = NightKey::new(u8::try_from(at).ok()?)?;
        let players = [game.first, meeting.second];
        Some((night, TableNo(meeting.table), players))
    }))
}
