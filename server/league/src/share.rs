//! Exact fractions. A boundary such as "40 % of 613 points" is never decided by rounding.

use std::cmp::Ordering;

use messages::{Value, values};

use crate::points::Points;

/// A share as an exact fraction in lowest terms; it may exceed the whole.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Share {
    part: u64,
    whole: u64,
}

impl Share {
    /// Nothing of something.
    pub const NOTHING: Self = Self { part: 0, whole: 1 };
    pub const ALL: Self = Self { part: 1, whole: 1 };

    /// `part` of `whole`; `None` when `whole` is zero.
    pub fn new(part: u64, whole: u64) -> Option<Self> {
        let divisor = greatest_common_divisor(part, whole);
        (whole != 0).then(|| Self {
            part: part / divisor,
            whole: whole / divisor,
        })
    }

    /// So many hundredths.
    pub fn percent(hundredths: u32) -> Self {
        let part = u64::from(hundredths);
        let divisor = greatest_common_divisor(part, 100);
        Self {
            part: part / divisor,
            whole: 100 / divisor,
        }
    }

    /// `part` points of `whole` points; a share of nothing is [`Share::NOTHING`].
    pub fn of_points(part: Points, whole: Points) -> Self {
        Self::new(part.get().into(), whole.get().into()).unwrap_or(Self::NOTHING)
    }

    /// Numerator and denominator in lowest terms.
    pub fn fraction(self) -> (u64, u64) {
        (self.part, self.whole)
    }

    /// Whether `part` is at least this share of `whole`, exact to the point.
    ///
    /// ```
    /// use league::{points::Points, share::Share};
    /// let goal = Share::percent(40);
    /// assert!(goal.is_reached_by(Points::new(246), Points::new(613)));
    /// assert!(!goal.is_reached_by(Points::new(245), Points::new(613)));
    /// ```
    pub fn is_reached_by(self, part: Points, whole: Points) -> bool {
        u128::from(part.get()) * u128::from(self.whole)
            >= u128::from(whole.get()) * u128::from(self.part)
    }

    /// The most whole points that do not exceed this share of `whole`: rounded down.
    pub fn floor_of(self, whole: Points) -> Points {
        let most = u128::from(whole.get()) * u128::from(self.part) / u128::from(self.whole);
        Points::new(u32::try_from(most).unwrap_or(u32::MAX))
    }

    /// The fewest whole points that reach this share of `whole`: rounded up.
    pub fn ceil_of(self, whole: Points) -> Points {
        let scaled = u128::from(whole.get()) * u128::from(self.part);
        Points::new(u32::try_from(scaled.div_ceil(u128::from(self.whole))).unwrap_or(u32::MAX))
    }
}

impl PartialOrd for Share {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Share {
    fn cmp(&self, other: &Self) -> Ordering {
        (u128::from(self.part) * u128::from(other.whole))
            .cmp(&(u128::from(other.part) * u128::from(self.whole)))
    }
}

/// Percent, with one decimal only where it is not whole; always rounded down.
impl From<Share> for Value {
    fn from(share: Share) -> Self {
        let tenths = u128::from(share.part) * 1000 / u128::from(share.whole);
        let number = match i128::try_from(tenths) {
            Ok(tenths) if tenths % 10 != 0 => Self::Tenths(tenths),
            _ => (tenths / 10).into(),
        };
        values::percentage(number).into()
    }
}

fn greatest_common_divisor(a: u64, b: u64) -> u64 {
    if b == 0 {
        a.max(1)
    } else {
        greatest_common_divisor(b, a % b)
    }
}

#[cfg(test)]
mod tests {
    use messages::ledger;

    use super::*;

    #[test]
    fn twenty_percent_of_600_is_120_and_not_one_more() {
        let share = Share::percent(20);
        assert_eq!(share.floor_of(Points::new(600)), Points::new(120));
        assert!(Share::of_points(Points::new(121), Points::new(600)) > share);
        let written = |share: Share| ledger::credited_painted_share(share).to_string();
        assert_eq!(
            written(Share::of_points(Points::new(125), Points::new(600))),
            "20.8 % of the list painted"
        );
        assert_eq!(written(share), "20 % of the list painted");
    }

    #[test]
    fn a_share_of_nothing_is_nothing() {
        assert_eq!(Share::new(1, 0), None);
        assert_eq!(
            Share::of_points(Points::new(3), Points::ZERO),
            Share::NOTHING
        );
    }
}
