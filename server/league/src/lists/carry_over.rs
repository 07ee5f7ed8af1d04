//! What became of last week's list, judged on which unit it is and not on names.
//!
//! An entry returns when the same key fields the same unit of the same faction. Of a returning
//! entry the common part counts: the smaller of both sizes and of both takings of each option.

use crate::catalogue::unit::Unit;
use crate::lists::army_list::{ArmyList, Entry};
use crate::lists::check::Previous;
use crate::lists::facts::{Line, lines};
use crate::points::Points;

/// One unit of the collection in last week's list, this week's, or both.
#[derive(Clone, Copy, Debug)]
pub struct Pair<'a> {
    /// Last week's entry with last week's points.
    pub before: Option<Line<'a>>,
    /// This week's entry with this week's points.
    pub now: Option<Line<'a>>,
}

impl Pair<'_> {
    /// Points of last week's entry that return, at last week's prices.
    pub fn kept(&self) -> Points {
        self.common(self.before)
    }

    /// Points of this week's entry that are not new, at this week's prices.
    pub fn old(&self) -> Points {
        self.common(self.now)
    }

    fn common(&self, priced_by: Option<Line<'_>>) -> Points {
        match (self.before, self.now, priced_by) {
            (Some(before), Some(now), Some(line)) => line
                .unit
                .map_or(Points::ZERO, |unit| common(before.entry, now.entry, unit))
                .min(line.points),
            _ => Points::ZERO,
        }
    }
}

fn common(before: &Entry, now: &Entry, unit: &Unit) -> Points {
    let models = before.models.min(now.models);
    let body = unit.size_within(models).map(|size| size.points);
    let options = before.options.iter().filter_map(|(key, &taken)| {
        let kept = taken.min(now.options.get(key).copied().unwrap_or(0));
        Some(unit.option(key)?.price.for_models(models).times(kept))
    });
    body.unwrap_or_default() + options.sum()
}

/// Last week's list beside this week's.
#[derive(Clone, Debug)]
pub struct Comparison<'a> {
    /// Last week's entries in their order, then the entries that are new.
    pub pairs: Vec<Pair<'a>>,
    /// Points of last week's list at last week's prices.
    pub total_before: Points,
}

impl<'a> Comparison<'a> {
    /// Sets the lists side by side. `now` are the lines of `list`.
    pub fn new(previous: Previous<'a>, list: &'a ArmyList, now: &[Line<'a>]) -> Self {
        let same_faction = previous.list.faction() == list.faction();
        let before = lines(previous.list, previous.catalogue);
        let returns = |a: &Entry, b: &Entry| same_faction && a.key == b.key && a.unit == b.unit;
        let mut pairs: Vec<Pair<'a>> = before
            .iter()
            .map(|&line| Pair {
                before: Some(line),
                now: list
                    .position(&line.entry.key)
                    .and_then(|i| now.get(i))
                    .filter(|now| returns(line.entry, now.entry))
                    .copied(),
            })
            .collect();
        pairs.extend(now.iter().filter_map(|&line| {
            let known = previous.list.entry(&line.entry.key);
            (!known.is_some_and(|before| returns(before, line.entry))).then_some(Pair {
                before: None,
                now: Some(line),
            })
        }));
        Self {
            pairs,
            total_before: before.iter().map(|line| line.points).sum(),
        }
    }

    /// Points of last week's list that return, at last week's prices.
    pub fn kept(&self) -> Points {
        self.pairs.iter().map(Pair::kept).sum()
    }

    /// Points of last week's list that left, at last week's prices.
    pub fn left(&self) -> Points {
        self.total_before.left_after(self.kept())
    }

    /// Last week's entries of which some points left.
    pub fn losses(&self) -> impl Iterator<Item = Line<'a>> {
        self.pairs
            .iter()
            .filter_map(|pair| pair.before.filter(|before| pair.kept() < before.points))
    }
}
