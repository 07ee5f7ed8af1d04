//! Score items: one line of the score form each.

use crate::catalogue::key::ItemKey;
use crate::name::Name;
use crate::points::Points;
use crate::share::Share;
use crate::side::GameRole;

/// One thing that is counted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ScoreItem {
    pub key: ItemKey,
    /// What the form says.
    pub label: Name,
    /// Which side scores it.
    pub who: ScoringSide,
    /// When it is counted.
    pub when: ScoringTime,
    /// How a count becomes game points.
    pub measure: ItemMeasure,
}

/// The sides that may score an item.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScoringSide {
    /// Each side for itself.
    Either,
    /// The side with this role.
    Only(GameRole),
}

impl ScoringSide {
    /// Whether a side with `role` scores it.
    pub fn includes(self, role: GameRole) -> bool {
        match self {
            Self::Either => true,
            Self::Only(only) => only == role,
        }
    }
}

/// When an item is counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScoringTime {
    /// As it happens, turn by turn.
    DuringPlay,
    /// Once, at the end of the last turn.
    LastTurn,
}

/// How a count becomes game points.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ItemMeasure {
    /// So many points for each.
    Count {
        /// Game points for one.
        points_each: u32,
        /// Largest possible count of one side; of both together when `exclusive`.
        most: u32,
        /// Only one side can hold each, as with a marker on the table.
        exclusive: bool,
        /// Most game points from this item in one leg.
        cap: Option<u32>,
    },
    /// Army points, entered as the sum of the units meant, graded by the share they make.
    ArmyShare {
        /// Whose units are added up.
        army: ArmyOwner,
        /// What the sum is a share of.
        against: ShareBase,
        /// What a share is worth.
        grade: Grade,
    },
    /// What the opponent's item leaves of a fixed sum; nothing is typed.
    RestOf {
        /// The opponent's item.
        item: ItemKey,
        /// Game points shared out by the two items.
        out_of: u32,
    },
}

/// Whose units an army share adds up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ArmyOwner {
    /// The scoring side's own, such as units that left by the far edge.
    Own,
    /// The opponent's, such as units destroyed.
    Opposing,
}

/// What an army share is a share of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShareBase {
    /// The points which that army started the leg with.
    StartingPoints,
    /// The cap of the week.
    Cap,
}

/// What a share is worth in game points.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Grade {
    /// So many points for every full step.
    PerStep {
        /// The step, such as 12 %.
        step: Share,
        /// Game points for one.
        points_each: u32,
        cap: u32,
    },
    /// The points of the highest band reached.
    Bands(Vec<GradeBand>),
}

/// One band of a [`Grade`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct GradeBand {
    /// Share from which the band holds.
    pub from: Share,
    /// What it is worth in game points.
    pub points: u32,
}

impl Grade {
    /// Game points for `part` of `whole`, where both are army points; exact at every boundary.
    pub fn points(&self, part: Points, whole: Points) -> u32 {
        match self {
            Self::PerStep {
                step,
                points_each,
                cap,
            } => {
                let (numerator, denominator) = step.fraction();
                let step_points = u128::from(whole.get()) * u128::from(numerator);
                let steps = (u128::from(part.get()) * u128::from(denominator))
                    .checked_div(step_points)
                    .unwrap_or(0);
                let points = steps.saturating_mul(u128::from(*points_each));
                u32::try_from(points).unwrap_or(u32::MAX).min(*cap)
            }
            Self::Bands(bands) => bands
                .iter()
                .rev()
                .find(|band| whole.get() > 0 && band.from.is_reached_by(part, whole))
                .map_or(0, |band| band.points),
        }
    }

    /// Most game points it can give.
    pub fn max_points(&self) -> u32 {
        match self {
            Self::PerStep { cap, .. } => *cap,
            Self::Bands(bands) => bands.last().map_or(0, |band| band.points),
        }
    }
}

/// A cap over several items of one side in one leg.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct JointCap {
    /// The items it covers.
    pub items: Vec<ItemKey>,
    /// Most game points from all of them.
    pub cap: u32,
}

impl ItemMeasure {
    /// Most game points one side can get from it in one leg.
    pub fn max_points(&self) -> u32 {
        match self {
            Self::Count {
                points_each,
                most,
                cap,
                ..
            } => {
                let all = points_each.saturating_mul(*most);
                cap.map_or(all, |cap| cap.min(all))
            }
            Self::ArmyShare { grade, .. } => grade.max_points(),
            Self::RestOf { out_of, .. } => *out_of,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn forty_percent_of_613_points_is_reached_with_246_and_not_with_245() {
        let grade = Grade::Bands(vec![GradeBand {
            from: Share::percent(40),
            points: 12,
        }]);
        assert_eq!(grade.points(Points::new(246), Points::new(613)), 12);
        assert_eq!(grade.points(Points::new(245), Points::new(613)), 0);
    }

    #[test]
    fn a_step_counts_only_when_it_is_full() {
        let grade = Grade::PerStep {
            step: Share::percent(12),
            points_each: 1,
            cap: 8,
        };
        let cap = Points::new(300);
        assert_eq!(grade.points(Points::new(35), cap), 0);
        assert_eq!(grade.points(Points::new(36), cap), 1);
        assert_eq!(grade.points(Points::new(300), cap), 8);
        assert_eq!(grade.points(Points::new(36), Points::ZERO), 0);
    }
}
