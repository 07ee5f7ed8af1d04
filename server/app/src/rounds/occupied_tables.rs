//! The nights and tables of a week that games of published rounds use.

use league::pairing::round::occupied_tables::OccupiedTables;
use league::pairing::{NightKey, TableNo};
use store::games::{GameRow, MeetingRow};
use store::weeks::Week;

use crate::Refusal;

/// By those of the games that are played in the week.
///
/// # Errors
/// As [`night_of`].
pub(super) fn occupied_tables<'g>(
    week: &Week,
    games: impl IntoIterator<Item = &'g GameRow>,
) -> Result<OccupiedTables, Refusal> {
    let mut occupied = Vec::new();
    for game in games.into_iter().filter(|game| game.week == week.week) {
        if let Some(meeting) = &game.meeting {
            let players = [game.first, meeting.second];
            let night = night_of(week, meeting)?;
            occupied.push((night, TableNo(meeting.table), players));
        }
    }
    Ok(OccupiedTables::new(occupied))
}

/// Which of the week's nights two players meet on.
///
/// # Errors
/// [`Refusal::Internal`] for a night that the week does not have.
pub(super) fn night_of(week: &Week, meeting: &MeetingRow) -> Result<NightKey, Refusal> {
    let mut numbered = (0..).zip(&week.nights);
    let found = numbered.find(|(_, night)| night.key == meeting.night);
    let night = found.and_then(|(number, _)| NightKey::new(number));
    night.ok_or_else(|| {
        let Week { week, .. } = week;
        Refusal::Internal(format!("a game of week {week} on night {}", meeting.night))
    })
}
