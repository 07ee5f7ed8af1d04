//! Time: an instant is what happened, a deadline is civil time in a zone. Each has its type.

use chrono::{DateTime, Datelike, LocalResult, NaiveDateTime, TimeZone, Timelike, Utc};
use chrono_tz::Tz;
use messages::{Message, text_faults};

/// An instant in UTC, read from the database's clock.
pub type Instant = DateTime<Utc>;

/// A date and time on the wall of the club, not yet tied to an instant.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct CivilTime(pub NaiveDateTime);

/// Why a civil time names no single instant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CivilFault {
    /// The clocks jump over it.
    Gap(Tz),
    /// The clocks pass it twice.
    Fold(Tz),
    /// Outside the years that are allowed: date arithmetic overflows at the ends of the calendar.
    Year,
    /// A leap second, which no clock on a wall shows.
    LeapSecond,
}

impl CivilFault {
    pub fn message(&self) -> Message {
        match self {
            Self::Gap(zone) => text_faults::civil_gap(zone.name()),
            Self::Fold(zone) => text_faults::civil_fold(zone.name()),
            Self::Year => text_faults::civil_year(MIN_YEAR, MAX_YEAR),
            Self::LeapSecond => text_faults::civil_leap_second(),
        }
    }
}

/// First year in which anything may happen.
const MIN_YEAR: i32 = 2000;
/// Last year in which anything may happen.
const MAX_YEAR: i32 = 2199;

impl CivilTime {
    /// The instant this civil time means in `zone`.
    ///
    /// # Errors
    /// [`CivilFault`] in the hour that a clock change skips or repeats: a deadline there is
    /// refused rather than guessed; and for years and seconds that no club meets in.
    pub fn to_instant(self, zone: Tz) -> Result<Instant, CivilFault> {
        if !(MIN_YEAR..=MAX_YEAR).contains(&self.0.year()) {
            return Err(CivilFault::Year);
        }
        if self.0.nanosecond() >= 1_000_000_000 {
            return Err(CivilFault::LeapSecond);
        }
        match zone.from_local_datetime(&self.0) {
            LocalResult::Single(instant) => Ok(instant.with_timezone(&Utc)),
            LocalResult::None => Err(CivilFault::Gap(zone)),
            LocalResult::Ambiguous(..) => Err(CivilFault::Fold(zone)),
        }
    }

    /// The civil time of `instant` in `zone`.
    pub fn from_instant(instant: Instant, zone: Tz) -> Self {
        Self(instant.with_timezone(&zone).naive_local())
    }
}

#[cfg(test)]
mod tests {
    use chrono_tz::{America, Australia, Europe};

    use super::*;

    fn civil(text: &str) -> CivilTime {
        CivilTime(text.parse().unwrap())
    }

    #[test]
    fn a_time_lies_in_a_year_and_a_second_in_which_people_meet() {
        for (text, fault) in [
            ("0000-01-01T00:00:00", CivilFault::Year),
            ("-9999-01-01T00:00:00", CivilFault::Year),
            ("+262000-01-01T00:00:00", CivilFault::Year),
            ("2026-12-31T23:59:60", CivilFault::LeapSecond),
        ] {
            assert_eq!(civil(text).to_instant(Europe::Berlin), Err(fault), "{text}");
        }
    }

    /// IANA tz 2025b, values recomputed with Python's zoneinfo (project's STANDARDS, section 5.6).
    #[test]
    fn clock_changes_are_refused_and_weeks_keep_their_hour() {
        assert_eq!(
            civil("2026-03-29T02:30:00").to_instant(Europe::Berlin),
            Err(CivilFault::Gap(Europe::Berlin))
        );
        assert_eq!(
            civil("2026-11-01T01:30:00").to_instant(America::New_York),
            Err(CivilFault::Fold(America::New_York))
        );
        assert_eq!(
            civil("2026-10-04T02:15:00").to_instant(Australia::Lord_Howe),
            Err(CivilFault::Gap(Australia::Lord_Howe))
        );
        for (local, utc) in [
            ("2026-03-22T18:00:00", "2026-03-22T17:00:00Z"),
            ("2026-03-29T18:00:00", "2026-03-29T16:00:00Z"),
            ("2026-10-18T18:00:00", "2026-10-18T16:00:00Z"),
            ("2026-10-25T18:00:00", "2026-10-25T17:00:00Z"),
        ] {
            let instant = civil(local).to_instant(Europe::Berlin).unwrap();
            assert_eq!(instant, utc.parse::<Instant>().unwrap());
            assert_eq!(
                CivilTime::from_instant(instant, Europe::Berlin),
                civil(local)
            );
        }
    }
}
