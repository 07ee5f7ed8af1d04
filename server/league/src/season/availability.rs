//! The nights on which a player can come: which may be named, and until when.

use messages::{Message, seasons};

use super::phase::{WeekFacts, WeekPhase};
use super::week_plan::NightPlan;
use crate::time::Instant;

/// Why nights cannot be told.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum AvailabilityFault {
    /// The week is paired: its games stand on their nights.
    WeekPaired,
    /// A night that the week does not have, or one twice. Holds the nights of the week.
    Nights(Vec<String>),
}

impl AvailabilityFault {
    pub fn message(&self) -> Message {
        match self {
            Self::WeekPaired => seasons::availability_too_late(),
            Self::Nights(known) => seasons::nights_known(known.join(", ")),
        }
    }
}

/// # Errors
/// [`AvailabilityFault::WeekPaired`] from the pairing on.
pub fn check_availability_time(week: &WeekFacts, now: Instant) -> Result<(), AvailabilityFault> {
    if week.phase(now) >= WeekPhase::Paired {
        return Err(AvailabilityFault::WeekPaired);
    }
    Ok(())
}

/// # Errors
/// [`AvailabilityFault::Nights`] unless each of `nights` is one of the week's, and named once.
pub fn check_nights(nights: &[String], week: &[NightPlan]) -> Result<(), AvailabilityFault> {
    let is_known = |key: &String| week.iter().any(|night| night.key == *key);
    let mut earlier = nights.iter().enumerate();
    let doubled = earlier.any(|(at, key)| nights.iter().take(at).any(|other| other == key));
    if nights.iter().all(is_known) && !doubled {
        return Ok(());
    }
    let known = week.iter().map(|night| night.key.clone());
    Err(AvailabilityFault::Nights(known.collect()))
}

#[cfg(test)]
mod tests {
    use chrono_tz::Tz;

    use super::*;
    use crate::season::samples::week_due;
    use crate::time::CivilTime;

    #[test]
    fn nights_are_those_of_the_week_each_at_most_once() {
        let night = |key: &str| {
            let civil = CivilTime("2026-01-13T19:00:00".parse().unwrap());
            NightPlan {
                key: key.into(),
                begins: (civil, civil.to_instant(Tz::UTC).unwrap()),
                tables: 6,
            }
        };
        let week = ["tue", "thu"].map(night);
        let check = |nights: &[&str]| {
            let nights: Vec<String> = nights.iter().map(|&key| key.into()).collect();
            check_nights(&nights, &week)
        };
        for good in [&[][..], &["thu"], &["thu", "tue"]] {
            assert_eq!(check(good), Ok(()), "{good:?}");
        }
        let fault = AvailabilityFault::Nights(vec!["tue".into(), "thu".into()]);
        for bad in [&["fri"][..], &["tue", "tue"], &["tue", "fri"]] {
            assert_eq!(check(bad), Err(fault.clone()), "{bad:?}");
        }
    }

    #[test]
    fn who_can_come_is_told_until_the_week_is_paired() {
        let due: Instant = "2026-01-12T20:00:00Z".parse().unwrap();
        let opened = WeekFacts {
            lists_opened_at: Some(due),
            ..week_due(due)
        };
        assert_eq!(check_availability_time(&opened, due), Ok(()));
        let paired = WeekFacts {
            paired_at: Some(due),
            ..opened
        };
        let fault = Err(AvailabilityFault::WeekPaired);
        assert_eq!(check_availability_time(&paired, due), fault);
    }
}
