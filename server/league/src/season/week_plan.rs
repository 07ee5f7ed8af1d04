//! The plan of a week: cap, times and nights. One check serves creating, changing and shifting it.

use messages::{Message, season_faults as said};

use crate::points::Points;
use crate::time::{CivilTime, Instant};
use crate::week::WeekNo;

/// Most nights of a week.
const MAX_NIGHTS_PER_WEEK: usize = 14;
/// Most tables of a night.
pub const MAX_TABLES_PER_NIGHT: u16 = 500;
/// Longest key of a night in characters.
const MAX_NIGHT_KEY_LENGTH: usize = 20;

/// One week of a season, as it is planned.
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
    pub nights: Vec<NightPlan>,
}

/// One night of one week.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NightPlan {
    pub key: String,
    pub begins: (CivilTime, Instant),
    pub tables: u16,
}

impl NightPlan {
    /// Whether its games may be reported.
    pub fn has_begun(&self, now: Instant) -> bool {
        now >= self.begins.1
    }
}

/// A time of a week that a fault is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WeekPart {
    Announce,
    ListsDue,
    PlayUntil,
    /// The beginning of a night, counted from 0.
    Night(usize),
    Reveal,
}

impl WeekPart {
    pub(super) fn message(self) -> Message {
        match self {
            Self::Announce => said::calendar_announce(),
            Self::ListsDue => said::calendar_lists_due(),
            Self::PlayUntil => said::calendar_play_until(),
            Self::Night(_) => said::calendar_nights(),
            Self::Reveal => said::calendar_reveal(),
        }
    }
}

/// What is wrong with a week. Nights are counted from 0.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum WeekFault {
    /// No night, or too many.
    Nights(usize),
    /// Two nights of one name, or a name that is none.
    NightKey { night: usize, key: String },
    /// No table, or too many.
    Tables {
        night: usize,
        key: String,
        tables: u16,
    },
    /// Something comes before what it waits for, or at the same time.
    Order {
        /// What must come first, and when it is.
        earlier: (WeekPart, CivilTime),
        /// What comes too early, and when it is.
        later: (WeekPart, CivilTime),
    },
}

impl WeekFault {
    pub fn message(&self) -> Message {
        match self {
            Self::Nights(nights) => said::calendar_fault_nights(MAX_NIGHTS_PER_WEEK, *nights),
            Self::NightKey { key, .. } => said::calendar_fault_night_key(key, MAX_NIGHT_KEY_LENGTH),
            Self::Tables { key, tables, .. } => {
                said::calendar_fault_tables(key, MAX_TABLES_PER_NIGHT, tables)
            }
            Self::Order { earlier, later } => {
                said::calendar_fault_order(later.0.message(), earlier.0.message())
            }
        }
    }

    /// What would have been allowed, and what was given, where the fault is one of size.
    pub fn limit_and_actual(&self) -> Option<(i64, i64)> {
        match *self {
            Self::Nights(nights) => {
                let number = |count| i64::try_from(count).unwrap_or(i64::MAX);
                let limit = nights.clamp(1, MAX_NIGHTS_PER_WEEK);
                Some((number(limit), number(nights)))
            }
            Self::Tables { tables, .. } => {
                Some((tables.clamp(1, MAX_TABLES_PER_NIGHT).into(), tables.into()))
            }
            Self::NightKey { .. } | Self::Order { .. } => None,
        }
    }
}

impl WeekPlan {
    /// Everything that is wrong with the week.
    pub fn check(&self) -> Vec<WeekFault> {
        let mut faults = Vec::new();
        if !(1..=MAX_NIGHTS_PER_WEEK).contains(&self.nights.len()) {
            faults.push(WeekFault::Nights(self.nights.len()));
        }
        for (night, plan) in self.nights.iter().enumerate() {
            let mut before = self.nights.iter().take(night);
            let key = plan.key.clone();
            if before.any(|other| other.key == key) || !is_night_key(&key) {
                faults.push(WeekFault::NightKey { night, key });
            }
            if !(1..=MAX_TABLES_PER_NIGHT).contains(&plan.tables) {
                let (key, tables) = (plan.key.clone(), plan.tables);
                faults.push(WeekFault::Tables { night, key, tables });
            }
        }
        let announce = (WeekPart::Announce, self.announce);
        let lists_due = (WeekPart::ListsDue, self.lists_due);
        faults.extend(order_fault(announce, lists_due));
        faults.extend(order_fault(
            lists_due,
            (WeekPart::PlayUntil, self.play_until),
        ));
        for (night, plan) in self.nights.iter().enumerate() {
            faults.extend(order_fault(
                lists_due,
                (WeekPart::Night(night), plan.begins),
            ));
        }
        faults
    }

    /// What a change of the week broke. A fault that the week had before does not stand in the way of
    /// changing something else.
    pub fn check_change(&self, before: &Self) -> Vec<WeekFault> {
        let known = before.check();
        let mut faults = self.check();
        faults.retain(|fault| !known.contains(fault));
        faults
    }
}

type PlannedTime = (WeekPart, (CivilTime, Instant));

fn order_fault(
    (earlier, (earlier_civil, earlier_at)): PlannedTime,
    (later, (later_civil, later_at)): PlannedTime,
) -> Option<WeekFault> {
    (later_at <= earlier_at).then_some(WeekFault::Order {
        earlier: (earlier, earlier_civil),
        later: (later, later_civil),
    })
}

/// Whether a night may be called so: 1 to 20 lower-case letters, digits or hyphens.
fn is_night_key(text: &str) -> bool {
    (1..=MAX_NIGHT_KEY_LENGTH).contains(&text.len())
        && text
            .bytes()
            .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-')
}

#[cfg(test)]
mod tests {
    use chrono_tz::Tz;

    use super::*;

    fn at(text: &str) -> (CivilTime, Instant) {
        let civil = CivilTime(text.parse().unwrap());
        (civil, civil.to_instant(Tz::UTC).unwrap())
    }

    fn night(key: &str, begins: &str) -> NightPlan {
        NightPlan {
            key: key.into(),
            begins: at(begins),
            tables: 6,
        }
    }

    fn week() -> WeekPlan {
        WeekPlan {
            week: WeekNo::FIRST,
            cap: Points::new(300),
            announce: at("2026-01-08T18:00:00"),
            lists_due: at("2026-01-12T20:00:00"),
            play_until: at("2026-01-17T23:00:00"),
            nights: vec![
                night("tue", "2026-01-13T19:00:00"),
                night("thu", "2026-01-15T19:00:00"),
            ],
        }
    }

    fn order(earlier: (WeekPart, &str), later: (WeekPart, &str)) -> WeekFault {
        WeekFault::Order {
            earlier: (earlier.0, at(earlier.1).0),
            later: (later.0, at(later.1).0),
        }
    }

    #[test]
    fn every_night_begins_after_the_deadline() {
        assert_eq!(week().check(), []);
        let mut late = week();
        late.lists_due = at("2026-01-13T19:00:00");
        let due = (WeekPart::ListsDue, "2026-01-13T19:00:00");
        let tuesday = (WeekPart::Night(0), "2026-01-13T19:00:00");
        assert_eq!(late.check(), [order(due, tuesday)]);
        let mut early = week();
        early.nights[1].begins = at("2026-01-12T19:59:59");
        let due = (WeekPart::ListsDue, "2026-01-12T20:00:00");
        let monday = (WeekPart::Night(1), "2026-01-12T19:59:59");
        assert_eq!(early.check(), [order(due, monday)]);
    }

    #[test]
    fn lists_are_due_after_the_announcement_and_games_played_after_that() {
        let mut week = week();
        week.announce = at("2026-01-12T20:00:00");
        week.play_until = at("2026-01-12T18:00:00");
        let due = (WeekPart::ListsDue, "2026-01-12T20:00:00");
        let announce = (WeekPart::Announce, "2026-01-12T20:00:00");
        let until = (WeekPart::PlayUntil, "2026-01-12T18:00:00");
        assert_eq!(week.check(), [order(announce, due), order(due, until)]);
    }

    #[test]
    fn a_week_has_1_to_14_nights_with_1_to_500_tables() {
        let limits = |week: WeekPlan| -> Vec<_> {
            let faults = week.check();
            faults.iter().map(WeekFault::limit_and_actual).collect()
        };
        let mut none = week();
        none.nights.clear();
        assert_eq!(limits(none), [Some((1, 0))]);
        let mut many = week();
        let key = |no: u8| night(&format!("n{no}"), "2026-01-13T19:00:00");
        many.nights = (0..15).map(key).collect();
        many.nights[0].tables = 0;
        many.nights[14].tables = 501;
        let expected = [(14, 15), (1, 0), (500, 501)];
        assert_eq!(limits(many), expected.map(Some));
    }

    #[test]
    fn each_night_has_a_plain_name_of_its_own() {
        let mut week = week();
        week.nights[1].key = "tue".into();
        for key in ["", "Tue", "a b", "a-night-of-21-letters"] {
            week.nights.push(night(key, "2026-01-16T19:00:00"));
        }
        let at: Vec<_> = week
            .check()
            .into_iter()
            .map(|fault| match fault {
                WeekFault::NightKey { night, .. } => night,
                other => panic!("{other:?}"),
            })
            .collect();
        assert_eq!(at, [1, 2, 3, 4, 5]);
    }

    #[test]
    fn a_change_answers_for_what_it_breaks_and_not_for_what_was_broken_before() {
        let mut broken = week();
        broken.nights[0].begins = at("2026-01-12T19:00:00");
        let mut longer = broken.clone();
        longer.play_until = at("2026-01-18T23:00:00");
        assert_eq!(longer.check_change(&broken), []);
        longer.lists_due = at("2026-01-12T20:30:00");
        let due = (WeekPart::ListsDue, "2026-01-12T20:30:00");
        let monday = (WeekPart::Night(0), "2026-01-12T19:00:00");
        assert_eq!(longer.check_change(&broken), [order(due, monday)]);
    }
}
