//! Every line behind one player's total.

use league::ids::{ClubId, PlayerId, SeasonId};
use league::ledger::Line;
use league::points::LeaguePoints;
use league::week::WeekNo;

use super::find_standings;
use crate::{Desk, Refusal, Viewer};

/// A player's ledger.
#[derive(Clone, Debug)]
pub struct Ledger {
    /// The season's version that it belongs to.
    pub version: i64,
    /// The sum of the lines.
    pub total: LeaguePoints,
    /// Week by week.
    pub lines: Vec<Line>,
}

/// # Errors
/// [`Refusal::NotFound`] also for a player without a row.
pub async fn find_ledger(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
    player: PlayerId,
    week: Option<WeekNo>,
) -> Result<Ledger, Refusal> {
    let found = find_standings(desk, viewer, club, season, week).await?;
    let row = found.standings.rows.iter().find(|row| row.player == player);
    let total = row.ok_or(Refusal::NotFound)?.total;
    let mut lines = found.standings.ledger;
    lines.retain(|line| line.player == player);
    Ok(Ledger {
        version: found.season.version,
        total,
        lines,
    })
}
