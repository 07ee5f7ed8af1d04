//! Rank history over the weeks, and the rank correlation of two tables.

use crate::ids::PlayerId;
use crate::standings::facts::SeasonFacts;
use crate::standings::table::ranks_as_of;
use crate::standings::table::season::IndexedSeason;
use crate::week::WeekNo;

/// A player's rank after every week.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RankHistory {
    pub player: PlayerId,
    /// From the first week; `None` before the player joined.
    pub ranks: Vec<Option<u32>>,
}

/// The ranks of all players after every week up to `as_of`.
pub fn rank_history(facts: &SeasonFacts, as_of: WeekNo) -> Vec<RankHistory> {
    let season = IndexedSeason::new(facts, as_of);
    let weeks = (1..=as_of.number()).filter_map(WeekNo::new);
    let by_week: Vec<_> = weeks.map(|week| ranks_as_of(&season, week)).collect();
    let joined = (0..season.players.len()).filter(|&player| season.has_row(player, as_of));
    let histories = joined.filter_map(|number| {
        let player = season.players.get(number)?.player;
        let ranks = by_week
            .iter()
            .map(|ranks| ranks.get(number).copied().flatten());
        let ranks = ranks.collect();
        Some(RankHistory { player, ranks })
    });
    histories.collect()
}

/// Kendall's tau-b of two rankings of the same things: 1 for the same order, -1 for the reverse;
/// shared ranks are ties. `None` when one of them ranks everything the same.
///
/// M. G. Kendall, "The treatment of ties in ranking problems", Biometrika 33 (1945), 239-251.
pub fn kendall_tau_b(ranks: &[(u32, u32)]) -> Option<f64> {
    let (mut concordant, mut discordant, mut untied) = (0_i64, 0_i64, (0_i64, 0_i64));
    for (at, one) in ranks.iter().enumerate() {
        for other in ranks.iter().skip(at + 1) {
            let (first, second) = (one.0.cmp(&other.0), one.1.cmp(&other.1));
            untied.0 += i64::from(first.is_ne());
            untied.1 += i64::from(second.is_ne());
            if first.is_ne() && second.is_ne() {
                concordant += i64::from(first == second);
                discordant += i64::from(first != second);
            }
        }
    }
    let scale = (untied.0 as f64 * untied.1 as f64).sqrt();
    (scale > 0.0).then(|| (concordant - discordant) as f64 / scale)
}
