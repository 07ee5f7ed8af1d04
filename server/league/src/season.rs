//! A season: its weeks, their caps and instants, and what each moment allows.

mod calendar;
mod caps;
mod deadline;
mod phase;
mod reveal;
mod shift;

pub use calendar::{Calendar, CalendarFault, Moment, Night, NightPlan, WeekPlan, is_night_key};
pub use caps::{CapFault, Caps};
pub use deadline::{Arrival, NotAccepted, accept_list};
pub use phase::{Phase, WeekFacts};
pub use reveal::{Reveal, Revealed, revealed};
pub use shift::Shift;

/// Who may look at a season.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Visibility {
    /// Everybody.
    Public,
    /// The club.
    Club,
}

impl Visibility {
    /// Its stable word.
    pub fn word(self) -> &'static str {
        match self {
            Self::Public => "public",
            Self::Club => "club",
        }
    }
}

/// Where a season stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SeasonState {
    /// Being set up; everything may change.
    Draft,
    /// Running; only what hurts nobody may change.
    Started,
    /// Over; the seed of its draws is revealed.
    Ended,
}
