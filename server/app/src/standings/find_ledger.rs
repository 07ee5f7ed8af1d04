//! A player's ledger: every line behind the total.

use league::ids::PlayerId;
use league::keys::SeasonKey;
use league::ledger::LedgerLine;
use league::points::LeaguePoints;
use league::week::WeekNo;

use super::find_standings;
use crate::{App, Refusal, Viewer};

#[derive(Clone, Debug)]
pub struct PlayerLedger {
    /// The season's version that it belongs to.
    pub version: i64,
    /// The sum of the lines.
    pub total: LeaguePoints,
    /// Week by week.
    pub lines: Vec<LedgerLine>,
}

/// # Errors
/// [`Refusal::NotFound`] also for a player without a row.
pub async fn find_ledger(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
    player: PlayerId,
    week: Option<WeekNo>,
) -> Result<PlayerLedger, Refusal> {
    let found = find_standings(app, viewer, season, week).await?;
    let row = found.standings.rows.iter().find(|row| row.player == player);
    let total = row.ok_or(Refusal::NotFound)?.total;
    let mut lines = found.standings.ledger;
    lines.retain(|line| line.player == player);
    Ok(PlayerLedger {
        version: found.season.version,
        total,
        lines,
    })
}
