//! The score of a game, computed from its counts.

use crate::points::Points;
use crate::scenario::{ArmyOwner, ItemKey, ItemMeasure, Legs, ScenarioSheet, ScoreItem, ShareBase};
use crate::side::{PerSide, Side};

use super::counts::{ArmyPoints, CountFault, CountFaultKind, GameCounts, LegCounts};

/// The score of a game, with all that led to it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GameScore {
    /// Leg by leg.
    pub legs: Vec<LegScore>,
    /// Game points of each side; legs won where the sheet says so.
    pub total: PerSide<u32>,
    /// Who won by the sheet's draw margin.
    pub verdict: Verdict,
}

/// The score of one leg.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LegScore {
    /// In the order of the sheet.
    pub items: Vec<ItemScore>,
    /// Game points of each side.
    pub total: PerSide<u32>,
}

/// What one item gave.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ItemScore {
    pub item: ItemKey,
    /// What was typed; `None` where nothing was.
    pub counts: PerSide<Option<u32>>,
    /// Game points, caps applied.
    pub points: PerSide<u32>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Verdict {
    Won(Side),
    /// Nobody.
    Drawn,
}

impl Verdict {
    /// The side with more, unless the difference is within `draw_margin`.
    pub fn from_totals(total: PerSide<u32>, draw_margin: u32) -> Self {
        if total.first.abs_diff(total.second) <= draw_margin {
            Self::Drawn
        } else if total.first > total.second {
            Self::Won(Side::First)
        } else {
            Self::Won(Side::Second)
        }
    }
}

impl GameScore {
    /// The difference of game points.
    pub fn margin(&self) -> u32 {
        self.total.first.abs_diff(self.total.second)
    }

    pub(super) fn same_totals(&self, other: &Self) -> bool {
        let legs = |score: &Self| score.legs.iter().map(|leg| leg.total).collect::<Vec<_>>();
        self.total == other.total && legs(self) == legs(other)
    }
}

/// The score of `counts`. Counts that are still missing score nothing, so that the sum can be shown
/// while it is typed.
///
/// # Errors
/// Every count that cannot be, each with its limit.
pub fn score(
    sheet: &ScenarioSheet,
    counts: &GameCounts,
    armies: &ArmyPoints,
) -> Result<GameScore, Vec<CountFault>> {
    let mut impossible = Vec::new();
    let (limit, actual) = (sheet.terms().legs.count(), counts.legs.len());
    if limit != actual {
        impossible.push(CountFault {
            leg: actual.min(limit),
            side: None,
            kind: CountFaultKind::Legs { limit, actual },
        });
    }
    let legs: Vec<LegScore> = counts
        .legs
        .iter()
        .take(limit)
        .enumerate()
        .map(|(leg, counts)| LegForm::new(sheet, armies, leg, counts).score(&mut impossible))
        .collect();
    if !impossible.is_empty() {
        return Err(impossible);
    }
    Ok(total(sheet, legs))
}

fn total(sheet: &ScenarioSheet, legs: Vec<LegScore>) -> GameScore {
    let terms = sheet.terms();
    let won = |leg: &LegScore, side| {
        Verdict::from_totals(leg.total, terms.draw_margin) == Verdict::Won(side)
    };
    let (total, draw_margin) = match terms.legs {
        Legs::One | Legs::TwoSummed => {
            let sum = |side| legs.iter().map(|leg| leg.total[side]).sum();
            (PerSide::from_fn(sum), terms.draw_margin)
        }
        Legs::TwoWonSeparately => {
            let wins = |side| legs.iter().map(|leg| u32::from(won(leg, side))).sum();
            (PerSide::from_fn(wins), 0)
        }
    };
    GameScore {
        legs,
        total,
        verdict: Verdict::from_totals(total, draw_margin),
    }
}

/// The form of one leg: what was typed, and the limits it must keep.
struct LegForm<'a> {
    sheet: &'a ScenarioSheet,
    armies: &'a ArmyPoints,
    leg: usize,
    counts: &'a LegCounts,
    started: PerSide<Points>,
}

impl<'a> LegForm<'a> {
    fn new(
        sheet: &'a ScenarioSheet,
        armies: &'a ArmyPoints,
        leg: usize,
        counts: &'a LegCounts,
    ) -> Self {
        let fields = |side: Side| {
            let most = sheet
                .fielded_share(side.role_in_leg(leg))
                .floor_of(armies.lists[side]);
            counts[side].started.unwrap_or(most)
        };
        Self {
            sheet,
            armies,
            leg,
            counts,
            started: PerSide::from_fn(fields),
        }
    }

    fn score(&self, impossible: &mut Vec<CountFault>) -> LegScore {
        for side in Side::BOTH {
            self.check(side, impossible);
        }
        self.check_exclusive(impossible);
        let terms = self.sheet.terms();
        let mut items: Vec<ItemScore> = terms
            .items
            .iter()
            .map(|item| ItemScore {
                item: item.key.clone(),
                counts: PerSide::from_fn(|side| self.counts[side].items.get(&item.key).copied()),
                points: PerSide::from_fn(|side| self.points(item, side)),
            })
            .collect();
        for joint in &terms.joint_caps {
            for side in Side::BOTH {
                apply_joint_cap(&mut items, &joint.items, joint.cap, side);
            }
        }
        let sum = |side| items.iter().map(|item| item.points[side]).sum();
        let total = PerSide::from_fn(sum);
        LegScore { items, total }
    }

    fn check(&self, side: Side, impossible: &mut Vec<CountFault>) {
        let mut refuse = |why| {
            let (leg, side) = (self.leg, Some(side));
            impossible.push(CountFault {
                leg,
                side,
                kind: why,
            });
        };
        let role = side.role_in_leg(self.leg);
        let limit = self
            .sheet
            .fielded_share(role)
            .floor_of(self.armies.lists[side]);
        let actual = self.started[side];
        if actual > limit {
            refuse(CountFaultKind::OverField { limit, actual });
        }
        for (key, &count) in &self.counts[side].items {
            let key = key.clone();
            match self.sheet.item(&key) {
                None => refuse(CountFaultKind::UnknownItem(key)),
                Some(item) if !item.who.includes(role) => refuse(CountFaultKind::OtherRole(key)),
                Some(item) => {
                    if let Some(why) = self.check_limit(item, side, count) {
                        refuse(why);
                    }
                }
            }
        }
    }

    fn check_limit(&self, item: &ScoreItem, side: Side, count: u32) -> Option<CountFaultKind> {
        let key = || item.key.clone();
        match &item.measure {
            ItemMeasure::Count { most, .. } => (count > *most).then(|| CountFaultKind::OverMost {
                item: key(),
                limit: *most,
                actual: count,
            }),
            ItemMeasure::ArmyShare { army, .. } => {
                let limit = self.started[army_side(*army, side)];
                let actual = Points::new(count);
                (actual > limit).then(|| CountFaultKind::OverArmy {
                    item: key(),
                    limit,
                    actual,
                })
            }
            ItemMeasure::RestOf { .. } => Some(CountFaultKind::Computed(key())),
        }
    }

    fn check_exclusive(&self, impossible: &mut Vec<CountFault>) {
        for item in &self.sheet.terms().items {
            let ItemMeasure::Count {
                most: limit,
                exclusive: true,
                ..
            } = item.measure
            else {
                continue;
            };
            let typed = PerSide::from_fn(|side| self.count(item, side));
            let actual = typed.first.saturating_add(typed.second);
            let alone = typed.first <= limit && typed.second <= limit;
            if alone && actual > limit {
                let item = item.key.clone();
                impossible.push(CountFault {
                    leg: self.leg,
                    side: None,
                    kind: CountFaultKind::OverMost {
                        item,
                        limit,
                        actual,
                    },
                });
            }
        }
    }

    fn count(&self, item: &ScoreItem, side: Side) -> u32 {
        self.counts[side].items.get(&item.key).copied().unwrap_or(0)
    }

    fn points(&self, item: &ScoreItem, side: Side) -> u32 {
        if !item.who.includes(side.role_in_leg(self.leg)) {
            return 0;
        }
        match &item.measure {
            ItemMeasure::Count { points_each, .. } => points_each
                .saturating_mul(self.count(item, side))
                .min(item.measure.max_points()),
            ItemMeasure::ArmyShare {
                army,
                against,
                grade,
            } => {
                let whole = match against {
                    ShareBase::StartingPoints => self.started[army_side(*army, side)],
                    ShareBase::Cap => self.armies.cap,
                };
                grade.points(Points::new(self.count(item, side)), whole)
            }
            ItemMeasure::RestOf { item: of, out_of } => {
                let theirs = self.sheet.item(of);
                out_of.saturating_sub(theirs.map_or(0, |item| self.points(item, side.other())))
            }
        }
    }
}

fn army_side(army: ArmyOwner, side: Side) -> Side {
    match army {
        ArmyOwner::Own => side,
        ArmyOwner::Opposing => side.other(),
    }
}

/// Takes what exceeds a joint cap from the items listed last.
fn apply_joint_cap(items: &mut [ItemScore], keys: &[ItemKey], cap: u32, side: Side) {
    let mut left = cap;
    for item in items.iter_mut().filter(|item| keys.contains(&item.item)) {
        let points = &mut item.points[side];
        *points = (*points).min(left);
        left -= *points;
    }
}
