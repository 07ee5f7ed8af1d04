//! Lookups in the board that several resources share.

use app::Refusal;
use app::standings::Board;
use league::season::last_paired_week;
use league::week::WeekNo;
use uuid::Uuid;

/// The week that was asked for, else the last that was paired.
///
/// # Errors
/// [`Refusal::NotFound`] for a week that the season does not have.
pub fn resolve_week(board: &Board, week: Option<WeekNo>) -> Result<WeekNo, Refusal> {
    let find = |week| board.weeks.iter().find(|it| it.week == week);
    match week {
        Some(week) => Ok(find(week).ok_or(Refusal::NotFound)?.week),
        None => {
            let facts = board.weeks.iter().map(|it| (it.week, &it.facts));
            // Before any week is paired the table is that of the first.
            Ok(last_paired_week(facts).unwrap_or(WeekNo::FIRST))
        }
    }
}

/// The name of a player and the key of the faction.
pub fn player_name(board: &Board, player: Uuid) -> (&str, &str) {
    // What a board tells is of its own players.
    let player = board.players.iter().find(|it| it.id.0 == player);
    player.map_or(("", ""), |player| (&player.handle, &player.faction))
}
