//! Standings: from the facts of a season to rows and a ledger, as of any week.

mod awards;
mod board;
mod by_player;
mod chain;
mod credits;
mod facts;
mod forecast;
mod history;
mod outlook;
mod ranking;
mod reach;
mod rounds;
mod scores_before;
mod season;
mod statistics;
mod table;
pub mod tiebreaks;
mod what_if;
mod wilson;

#[cfg(test)]
mod house_rules;
#[cfg(test)]
mod house_tie_breaks;
#[cfg(test)]
pub(crate) mod league_of;
#[cfg(test)]
mod open_games;
#[cfg(test)]
mod properties;
#[cfg(test)]
mod published_tables;
#[cfg(test)]
mod season_end;

pub use awards::{Awarded, Prize, awards};
pub use facts::{Absence, Adjustment, Fixture, GameFact, LateList, PlayerFact, SeasonFacts};
pub use forecast::{Forecast, Simulation, forecast};
pub use history::{RankHistory, rank_agreement, rank_history};
pub use reach::{Reach, ReachRefusal, reach};
pub use scores_before::scores_before;
pub use statistics::{Ending, GameSeen, Tally, games_seen, tally};
pub use table::{KindSums, Record, Row, Standings, TieBreakValue, WeekTotal, table};
pub use tiebreaks::{
    Basis, Exact, TieBreak, TieBreaks, TieBreaksFault, TieBreaksTerms, UnplayedRounds,
};
pub use what_if::{Supposition, SuppositionRefusal, what_if};
pub use wilson::Interval;
