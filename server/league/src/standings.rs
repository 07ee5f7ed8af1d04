//! Standings: from the facts of a season to rows and a ledger, as of any week.

mod board;
mod credits;
mod facts;
mod ranking;
mod table;
pub mod tiebreaks;

#[cfg(test)]
mod house_rules;
#[cfg(test)]
pub(crate) mod league_of;
#[cfg(test)]
mod published_tables;

pub use facts::{Adjustment, Fixture, GameFact, LateList, PlayerFact, SeasonFacts};
pub use table::{KindSums, Record, Row, Standings, TieBreakValue, WeekTotal, table};
pub use tiebreaks::{
    Basis, Exact, TieBreak, TieBreaks, TieBreaksFault, TieBreaksTerms, UnplayedRounds,
};
