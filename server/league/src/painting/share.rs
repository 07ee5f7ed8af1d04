//! The painted share of a list, exact.

use num_rational::Ratio;

use crate::points::Points;
use crate::share::Share;

use super::stage::{ModelStages, Stage};

/// How a unit counts that is painted in part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Counting {
    /// Its points pro rata by painted models: 6 of 10 models of a unit of 60 points count 36.
    ByModel,
    /// All or nothing.
    WholeUnits,
}

/// One unit as it stands on a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct UnitOnList {
    /// What the entry costs on the list.
    pub points: Points,
    /// How far its models are.
    pub stages: ModelStages,
}

/// The painted share of the list's points. Exact as long as the fraction in lowest terms fits two
/// 64-bit numbers; beyond that (dozens of units whose sizes share no divisor) it is rounded down by
/// less than one part in 10^9, so a threshold is never reached by rounding.
pub fn painted_share(units: &[UnitOnList], from: Stage, counting: Counting) -> Share {
    let whole: u128 = units.iter().map(|unit| u128::from(unit.points.get())).sum();
    let painted: Ratio<u128> = units
        .iter()
        .map(|unit| painted_points(unit, from, counting))
        .sum();
    if whole == 0 {
        return Share::NOTHING;
    }
    let share = painted / Ratio::from_integer(whole);
    let exact = u64::try_from(*share.numer())
        .ok()
        .zip(u64::try_from(*share.denom()).ok())
        .and_then(|(part, whole)| Share::new(part, whole));
    exact.unwrap_or_else(|| rounded_down(share))
}

fn painted_points(unit: &UnitOnList, from: Stage, counting: Counting) -> Ratio<u128> {
    let points = u128::from(unit.points.get());
    let (painted, models) = (unit.stages.at_least(from), unit.stages.total());
    match counting {
        _ if models == 0 => Ratio::from_integer(0),
        Counting::ByModel => Ratio::new(points * u128::from(painted), models.into()),
        Counting::WholeUnits if painted == models => Ratio::from_integer(points),
        Counting::WholeUnits => Ratio::from_integer(0),
    }
}

fn rounded_down(share: Ratio<u128>) -> Share {
    const PARTS: u64 = 1_000_000_000;
    let (whole, rest) = (share.to_integer(), share.fract());
    let scale = rest.denom() / u128::from(PARTS) + 1;
    let parts = rest.numer() / scale * u128::from(PARTS) / (rest.denom() / scale + 1);
    let part = whole.saturating_mul(PARTS.into()).saturating_add(parts);
    Share::new(u64::try_from(part).unwrap_or(u64::MAX), PARTS).unwrap_or(Share::NOTHING)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn unit(points: u32, models: u16, finished: u16) -> UnitOnList {
        let stages = ModelStages::new([models - finished, 0, 0, finished]).unwrap();
        let points = Points::new(points);
        UnitOnList { points, stages }
    }

    #[test]
    fn six_of_ten_models_of_a_unit_of_60_points_count_36_or_nothing() {
        let list = [unit(60, 10, 6), unit(40, 1, 0)];
        let share = |counting| painted_share(&list, Stage::Finished, counting);
        assert_eq!(share(Counting::ByModel), Share::percent(36));
        assert_eq!(share(Counting::WholeUnits), Share::NOTHING);
    }

    #[test]
    fn thirds_and_sevenths_add_up_without_rounding() {
        let list = [unit(1, 3, 1), unit(1, 7, 2), unit(1, 21, 8)];
        let share = painted_share(&list, Stage::Finished, Counting::ByModel);
        assert_eq!(Some(share), Share::new(1, 3));
    }

    #[test]
    fn a_fraction_too_fine_for_64_bits_is_rounded_down_and_never_reaches_a_threshold() {
        let primes = [7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59];
        let list: Vec<_> = primes.map(|models| unit(1, models, models - 1)).into();
        let share = painted_share(&list, Stage::Finished, Counting::ByModel);
        let float = primes
            .iter()
            .map(|&m| f64::from(m - 1) / f64::from(m))
            .sum::<f64>()
            / 14.0;
        let (part, whole) = share.fraction();
        let found = part as f64 / whole as f64;
        assert!(found <= float && float - found < 2e-9, "{found} {float}");
    }
}
