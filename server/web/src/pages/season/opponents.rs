//! What a player's tie-breaks are made of: opponents met, results, and the opponents' totals.

use league::ids::PlayerId;
use league::standings::Standings;

use super::season_page::SeasonPage;
use crate::pages::rounds::pairings::{PairingRow, pairings};
use crate::problem::Problem;

/// A game of a player.
pub struct OpponentRow {
    pub week: u8,
    pub game: PairingRow,
    pub opponent: String,
    /// The opponent's total; nobody who left before the first week has one.
    pub total: Option<i32>,
}

/// Every game of a player, in the order of the weeks.
///
/// # Errors
/// When the server cannot tell.
pub async fn opponents_met(
    page: &SeasonPage,
    standings: &Standings,
    player: PlayerId,
) -> Result<Vec<OpponentRow>, Problem> {
    let context = &page.context;
    let games = app::results::list_games(&page.app, page.viewer(), page.key(), None).await?;
    let mut rows: Vec<OpponentRow> = games
        .iter()
        .filter(|game| game.involves(player))
        .filter_map(|game| {
            let second = game.meeting.as_ref()?.second;
            let opponent = if second == player { game.first } else { second };
            Some(OpponentRow {
                week: game.week.number(),
                game: pairings(context, page.t(), std::slice::from_ref(game)).pop()?,
                opponent: format!("{}/players/{opponent}", context.link()),
                total: standings.row_of(opponent).map(|row| row.total.get()),
            })
        })
        .collect();
    rows.sort_by_key(|row| row.week);
    Ok(rows)
}
