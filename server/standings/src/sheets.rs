//! The sheets on the board: what a resource holds, as JSON and as the rows of a CSV file.

mod badge;
mod embedded;
mod games;
mod ledger;
mod place;
mod public_standings;
mod seasons;
mod standings;
mod statistics;
mod tables;
mod weeks;

use app::Refusal;
use app::standings::Board;
use league::week::WeekNo;
use uuid::Uuid;

pub use badge::badge;
pub use embedded::embedded_table;
pub use games::{Pairings, Results, pairings, results};
pub use ledger::{Ledger, frozen_ledger, ledger};
pub use place::{Place, Record, place};
pub use public_standings::PublicStandings;
pub use seasons::Seasons;
pub use standings::{Standings, frozen_standings, standings};
pub use statistics::{Statistics, statistics};
pub use tables::{Tables, tables};
pub use weeks::{Weeks, weeks};

/// The week asked for, or the last that was paired.
///
/// # Errors
/// [`Refusal::NotFound`] for a week that the season does not have.
fn as_of(board: &Board, week: Option<WeekNo>) -> Result<WeekNo, Refusal> {
    let known = |week| board.weeks.iter().find(|known| known.week == week);
    match week {
        Some(week) => Ok(known(week).ok_or(Refusal::NotFound)?.week),
        None => {
            let paired = board.weeks.iter().filter(|it| it.facts.paired_at.is_some());
            Ok(paired.map(|it| it.week).max().unwrap_or(WeekNo::FIRST))
        }
    }
}

/// The name of a player and the key of the faction.
fn named(board: &Board, player: Uuid) -> (&str, &str) {
    let player = board.players.iter().find(|known| known.id.0 == player);
    player.map_or(("", ""), |player| (&player.handle, &player.faction))
}
