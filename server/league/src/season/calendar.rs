//! The calendar of a season: from a rhythm ("lists on Tuesday at eight") to the instants of each week.

use chrono::{Days, NaiveDate, NaiveTime};
use chrono_tz::Tz;
use messages::{Message, season_faults as said};

use super::caps::Caps;
use super::week_plan::{NightPlan, WeekFault, WeekPart, WeekPlan};
use crate::points::Points;
use crate::time::{CivilFault, CivilTime};
use crate::week::WeekNo;

/// Most days of a week.
pub const MAX_DAYS_PER_WEEK: u16 = 100;

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

/// Why a calendar was refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CalendarFault {
    /// A week of no days, or of too many.
    Days(u16),
    /// What is wrong with every week alike.
    EveryWeek(WeekFault),
    /// What is wrong with one week.
    Week { week: WeekNo, fault: WeekFault },
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

impl CalendarFault {
    pub fn message(&self) -> Message {
        match self {
            Self::Days(days) => said::calendar_fault_days(MAX_DAYS_PER_WEEK, days),
            Self::EveryWeek(fault) => fault.message(),
            Self::Week { week, fault } => said::calendar_fault_week(*week, fault.message()),
            Self::Clock { what, week, fault } => {
                said::calendar_fault_clock(what.message(), week, fault.message())
            }
            Self::TooFar => said::calendar_fault_too_far(),
        }
    }

    /// What would have been allowed, and what was given, where the fault is one of size.
    pub fn limit_and_actual(&self) -> Option<(i64, i64)> {
        match self {
            Self::Days(days) => Some(((*days).clamp(1, MAX_DAYS_PER_WEEK).into(), (*days).into())),
            Self::EveryWeek(fault) | Self::Week { fault, .. } => fault.limit_and_actual(),
            Self::Clock { .. } | Self::TooFar => None,
        }
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
                    Ok(mut plan) => {
                        plan.nights.sort_by_key(|night| night.begins.1);
                        weeks.push(plan);
                    }
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
        if !(1..=MAX_DAYS_PER_WEEK).contains(&self.days_per_week) {
            faults.push(CalendarFault::Days(self.days_per_week));
        }
        // Every week has the same rhythm, and the clocks of UTC skip nothing: one week shows its faults.
        // A date that does not exist is named later, with its week.
        if let Ok(week) = self.week(WeekNo::FIRST, Points::ZERO, Tz::UTC) {
            faults.extend(week.check().into_iter().map(CalendarFault::EveryWeek));
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
        let nights = self.nights.iter().enumerate().map(|(index, night)| {
            let begins = at(WeekPart::Night(index), night.begins)?;
            Ok(NightPlan {
                key: night.key.clone(),
                begins,
                tables: night.tables,
            })
        });
        let nights = nights.collect::<Result<Vec<_>, CalendarFault>>()?;
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
