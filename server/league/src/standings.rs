//! Standings: from the facts of a season to rows and a ledger, as of any week.

mod by_player;
mod facts;
mod frozen;
mod outlook;
mod rounds;
mod statistics;
mod table;
mod tiebreaks;

pub use facts::{
    Absence, Adjustment, Fixture, GameFact, LateList, PlayerFact, SeasonFacts, find_absences,
};
pub use frozen::may_table_differ;
pub use outlook::forecast::{Forecast, Simulation, forecast};
pub use outlook::reach::{Reach, ReachRefusal, reach};
pub use outlook::what_if::{Supposition, SuppositionRefusal, what_if};
pub use statistics::attendance::{WeekAttendance, attendance};
pub use statistics::awards::{Prize, PrizeAward, awards};
pub use statistics::rank_history::{RankHistory, kendall_tau_b, rank_history};
pub use statistics::wilson::WilsonInterval;
pub use statistics::{SideGame, SideResult, Tally, list_side_games, tally};
pub use table::row::{KindSums, Record, Row, Standings, TieBreakValue, WeekTotal};
pub use table::scores_before::scores_before_round;
pub use table::table;
pub use tiebreaks::inputs::Exact;
pub use tiebreaks::{Basis, TieBreak, TieBreaks, TieBreaksFault, TieBreaksTerms, UnplayedRounds};

#[cfg(test)]
pub(crate) mod tests {
    mod attendance;
    mod house_rules;
    mod house_tie_breaks;
    mod open_games;
    mod properties;
    mod published_tables;
    mod season_end;
    pub(crate) mod seasons;
}
