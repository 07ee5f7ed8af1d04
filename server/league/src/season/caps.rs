//! The caps of a season, week by week. They never fall: nobody can be made to shrink an army.

use messages::{Message, season_faults as said};

use crate::points::{MAX_POINTS, Points};
use crate::week::{MAX_WEEKS, WeekNo};

/// The caps in the order of the weeks; at least one, none zero, none below the one before.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Caps(Vec<Points>);

/// Why caps were refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CapFault {
    /// No week, or more than a season can have.
    Weeks(usize),
    /// A cap of nothing, or an absurd one.
    OutOfRange {
        /// The week, from 1.
        week: usize,
        cap: u32,
    },
    /// A cap below the one before it.
    Falls {
        /// The week, from 1.
        week: usize,
        /// The cap of the week before.
        before: u32,
        cap: u32,
    },
}

impl CapFault {
    pub fn message(&self) -> Message {
        match *self {
            Self::Weeks(weeks) => said::cap_fault_weeks(MAX_WEEKS, weeks),
            Self::OutOfRange { week, cap } => said::cap_fault_out_of_range(week, cap, MAX_POINTS),
            Self::Falls { week, before, cap } => said::cap_fault_falls(before, cap, week),
        }
    }
    /// The week at fault, counted from zero, if one is.
    pub fn index(self) -> Option<usize> {
        match self {
            Self::Weeks(_) => None,
            Self::OutOfRange { week, .. } | Self::Falls { week, .. } => Some(week - 1),
        }
    }

    /// The nearest that would have been allowed, and what was given.
    pub fn limit_and_actual(self) -> (u32, u32) {
        match self {
            Self::Weeks(weeks) => {
                let given = u32::try_from(weeks).unwrap_or(u32::MAX);
                (given.clamp(1, MAX_WEEKS.into()), given)
            }
            Self::OutOfRange { cap, .. } => (cap.clamp(1, MAX_POINTS), cap),
            Self::Falls { before, cap, .. } => (before, cap),
        }
    }
}

impl Caps {
    /// Caps listed one by one.
    ///
    /// # Errors
    /// Every [`CapFault`].
    pub fn from_list(caps: &[u32]) -> Result<Self, Vec<CapFault>> {
        if caps.is_empty() || caps.len() > usize::from(MAX_WEEKS) {
            return Err(vec![CapFault::Weeks(caps.len())]);
        }
        let mut faults = Vec::new();
        let mut before = 0;
        for (index, &cap) in caps.iter().enumerate() {
            let week = index + 1;
            if cap == 0 || cap > MAX_POINTS {
                faults.push(CapFault::OutOfRange { week, cap });
            } else if cap < before {
                faults.push(CapFault::Falls { week, before, cap });
            }
            before = cap;
        }
        let caps = caps.iter().copied().map(Points::new).collect();
        if faults.is_empty() {
            Ok(Self(caps))
        } else {
            Err(faults)
        }
    }

    /// "250 more each week, 8 weeks".
    ///
    /// # Errors
    /// As [`Caps::from_list`].
    ///
    /// ```
    /// use league::season::Caps;
    /// let caps = Caps::from_step(250, 250, 8).unwrap();
    /// assert_eq!(caps, Caps::from_list(&[250, 500, 750, 1000, 1250, 1500, 1750, 2000]).unwrap());
    /// ```
    pub fn from_step(first: u32, step: u32, weeks: u8) -> Result<Self, Vec<CapFault>> {
        let caps: Vec<u32> = (0..u32::from(weeks))
            .map(|week| first.saturating_add(step.saturating_mul(week)))
            .collect();
        Self::from_list(&caps)
    }

    /// The caps, first week first.
    pub fn as_slice(&self) -> &[Points] {
        &self.0
    }
}

/// The cap of another week that `cap` contradicts: an earlier week's that is higher, or a later one's that
/// is lower.
pub fn find_conflicting_cap(
    others: impl IntoIterator<Item = (WeekNo, Points)>,
    week: WeekNo,
    cap: Points,
) -> Option<Points> {
    let mut others = others.into_iter();
    let conflict =
        others.find(|&(at, other)| (at < week && other > cap) || (at > week && other < cap));
    conflict.map(|(_, other)| other)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_cap_of_a_week_lies_between_those_before_and_after_it() {
        let week = |number| WeekNo::new(number).unwrap();
        let others = [(week(1), Points::new(300)), (week(3), Points::new(500))];
        let conflict = |cap| find_conflicting_cap(others, week(2), Points::new(cap));
        assert_eq!(conflict(299), Some(Points::new(300)));
        assert_eq!(conflict(501), Some(Points::new(500)));
        assert_eq!([300, 400, 500].map(conflict), [None; 3]);
    }

    #[test]
    fn caps_may_rest_but_not_fall() {
        assert!(Caps::from_list(&[500, 600, 600, 750]).is_ok());
        assert_eq!(
            Caps::from_list(&[500, 450, 0]),
            Err(vec![
                CapFault::Falls {
                    week: 2,
                    before: 500,
                    cap: 450
                },
                CapFault::OutOfRange { week: 3, cap: 0 },
            ])
        );
        assert_eq!(Caps::from_list(&[]), Err(vec![CapFault::Weeks(0)]));
        assert_eq!(Caps::from_step(1, 1, 53), Err(vec![CapFault::Weeks(53)]));
        assert!(Caps::from_step(u32::MAX, u32::MAX, 3).is_err());
    }
}
