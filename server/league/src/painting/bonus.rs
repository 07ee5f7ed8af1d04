//! Painted bonuses: the four kinds of league points that painting can give, each as data.

use messages::{Message, Value, painting_rules as said, values};

use crate::ids::PlayerId;
use crate::ledger::{LineReason, LineSource};
use crate::points::{LeaguePoints, Points};
use crate::share::Share;
use crate::week::WeekNo;

use super::PaintingFault;

/// Most league points of one bonus.
const MAX_BONUS: LeaguePoints = LeaguePoints::new(100);

/// One bonus of a season.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PaintedBonus {
    /// All at once when the painted share reaches a threshold.
    AtThreshold { share: Share, points: LeaguePoints },
    /// The highest tier that the painted share reaches.
    Tiers(Vec<Tier>),
    /// In proportion to the painted share, rounded down.
    Proportional {
        /// For a list painted as a whole.
        for_all: LeaguePoints,
    },
    /// For what was newly finished this week.
    NewlyFinished {
        counted: FinishedMeasure,
        each: LeaguePoints,
        /// Most of a week.
        most: LeaguePoints,
    },
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tier {
    /// Painted share from which it holds.
    pub from: Share,
    pub points: LeaguePoints,
}

/// What newly finished things are counted in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FinishedMeasure {
    Units,
    /// Every so many army points.
    Points {
        /// The step; a part of it gives nothing.
        step: Points,
    },
}

/// What is known of a player's painting in one week, checked claims only.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PaintedWeek {
    pub player: PlayerId,
    pub week: WeekNo,
    /// Painted share of the opened list.
    pub share: Share,
    /// Units on the list that were finished this week and never before.
    pub new_units: u32,
    pub new_points: Points,
    /// The claim behind it, or the rule when painting of earlier weeks alone gives it.
    pub source: LineSource,
    /// Version of that source.
    pub version: u32,
}

impl PaintedBonus {
    /// What it gives for a week; `None` when nothing.
    pub fn earned(&self, week: &PaintedWeek) -> Option<(LeaguePoints, LineReason)> {
        let by_share = |points| (points, LineReason::PaintedShare(week.share));
        let (points, reason) = match self {
            Self::AtThreshold { share, points } if week.share >= *share => by_share(*points),
            Self::AtThreshold { .. } => return None,
            Self::Tiers(tiers) => {
                let tier = tiers.iter().rev().find(|tier| week.share >= tier.from)?;
                by_share(tier.points)
            }
            Self::Proportional { for_all } => by_share(part_of(*for_all, week.share)),
            Self::NewlyFinished {
                counted,
                each,
                most,
            } => {
                let count = match counted {
                    FinishedMeasure::Units => week.new_units,
                    FinishedMeasure::Points { step } => {
                        week.new_points.get().checked_div(step.get()).unwrap_or(0)
                    }
                };
                let all = i64::from(each.get()) * i64::from(count);
                let points = i32::try_from(all)
                    .map_or(*most, LeaguePoints::new)
                    .min(*most);
                (points, LineReason::NewlyFinished { count })
            }
        };
        (points > LeaguePoints::ZERO).then_some((points, reason))
    }

    pub(super) fn faults(&self, bonus: usize) -> Vec<PaintingFault> {
        let amount = |actual: LeaguePoints| {
            let sound = (LeaguePoints::new(1)..=MAX_BONUS).contains(&actual);
            let limit = MAX_BONUS;
            (!sound).then_some(PaintingFault::Amount {
                bonus,
                limit,
                actual,
            })
        };
        let threshold = |actual: Share| {
            let sound = actual > Share::NOTHING && actual <= Share::ALL;
            (!sound).then_some(PaintingFault::Threshold { bonus, actual })
        };
        match self {
            Self::AtThreshold { share, points } => threshold(*share)
                .into_iter()
                .chain(amount(*points))
                .collect(),
            Self::Tiers(tiers) => {
                let each = tiers
                    .iter()
                    .flat_map(|tier| threshold(tier.from).into_iter().chain(amount(tier.points)));
                let pairs = tiers.iter().zip(tiers.iter().skip(1));
                let falls =
                    |low: &Tier, high: &Tier| high.from <= low.from || high.points <= low.points;
                let order = pairs.filter(|(low, high)| falls(low, high));
                each.chain(order.map(|(_, high)| PaintingFault::Tiers {
                    bonus,
                    from: high.from,
                }))
                .collect()
            }
            Self::Proportional { for_all } => amount(*for_all).into_iter().collect(),
            Self::NewlyFinished {
                counted,
                each,
                most,
            } => {
                let no_step = *counted == (FinishedMeasure::Points { step: Points::ZERO });
                let step = no_step.then_some(PaintingFault::Step { bonus });
                amount(*each)
                    .into_iter()
                    .chain(amount(*most))
                    .chain(step)
                    .collect()
            }
        }
    }

    pub(super) fn message(&self) -> Message {
        match self {
            Self::AtThreshold { share, points } => said::painting_rule_threshold(share, points),
            Self::Tiers(tiers) => {
                let tiers = tiers.iter();
                let tiers = tiers.map(|tier| said::painting_rule_tier(tier.points, tier.from));
                said::painting_rule_tiers(Value::joined(tiers, values::comma))
            }
            Self::Proportional { for_all } => said::painting_rule_proportional(for_all),
            Self::NewlyFinished {
                counted: FinishedMeasure::Units,
                each,
                most,
            } => said::painting_rule_units(each, most),
            Self::NewlyFinished {
                counted: FinishedMeasure::Points { step },
                each,
                most,
            } => said::painting_rule_points(step, each, most),
        }
    }
}

fn part_of(all: LeaguePoints, share: Share) -> LeaguePoints {
    let all = Points::new(u32::try_from(all.get()).unwrap_or(0));
    LeaguePoints::new(i32::try_from(share.floor_of(all).get()).unwrap_or(i32::MAX))
}

#[cfg(test)]
mod tests;
