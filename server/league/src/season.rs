//! A season: its weeks with their caps and instants, and what is allowed at which time.

mod calendar;
mod caps;
mod deadline;
mod phase;
mod reveal;
mod shift;
mod week_change;
mod week_plan;

pub use calendar::{Calendar, CalendarFault, ClubNight, WeekTime};
pub use caps::{CapFault, Caps};
pub use deadline::{ListArrival, ListNotAccepted, accept_list};
pub use phase::{WeekFacts, WeekPhase};
pub use reveal::{RevealTime, Revealed, revealed_at};
pub use shift::SeasonShift;
pub use week_change::{WeekChange, WeekChangeFault, check_week_change};
pub use week_plan::{MAX_TABLES_PER_NIGHT, NightPlan, WeekFault, WeekPart, WeekPlan};

/// Who may look at a season.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Visibility {
    Public,
    Club,
}

impl Visibility {
    pub fn as_str(self) -> &'static str {
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
