//! Resource: games counted by faction, role and scenario, and ranks over the weeks.

use app::Refusal;
use app::standings::{Board, MIN_GAMES, SeasonStatistics};
use document::table::statistics::TallyDocument;
use league::standings::{RankHistory, Tally};
use league::week::WeekNo;
use serde::Serialize;
use utoipa::ToSchema;
use uuid::Uuid;

use super::lookup::{player_name, resolve_week};
use document::csv::table::{CsvTable, columns, escape_formula, optional_cell};

/// Games counted by what they have in common, and everybody's rank over the weeks.
#[derive(Serialize, ToSchema)]
pub struct PublicStatistics {
    /// The season's version that they belong to.
    version: i64,
    /// Last week that counts.
    as_of: u8,
    /// Fewest games of which a share is said.
    fewest_games: u32,
    /// By faction; games between two armies of one faction are left out.
    factions: Vec<TallyDocument>,
    /// By the role of the first leg, where the scenario has roles and all of it is known.
    roles: Vec<TallyDocument>,
    /// By scenario, as the side named first saw it: the attacker where there are roles.
    scenarios: Vec<TallyDocument>,
    /// Rank after every week.
    ranks: Vec<PublicRankHistory>,
}

/// A player's rank after every week.
#[derive(Serialize, ToSchema)]
struct PublicRankHistory {
    player: Uuid,
    handle: String,
    /// From the first week; null before the player joined.
    ranks: Vec<Option<u32>>,
}

/// # Errors
/// [`Refusal::NotFound`] for a week that the season does not have.
pub fn statistics(board: &Board, week: Option<WeekNo>) -> Result<PublicStatistics, Refusal> {
    let week = resolve_week(board, week)?;
    let found = app::standings::board_statistics(board, week)?;
    let SeasonStatistics {
        factions,
        roles,
        scenarios,
        ranks,
        ..
    } = &found;
    let tallies = |tallies: &[Tally<String>]| tallies.iter().map(Into::into).collect();
    let ranks = ranks.iter().map(|history: &RankHistory| PublicRankHistory {
        player: history.player.0,
        handle: player_name(board, history.player.0).0.to_owned(),
        ranks: history.ranks.clone(),
    });
    Ok(PublicStatistics {
        version: found.version,
        as_of: week.number(),
        fewest_games: MIN_GAMES,
        factions: tallies(factions),
        roles: tallies(roles),
        scenarios: tallies(scenarios),
        ranks: ranks.collect(),
    })
}

/// The tallies, a row each; the ranks over the weeks are in the table of each week.
impl CsvTable for PublicStatistics {
    fn header(&self) -> Vec<String> {
        columns(&[
            "by",
            "key",
            "won",
            "drawn",
            "lost",
            "share_low",
            "share_high",
            "mean_margin",
        ])
    }

    fn rows(&self) -> Vec<Vec<String>> {
        let kinds = [
            ("faction", &self.factions),
            ("role", &self.roles),
            ("scenario", &self.scenarios),
        ];
        let rows = kinds
            .into_iter()
            .flat_map(|(by, tallies)| tallies.iter().map(move |tally| cells(by, tally)));
        rows.collect()
    }
}

fn cells(by: &str, tally: &TallyDocument) -> Vec<String> {
    let share = tally.win_share.as_ref();
    let margin = tally.mean_margin.as_ref();
    vec![
        by.to_owned(),
        escape_formula(&tally.key),
        tally.won.to_string(),
        tally.drawn.to_string(),
        tally.lost.to_string(),
        optional_cell(share.map(|share| format!("{:.4}", share.low))),
        optional_cell(share.map(|share| format!("{:.4}", share.high))),
        optional_cell(margin.map(|mean| format!("{}/{}", mean.numerator, mean.denominator))),
    ]
}
