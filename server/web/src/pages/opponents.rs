//! What stands behind a player's tie-breaks: whom they met, how it went, and what those have.

use app::Desk;
use league::ids::PlayerId;
use league::standings::{Standings, TieBreak};

use super::pairings::{PairingRow, pairings};
use super::season_scene::SeasonScene;
use super::texts::{Phrase, Texts};
use super::visit::Visit;
use crate::problem::Problem;

/// A game of a player.
pub struct MetRow {
    /// In which week.
    pub week: u8,
    /// The game.
    pub game: PairingRow,
    /// The opponent's page.
    pub opponent: String,
    /// The opponent's total; nobody who left before the first week has one.
    pub total: Option<i32>,
}

/// Every game of a player, in the order of the weeks.
///
/// # Errors
/// When the server cannot tell.
pub async fn met(
    desk: &Desk,
    visit: &Visit,
    scene: &SeasonScene,
    standings: &Standings,
    player: PlayerId,
) -> Result<Vec<MetRow>, Problem> {
    let (club, season) = (scene.season.club, scene.season.id);
    let games = app::results::list_games(desk, visit.viewer, club, season, None).await?;
    let mut rows: Vec<MetRow> = games
        .iter()
        .filter(|game| game.has(player))
        .filter_map(|game| {
            let second = game.meeting.as_ref()?.second;
            let opponent = if second == player { game.first } else { second };
            Some(MetRow {
                week: game.week.number(),
                game: pairings(scene, visit.t, std::slice::from_ref(game)).pop()?,
                opponent: format!("{}/players/{opponent}", scene.link()),
                total: standings.row_of(opponent).map(|row| row.total.get()),
            })
        })
        .collect();
    rows.sort_by_key(|row| row.week);
    Ok(rows)
}

/// How a tie-break is counted.
pub fn meaning(t: &Texts, tie_break: TieBreak) -> Phrase {
    let d = &t.desk;
    match tie_break {
        TieBreak::OpponentsScore => d.means_opponents,
        TieBreak::OpponentsScoreCut => d.means_opponents_cut,
        TieBreak::OpponentsScoreMedian => d.means_opponents_median,
        TieBreak::SonnebornBerger => d.means_sonneborn,
        TieBreak::DirectEncounter => d.means_direct,
        TieBreak::Wins => d.means_wins,
        TieBreak::WinsInHarderRole => d.means_harder_wins,
        TieBreak::ScoreMargin => d.means_margin,
        TieBreak::AdjustedMargin => d.means_adjusted_margin,
        TieBreak::PaintingPoints => d.means_painting,
        TieBreak::PaintedShare => d.means_share,
        TieBreak::FewestByes => d.means_byes,
    }
}
