//! A season: its weeks with their caps and instants, and what is allowed at which time.

mod availability;
mod calendar;
mod caps;
mod carry;
mod deadline;
mod first_day;
mod joining;
mod next_round;
mod phase;
mod progress;
mod reminder;
mod reveal;
#[cfg(test)]
pub(crate) mod samples;
mod scenario_change;
mod shift;
mod visibility;
mod week_change;
mod week_plan;

pub use availability::{AvailabilityFault, check_availability_time, check_nights};
pub use calendar::{Calendar, CalendarFault, ClubNight, MAX_DAYS_PER_WEEK, WeekTime};
pub use caps::{CapFault, Caps, find_conflicting_cap};
pub use carry::{Carry, CollectionsTooEarly, LeftOut};
pub use deadline::{ListArrival, ListNotAccepted, accept_list, is_list_opened};
pub use first_day::{FirstDayFault, check_first_day};
pub use joining::{JoinFault, check_handle, check_place, first_week_to_play};
pub use next_round::{NoNextRound, next_round};
pub use phase::{WeekFacts, WeekPhase};
pub use progress::{
    CloseFault, MIN_PLAYERS, check_close, check_start, first_open_week, last_paired_week,
    rounds_after, rounds_to_come,
};
pub use reminder::{MIN_REMINDER_INTERVAL, check_reminder, owes_list};
pub use reveal::{RevealTime, Revealed, has_come_since, next_to_come, revealed_at};
pub use scenario_change::{PlannedScenario, ScenarioChangeFault, check_scenario_change};
pub use shift::{OtherWeekday, SeasonShift};
pub use visibility::{Visibility, VisibilityFixed, check_visibility_change, is_listed, is_visible};
pub use week_change::{WeekChange, WeekChangeFault, check_week_change};
pub use week_plan::{MAX_TABLES_PER_NIGHT, NightPlan, WeekFault, WeekPart, WeekPlan};

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
