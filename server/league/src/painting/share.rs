//! The painted share of a list as an exact fraction.

use std::collections::BTreeMap;

use messages::Value;
use num_rational::{BigRational, Ratio};

use crate::points::Points;
use crate::share::Share;

/// How a unit counts that is painted in part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PaintCounting {
    /// Its points pro rata by painted models: 6 of 10 models of a unit of 60 points count 36.
    ByModel,
    /// All or nothing.
    WholeUnits,
}

/// The key of a choice that a text makes.
impl From<PaintCounting> for Value {
    fn from(counting: PaintCounting) -> Self {
        match counting {
            PaintCounting::ByModel => "by-model".into(),
            PaintCounting::WholeUnits => "whole-units".into(),
        }
    }
}

/// One unit as it stands on a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct UnitOnList {
    /// What the entry costs on the list.
    pub points: Points,
    /// Models fielded.
    pub models: u32,
    /// How many of them are painted.
    pub painted: u32,
}

impl UnitOnList {
    /// Its painted points, exact.
    pub fn counted(&self, counting: PaintCounting) -> Ratio<u64> {
        let (numerator, denominator) = self.painted_points(counting);
        Ratio::new(numerator, u64::from(denominator))
    }

    /// The same before it is brought to lowest terms, so that sums can be taken by denominator.
    fn painted_points(&self, counting: PaintCounting) -> (u64, u32) {
        let points = u64::from(self.points.get());
        let painted = self.painted.min(self.models);
        match counting {
            _ if self.models == 0 => (0, 1),
            _ if painted == self.models => (points, 1),
            PaintCounting::ByModel => (points * u64::from(painted), self.models),
            PaintCounting::WholeUnits => (0, 1),
        }
    }
}

/// The painted share of the list's points. Exact as long as the fraction in lowest terms fits two
/// 64-bit numbers; beyond that (a dozen units whose sizes share no divisor) it is rounded down by
/// less than one part in 10^9, so a threshold is never reached by rounding.
pub fn painted_share(units: &[UnitOnList], counting: PaintCounting) -> Share {
    const PARTS: u64 = 1_000_000_000;
    let whole: u64 = units.iter().map(|unit| u64::from(unit.points.get())).sum();
    if whole == 0 {
        return Share::NOTHING;
    }
    // Fractions of one denominator are added as whole numbers, which leaves few exact ones.
    let mut by_denominator: BTreeMap<u32, u64> = BTreeMap::new();
    for unit in units {
        let (numerator, denominator) = unit.painted_points(counting);
        *by_denominator.entry(denominator).or_default() += numerator;
    }
    let painted: BigRational = by_denominator
        .into_iter()
        .map(|(denominator, sum)| BigRational::new(sum.into(), denominator.into()))
        .sum();
    let share = painted / BigRational::from_integer(whole.into());
    let exact = u64::try_from(share.numer())
        .ok()
        .zip(u64::try_from(share.denom()).ok())
        .and_then(|(part, whole)| Share::new(part, whole));
    let rounded = || {
        let parts = (share * BigRational::from_integer(PARTS.into())).to_integer();
        Share::new(u64::try_from(parts).unwrap_or(PARTS), PARTS)
    };
    exact.or_else(rounded).unwrap_or(Share::NOTHING)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn unit(points: u32, models: u32, painted: u32) -> UnitOnList {
        UnitOnList {
            points: Points::new(points),
            models,
            painted,
        }
    }

    #[test]
    fn six_of_ten_models_of_a_unit_of_60_points_count_36_or_nothing() {
        let list = [unit(60, 10, 6), unit(40, 1, 0)];
        assert_eq!(
            painted_share(&list, PaintCounting::ByModel),
            Share::percent(36)
        );
        assert_eq!(
            painted_share(&list, PaintCounting::WholeUnits),
            Share::NOTHING
        );
        let whole = [unit(60, 10, 10), unit(40, 1, 0)];
        assert_eq!(
            painted_share(&whole, PaintCounting::WholeUnits),
            Share::percent(60)
        );
    }

    #[test]
    fn thirds_and_sevenths_add_up_without_rounding() {
        let list = [unit(1, 3, 1), unit(1, 7, 2), unit(1, 21, 8)];
        let share = painted_share(&list, PaintCounting::ByModel);
        assert_eq!(Some(share), Share::new(1, 3));
    }

    #[test]
    fn more_models_in_the_log_than_on_the_list_paint_no_more_than_the_list() {
        assert_eq!(
            painted_share(&[unit(50, 5, 8)], PaintCounting::ByModel),
            Share::ALL
        );
    }

    #[test]
    fn a_fraction_too_fine_for_64_bits_is_rounded_down_and_never_reaches_a_threshold() {
        let primes = [7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59];
        let list: Vec<_> = primes
            .iter()
            .map(|&models| unit(1, models, models - 1))
            .collect();
        let share = painted_share(&list, PaintCounting::ByModel);
        let parts: BigRational = list
            .iter()
            .map(|unit| BigRational::new(unit.painted.into(), unit.models.into()))
            .sum();
        let exact = parts / BigRational::from_integer(14.into());
        let (part, whole) = share.fraction();
        let found = BigRational::new(part.into(), whole.into());
        assert!(found < exact);
        assert!(exact - found < BigRational::new(1.into(), 1_000_000_000.into()));
    }
}
