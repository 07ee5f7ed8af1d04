//! The calendar of a season: from a rhythm ("lists on Tuesday at eight") to the instants of each week.

use std::ops::RangeInclusive;

use chrono::{Days, NaiveDate, NaiveTime};
use chrono_tz::Tz;
use messages::{Message, season_faults as said};

use super::caps::Caps;
use crate::points::Points;
use crate::time::{CivilFault, CivilTime, Instant};
use crate::week::WeekNo;

/// Days of a week.
const DAYS_PER_WEEK: RangeInclusive<i64> = 1..=100;
/// Nights of a week.
const NIGHTS_PER_WEEK: RangeInclusive<i64> = 1..=14;
/// Tables of a night.
const TABLES_PER_NIGHT: RangeInclusive<i64> = 1..=500;

/// A time relative to a week: a time of day, some days after the first day of the week.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WeekTime {
    /// Days after the first day of the week.
    pub day: u16,
    /// Time on the wall of the club.
    pub time: NaiveTime,
}

/// A night in the rhythm.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ClubNight {
    /// Its short name, the same every week, such as `tue`.
    pub key: String,
    pub begins: WeekTime,
    pub tables: u16,
}

/// The rhythm of a season.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Calendar {
    /// First day of the first week.
    pub first_day: NaiveDate,
    /// Days from one week's first day to the next: 7 for a weekly league.
    pub days_per_week: u16,
    /// Cap and scenario go out.
    pub announce: WeekTime,
    pub lists_due: WeekTime,
    /// Games must be played.
    pub play_until: WeekTime,
    pub nights: Vec<ClubNight>,
}

/// One week of the plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WeekPlan {
    pub week: WeekNo,
    pub cap: Points,
    /// Announcement: civil and as an instant.
    pub announce: (CivilTime, Instant),
    /// Deadline of the lists.
    pub lists_due: (CivilTime, Instant),
    /// End of the play window.
    pub play_until: (CivilTime, Instant),
    /// The nights, as they begin.
    pub nights: Vec<NightPlan>,
}

/// One night of one week.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NightPlan {
    pub key: String,
    pub begins: (CivilTime, Instant),
    pub tables: u16,
}

/// Why a calendar was refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CalendarFault {
    /// A week of no days, or of too many.
    Days(u16),
    /// No night, or too many.
    Nights(usize),
    /// Two nights of one name, or a name that is none.
    NightKey(String),
    /// No table, or too many.
    Tables(String, u16),
    /// Something comes before what it waits for.
    Order {
        /// What must come first.
        earlier: WeekPart,
        /// What comes too early.
        later: WeekPart,
    },
    /// A civil time that is no single instant.
    Clock {
        /// Which time.
        what: WeekPart,
        /// Which week, from 1.
        week: u8,
        /// What is wrong with it.
        fault: CivilFault,
    },
    /// A date no calendar reaches.
    TooFar,
}

/// A time of a week that a fault is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WeekPart {
    Announce,
    ListsDue,
    PlayUntil,
    Nights,
    Reveal,
}

impl WeekPart {
    fn message(self) -> Message {
        match self {
            Self::Announce => said::calendar_announce(),
            Self::ListsDue => said::calendar_lists_due(),
            Self::PlayUntil => said::calendar_play_until(),
            Self::Nights => said::calendar_nights(),
            Self::Reveal => said::calendar_reveal(),
        }
    }
}

impl CalendarFault {
    pub fn message(&self) -> Message {
        match self {
            Self::Days(days) => said::calendar_fault_days(*DAYS_PER_WEEK.end(), days),
            Self::Nights(nights) => said::calendar_fault_nights(*NIGHTS_PER_WEEK.end(), *nights),
            Self::NightKey(night) => said::calendar_fault_night_key(night, MAX_NIGHT_KEY_LENGTH),
            Self::Tables(night, tables) => {
                said::calendar_fault_tables(night, *TABLES_PER_NIGHT.end(), tables)
            }
            Self::Order { earlier, later } => {
                said::calendar_fault_order(later.message(), earlier.message())
            }
            Self::Clock { what, week, fault } => {
                said::calendar_fault_clock(what.message(), week, fault.message())
            }
            Self::TooFar => said::calendar_fault_too_far(),
        }
    }
    /// What would have been allowed, and what was given, where the fault is one of size.
    pub fn limit_and_actual(&self) -> Option<(i64, i64)> {
        let (range, actual) = match *self {
            Self::Days(actual) => (DAYS_PER_WEEK, actual.into()),
            Self::Nights(actual) => (NIGHTS_PER_WEEK, i64::try_from(actual).unwrap_or(i64::MAX)),
            Self::Tables(_, actual) => (TABLES_PER_NIGHT, actual.into()),
            Self::NightKey(_) | Self::Order { .. } | Self::Clock { .. } | Self::TooFar => {
                return None;
            }
        };
        Some((actual.clamp(*range.start(), *range.end()), actual))
    }
}

impl Calendar {
    /// The plan of every week in `zone`.
    ///
    /// # Errors
    /// Every [`CalendarFault`].
    pub fn plan(&self, caps: &Caps, zone: Tz) -> Result<Vec<WeekPlan>, Vec<CalendarFault>> {
        let mut faults = self.faults();
        if !faults.is_empty() {
            return Err(faults);
        }
        let mut weeks = Vec::new();
        for (number, &cap) in (1..).zip(caps.as_slice()) {
            match WeekNo::new(number).ok_or(CalendarFault::TooFar) {
                Ok(week) => match self.week(week, cap, zone) {
                    Ok(plan) => weeks.push(plan),
                    Err(fault) => faults.push(fault),
                },
                Err(fault) => faults.push(fault),
            }
        }
        if faults.is_empty() {
            Ok(weeks)
        } else {
            Err(faults)
        }
    }

    fn faults(&self) -> Vec<CalendarFault> {
        let mut faults = Vec::new();
        if !DAYS_PER_WEEK.contains(&self.days_per_week.into()) {
            faults.push(CalendarFault::Days(self.days_per_week));
        }
        if !i64::try_from(self.nights.len()).is_ok_and(|nights| NIGHTS_PER_WEEK.contains(&nights)) {
            faults.push(CalendarFault::Nights(self.nights.len()));
        }
        for (index, night) in self.nights.iter().enumerate() {
            let twice = self
                .nights
                .iter()
                .take(index)
                .any(|other| other.key == night.key);
            if twice || !is_night_key(&night.key) {
                faults.push(CalendarFault::NightKey(night.key.clone()));
            }
            if !TABLES_PER_NIGHT.contains(&night.tables.into()) {
                faults.push(CalendarFault::Tables(night.key.clone(), night.tables));
            }
        }
        let order = |moment: WeekTime| (moment.day, moment.time);
        if order(self.lists_due) <= order(self.announce) {
            faults.push(CalendarFault::Order {
                earlier: WeekPart::Announce,
                later: WeekPart::ListsDue,
            });
        }
        if order(self.play_until) <= order(self.lists_due) {
            faults.push(CalendarFault::Order {
                earlier: WeekPart::ListsDue,
                later: WeekPart::PlayUntil,
            });
        }
        if self
            .nights
            .iter()
            .any(|night| order(night.begins) <= order(self.lists_due))
        {
            faults.push(CalendarFault::Order {
                earlier: WeekPart::ListsDue,
                later: WeekPart::Nights,
            });
        }
        faults
    }

    fn week(&self, week: WeekNo, cap: Points, zone: Tz) -> Result<WeekPlan, CalendarFault> {
        let start = u64::from(self.days_per_week) * u64::from(week.number() - 1);
        let at = |what: WeekPart, moment: WeekTime| {
            let day = self
                .first_day
                .checked_add_days(Days::new(start + u64::from(moment.day)))
                .ok_or(CalendarFault::TooFar)?;
            let civil = CivilTime(day.and_time(moment.time));
            let instant = civil
                .to_instant(zone)
                .map_err(|fault| CalendarFault::Clock {
                    what,
                    week: week.number(),
                    fault,
                })?;
            Ok((civil, instant))
        };
        let nights = self.nights.iter().map(|night| {
            let begins = at(WeekPart::Nights, night.begins)?;
            Ok(NightPlan {
                key: night.key.clone(),
                begins,
                tables: night.tables,
            })
        });
        let mut nights: Vec<NightPlan> = nights.collect::<Result<_, CalendarFault>>()?;
        nights.sort_by_key(|night| night.begins.1);
        Ok(WeekPlan {
            week,
            cap,
            announce: at(WeekPart::Announce, self.announce)?,
            lists_due: at(WeekPart::ListsDue, self.lists_due)?,
            play_until: at(WeekPart::PlayUntil, self.play_until)?,
            nights,
        })
    }
}

/// Longest key of a night in characters.
const MAX_NIGHT_KEY_LENGTH: usize = 20;

/// Whether a night may be called so: 1 to 20 lower-case letters, digits or hyphens.
pub fn is_night_key(text: &str) -> bool {
    (1..=MAX_NIGHT_KEY_LENGTH).contains(&text.len())
        && text
            .bytes()
            .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-')
}

#[cfg(test)]
mod tests {
    use chrono_tz::Europe;

    use super::*;

    fn moment(day: u16, hour: u32) -> WeekTime {
        WeekTime {
            day,
            time: NaiveTime::from_hms_opt(hour, 0, 0).unwrap(),
        }
    }

    fn calendar() -> Calendar {
        Calendar {
            first_day: "2026-10-12".parse().unwrap(),
            days_per_week: 7,
            announce: moment(0, 18),
            lists_due: moment(1, 20),
            play_until: moment(6, 23),
            nights: vec![
                ClubNight {
                    key: "thu".into(),
                    begins: moment(3, 19),
                    tables: 5,
                },
                ClubNight {
                    key: "wed".into(),
                    begins: moment(2, 19),
                    tables: 6,
                },
            ],
        }
    }

    #[test]
    fn weeks_keep_their_hour_when_the_clocks_change() {
        let plan = calendar()
            .plan(&Caps::from_step(250, 250, 3).unwrap(), Europe::Berlin)
            .unwrap();
        let due: Vec<String> = plan
            .iter()
            .map(|week| week.lists_due.1.to_rfc3339())
            .collect();
        assert_eq!(
            due,
            [
                "2026-10-13T18:00:00+00:00",
                "2026-10-20T18:00:00+00:00",
                "2026-10-27T19:00:00+00:00"
            ]
        );
        assert_eq!(plan[0].nights[0].key, "wed");
    }

    #[test]
    fn a_deadline_that_the_clocks_skip_names_its_week() {
        let mut calendar = calendar();
        calendar.first_day = "2026-03-16".parse().unwrap();
        calendar.play_until = WeekTime {
            day: 13,
            time: NaiveTime::from_hms_opt(2, 30, 0).unwrap(),
        };
        let faults = calendar
            .plan(&Caps::from_step(1, 1, 2).unwrap(), Europe::Berlin)
            .unwrap_err();
        assert_eq!(
            faults,
            [CalendarFault::Clock {
                what: WeekPart::PlayUntil,
                week: 1,
                fault: CivilFault::Gap(Europe::Berlin)
            }]
        );
    }

    #[test]
    fn everything_wrong_is_named_at_once() {
        let mut calendar = calendar();
        calendar.days_per_week = 0;
        calendar.lists_due = moment(0, 17);
        calendar.nights[1].key = "thu".into();
        calendar.nights[0].tables = 0;
        let faults = calendar
            .plan(&Caps::from_step(1, 1, 1).unwrap(), Europe::Berlin)
            .unwrap_err();
        assert_eq!(faults.len(), 4);
    }
}
