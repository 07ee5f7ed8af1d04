//! Painted points of a list: each entry's points pro rata by its finished models, exact.

use std::collections::BTreeMap;

use num_rational::BigRational;

use crate::lists::check::PaintedModels;
use crate::lists::facts::Line;
use crate::points::Points;
use crate::share::Share;

/// An exact sum of painted points, which need not be whole.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PaintedPoints(BigRational);

impl PaintedPoints {
    /// Whether the sum is at least this share of `total`.
    pub fn reaches(&self, share: Share, total: Points) -> bool {
        let (part, whole) = share.fraction();
        let goal = BigRational::new(part.into(), whole.into())
            * BigRational::from_integer(total.get().into());
        self.0 >= goal
    }

    /// Whole points of the sum, rounded down.
    pub fn whole(&self) -> Points {
        Points::new(u32::try_from(self.0.to_integer()).unwrap_or(u32::MAX))
    }
}

/// Sums the finished part of every line. More finished models than fielded count as all of them.
pub fn painted_points(lines: &[Line<'_>], painted: Option<&PaintedModels>) -> PaintedPoints {
    let mut whole = Points::ZERO;
    // Fractions of one size are added as whole numbers: far fewer exact fractions remain.
    let mut by_models: BTreeMap<u32, u64> = BTreeMap::new();
    for line in lines {
        let finished = painted
            .and_then(|painted| painted.get(&line.entry.key))
            .map_or(0, |&models| models.min(line.entry.models));
        if finished == line.entry.models {
            whole += line.points;
        } else if finished > 0 {
            *by_models.entry(line.entry.models).or_default() +=
                u64::from(line.points.get()) * u64::from(finished);
        }
    }
    let parts = by_models
        .into_iter()
        .map(|(models, product)| BigRational::new(product.into(), models.into()));
    let sum = BigRational::from_integer(whole.get().into());
    PaintedPoints(parts.fold(sum, |sum, part| sum + part))
}
