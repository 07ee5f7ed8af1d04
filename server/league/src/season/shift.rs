//! The weeks of a season, moved to another first day: the same hours on the wall of the club,
//! whatever its clocks do in between.

use chrono::{Datelike, NaiveDate, TimeDelta};
use chrono_tz::Tz;
use messages::{Message, seasons};

use super::calendar::CalendarFault;
use super::reveal::RevealTime;
use super::week_plan::{NightPlan, WeekPart, WeekPlan};
use crate::time::{CivilTime, Instant};

/// From the days of one season to those of the next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SeasonShift {
    by: TimeDelta,
    zone: Tz,
}

impl SeasonShift {
    /// The shift that turns `from`, the day on which the first week was announced, into `to`.
    pub fn between(from: NaiveDate, to: NaiveDate, zone: Tz) -> Self {
        Self {
            by: to.signed_duration_since(from),
            zone,
        }
    }

    /// What is wrong with a first `day` of another weekday than that of the old season's `first` day, if it
    /// is one: a slip of a day would move every night of the club.
    ///
    /// # Errors
    /// [`CalendarFault::TooFar`].
    pub fn find_other_weekday(
        first: NaiveDate,
        day: NaiveDate,
    ) -> Result<Option<OtherWeekday>, CalendarFault> {
        let (before, after) = nearest_days(day, first).ok_or(CalendarFault::TooFar)?;
        Ok((before != day).then_some(OtherWeekday {
            first,
            day,
            before,
            after,
        }))
    }

    /// The weeks at their new times.
    ///
    /// # Errors
    /// Every [`CalendarFault::Clock`], one for each week; [`CalendarFault::TooFar`]; each
    /// [`CalendarFault::Week`] of a week that is moved with its faults.
    pub fn weeks(self, weeks: &[WeekPlan]) -> Result<Vec<WeekPlan>, Vec<CalendarFault>> {
        let mut faults = Vec::new();
        let mut moved = Vec::new();
        for week in weeks {
            match self.week(week) {
                Ok(plan) => {
                    let week = plan.week;
                    let found = plan.check().into_iter();
                    faults.extend(found.map(|fault| CalendarFault::Week { week, fault }));
                    moved.push(plan);
                }
                Err(fault) => faults.push(fault),
            }
        }
        if faults.is_empty() {
            Ok(moved)
        } else {
            Err(faults)
        }
    }

    fn week(self, week: &WeekPlan) -> Result<WeekPlan, CalendarFault> {
        let at = |what, (civil, _): (CivilTime, Instant)| self.civil(week, what, civil);
        let nights = week.nights.iter().enumerate().map(|(index, night)| {
            Ok(NightPlan {
                begins: at(WeekPart::Night(index), night.begins)?,
                ..night.clone()
            })
        });
        Ok(WeekPlan {
            week: week.week,
            cap: week.cap,
            announce: at(WeekPart::Announce, week.announce)?,
            lists_due: at(WeekPart::ListsDue, week.lists_due)?,
            play_until: at(WeekPart::PlayUntil, week.play_until)?,
            nights: nights.collect::<Result<_, CalendarFault>>()?,
        })
    }

    /// A reveal of a week's scenario at its new time.
    ///
    /// # Errors
    /// [`CalendarFault::Clock`], [`CalendarFault::TooFar`].
    pub fn reveal(self, week: &WeekPlan, reveal: RevealTime) -> Result<RevealTime, CalendarFault> {
        Ok(match reveal {
            RevealTime::At(instant) => {
                let civil = CivilTime::from_instant(instant, self.zone);
                RevealTime::At(self.civil(week, WeekPart::Reveal, civil)?.1)
            }
            RevealTime::Announcement | RevealTime::ListsOpened => reveal,
        })
    }

    fn civil(
        self,
        week: &WeekPlan,
        what: WeekPart,
        old: CivilTime,
    ) -> Result<(CivilTime, Instant), CalendarFault> {
        let moved = old.0.checked_add_signed(self.by);
        let new = CivilTime(moved.ok_or(CalendarFault::TooFar)?);
        let instant = new
            .to_instant(self.zone)
            .map_err(|fault| CalendarFault::Clock {
                what,
                week: week.week.number(),
                fault,
            })?;
        Ok((new, instant))
    }
}

/// A first day of another weekday than that of the old season.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OtherWeekday {
    /// First day of the old season.
    pub first: NaiveDate,
    /// The day that was given.
    pub day: NaiveDate,
    /// The last day before it with the weekday of the old season.
    pub before: NaiveDate,
    /// The first day after it with that weekday.
    pub after: NaiveDate,
}

impl OtherWeekday {
    pub fn message(self) -> Message {
        let (wanted, actual) = (self.first.weekday(), self.day.weekday());
        seasons::other_weekday(wanted, self.day, actual, self.before, self.after)
    }
}

/// The day before, or on, `day` that has the weekday of `like`, and the one after it.
fn nearest_days(day: NaiveDate, like: NaiveDate) -> Option<(NaiveDate, NaiveDate)> {
    let wanted = like.weekday();
    let back = day.weekday().days_since(wanted);
    let before = day.checked_sub_signed(TimeDelta::days(back.into()))?;
    Some((before, before.checked_add_signed(TimeDelta::days(7))?))
}

#[cfg(test)]
mod tests {
    use chrono_tz::Europe;

    use super::*;
    use crate::points::Points;
    use crate::time::CivilFault;
    use crate::week::WeekNo;

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    /// Announced on Thursday at 18:00, lists on Monday at 20:00, a night on Tuesday at 19:00.
    fn week(number: u8, announce: &str) -> WeekPlan {
        let first = day(announce);
        let at = |days, hour| {
            let date = first.checked_add_signed(TimeDelta::days(days)).unwrap();
            let civil = CivilTime(date.and_hms_opt(hour, 0, 0).unwrap());
            (civil, civil.to_instant(Europe::Berlin).unwrap())
        };
        WeekPlan {
            week: WeekNo::new(number).unwrap(),
            cap: Points::new(250),
            announce: at(0, 18),
            lists_due: at(4, 20),
            play_until: at(10, 22),
            nights: vec![NightPlan {
                key: "tue".into(),
                begins: at(5, 19),
                tables: 4,
            }],
        }
    }

    /// IANA tz: Berlin goes from summer to winter time on 2026-10-25.
    #[test]
    fn a_season_of_winter_keeps_its_hours_in_autumn_and_its_pause() {
        let old = [week(1, "2026-01-08"), week(2, "2026-01-22")];
        let shift = SeasonShift::between(day("2026-01-08"), day("2026-10-15"), Europe::Berlin);
        let new = shift.weeks(&old).unwrap();
        let due = new.iter().map(|week| week.lists_due.1.to_rfc3339());
        assert_eq!(
            due.collect::<Vec<_>>(),
            ["2026-10-19T18:00:00+00:00", "2026-11-02T19:00:00+00:00"]
        );
        let night = &new[1].nights[0];
        assert_eq!((night.key.as_str(), night.tables), ("tue", 4));
        assert_eq!(night.begins.0.0.to_string(), "2026-11-03 19:00:00");
        let at = "2026-01-12T17:30:00Z".parse().unwrap();
        let moved = shift.reveal(&old[0], RevealTime::At(at)).unwrap();
        assert_eq!(
            moved,
            RevealTime::At("2026-10-19T16:30:00Z".parse().unwrap())
        );
    }

    #[test]
    fn every_week_whose_time_the_clocks_skip_is_named() {
        let mut old = week(1, "2026-01-08");
        old.lists_due.0 = CivilTime(day("2026-01-11").and_hms_opt(2, 30, 0).unwrap());
        let weeks = [old, week(2, "2026-01-15")];
        let shift = SeasonShift::between(day("2026-01-08"), day("2026-03-26"), Europe::Berlin);
        assert_eq!(
            shift.weeks(&weeks).unwrap_err(),
            [CalendarFault::Clock {
                what: WeekPart::ListsDue,
                week: 1,
                fault: CivilFault::Gap(Europe::Berlin)
            }]
        );
    }

    #[test]
    fn a_week_whose_night_comes_before_its_deadline_is_not_moved_on() {
        let mut late = week(2, "2026-01-15");
        late.lists_due = late.nights[0].begins;
        let shift = SeasonShift::between(day("2026-01-08"), day("2026-10-15"), Europe::Berlin);
        let faults = shift.weeks(&[week(1, "2026-01-08"), late]).unwrap_err();
        let said: Vec<String> = faults.iter().map(|it| it.message().to_string()).collect();
        assert_eq!(said, ["week 2: nights must come after lists_due"]);
    }

    #[test]
    fn the_nearest_days_of_a_weekday_are_around_the_day_or_on_it() {
        let thursday = day("2026-01-08");
        let around = |text| nearest_days(day(text), thursday).unwrap();
        assert_eq!(around("2026-09-05"), (day("2026-09-03"), day("2026-09-10")));
        assert_eq!(around("2026-09-03").0, day("2026-09-03"));
    }

    #[test]
    fn a_first_day_of_another_weekday_is_found() {
        let find = |text| SeasonShift::find_other_weekday(day("2026-01-08"), day(text)).unwrap();
        assert_eq!(find("2026-09-03"), None);
        let saturday = find("2026-09-05").unwrap();
        assert_eq!(
            (saturday.before, saturday.after),
            (day("2026-09-03"), day("2026-09-10"))
        );
    }
}
