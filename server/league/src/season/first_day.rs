//! The first day of a season: a season begins about the time at which it is set up, and another year is a
//! typing error.

use chrono::{NaiveDate, TimeDelta};
use messages::{Message, seasons};

/// Days that a season may have begun before it is set up here: one that is played on paper moves in
/// (common practice, no source).
const MAX_PAST: TimeDelta = TimeDelta::days(366);

/// Days ahead, two years (common practice, no source).
const MAX_AHEAD: TimeDelta = TimeDelta::days(731);

/// A first day that is years away.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FirstDayFault {
    /// The first day that is allowed.
    pub first: NaiveDate,
    /// The last day that is allowed.
    pub last: NaiveDate,
    /// The day that was given.
    pub day: NaiveDate,
}

impl FirstDayFault {
    pub fn message(self) -> Message {
        seasons::first_day_far(self.first, self.last, self.day)
    }

    /// The day nearest to the given one that is allowed.
    pub fn nearest(self) -> NaiveDate {
        self.day.clamp(self.first, self.last)
    }
}

/// Whether a season that is set up `today` may begin on `day`.
///
/// # Errors
/// [`FirstDayFault`] for a day years away.
pub fn check_first_day(day: NaiveDate, today: NaiveDate) -> Result<(), FirstDayFault> {
    let (first, last) = (today - MAX_PAST, today + MAX_AHEAD);
    if (first..=last).contains(&day) {
        return Ok(());
    }
    Err(FirstDayFault { first, last, day })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    #[test]
    fn a_season_begins_from_a_year_before_to_two_years_after_it_is_set_up() {
        let today = day("2026-01-05");
        let nearest = |text| {
            let checked = check_first_day(day(text), today);
            checked.map_err(FirstDayFault::nearest)
        };
        for near in ["2025-01-04", "2026-01-05", "2028-01-06"] {
            assert_eq!(nearest(near), Ok(()), "{near}");
        }
        assert_eq!(nearest("1999-01-07"), Err(day("2025-01-04")));
        assert_eq!(nearest("2028-01-07"), Err(day("2028-01-06")));
    }
}
