//! Plausibility check of the first day: a season begins about the time at which it is set up, and another
//! year is a typing error.

use chrono::{NaiveDate, TimeDelta};
use chrono_tz::Tz;

use crate::{App, Fault, Reason, Refusal};
use messages::seasons;

/// Days that a season may have begun before it is set up here: one that is played on paper moves in
/// (common practice, no source).
const MAX_PAST: TimeDelta = TimeDelta::days(366);

/// Days ahead, two years (common practice, no source).
const MAX_AHEAD: TimeDelta = TimeDelta::days(731);

/// What is wrong with a season that begins on `day`, if anything. `pointer` is where the request has it.
pub fn first_day_fault(day: NaiveDate, today: NaiveDate, pointer: &str) -> Option<Fault> {
    let (first, last) = (today - MAX_PAST, today + MAX_AHEAD);
    if (first..=last).contains(&day) {
        return None;
    }
    let message = seasons::first_day_far(first, last, day);
    let nearest = day.clamp(first, last);
    let fault = Fault::new("season.first-day", pointer, message);
    Some(fault.with(nearest.to_string(), day.to_string()))
}

/// The day on the wall of a club in `zone`.
///
/// # Errors
/// [`Refusal::Unavailable`] when the database cannot be reached.
pub(super) async fn find_today(app: &App, zone: Tz) -> Result<NaiveDate, Refusal> {
    app.store
        .read(async |conn| {
            let now = store::clock::now(conn).await?;
            Ok(now.with_timezone(&zone).date_naive())
        })
        .await
}

/// # Errors
/// [`Reason::Validation`] for a day years away.
pub(super) fn must_be_near(day: NaiveDate, today: NaiveDate, pointer: &str) -> Result<(), Refusal> {
    first_day_fault(day, today, pointer).map_or(Ok(()), |fault| {
        Err(Refusal::of_fault(Reason::Validation, fault))
    })
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
        let limit = |text: &str| {
            let fault = first_day_fault(day(text), today, "/first_day")?;
            Some(fault.limit.unwrap().as_str().unwrap().to_owned())
        };
        for near in ["2025-01-04", "2026-01-05", "2028-01-06"] {
            assert_eq!(limit(near), None, "{near}");
        }
        assert_eq!(limit("1999-01-07").as_deref(), Some("2025-01-04"));
        assert_eq!(limit("2028-01-07").as_deref(), Some("2028-01-06"));
    }
}
