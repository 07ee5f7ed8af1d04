//! What became of last week's list, judged on which unit it is and not on names.
//!
//! An entry returns when the same key fields the same unit of the same faction. Of a returning
//! entry the common part counts: the smaller of both sizes and of both takings of each option.
//!
//! What returns and what leaves is counted in last week's points, what is new in this week's: a unit
//! that became dearer neither leaves nor is new. Where the weeks have different versions of the
//! catalogue, only what could have stayed can leave. Left out of every count is
//!
//! - a unit that this week's version does not have;
//! - the models above the largest offered size of no more models, and the whole unit where only
//!   larger sizes are offered: nobody is made to grow;
//! - an option that this week's version does not have, takings above its limit, and of options that
//!   now exclude each other all but the one that returns;
//! - an entry whose missing part would not fit under the cap beside all that returns, because
//!   something became dearer.
//!
//! The definition is our own: common practice has none.

use crate::catalogue::Catalogue;
use crate::catalogue::key::OptionKey;
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
    /// Last week's unit as this week's version has it.
    offered: Option<&'a Unit>,
    /// Whether what is missing would not fit under the cap beside what returns.
    crowded_out: bool,
}

impl Pair<'_> {
    /// Points of last week's entry that return, at last week's prices.
    pub fn kept(&self) -> Points {
        self.common(self.before).min(self.offered_then())
    }

    /// Points of last week's entry that return or could have, at last week's prices.
    pub fn could_return(&self) -> Points {
        if self.crowded_out {
            self.kept()
        } else {
            self.offered_then()
        }
    }

    /// Points of this week's entry that are not new, at this week's prices.
    pub fn old(&self) -> Points {
        self.common(self.now)
    }

    /// Last week's models that could return.
    pub fn models_due(&self) -> u32 {
        match (self.before, self.now) {
            (Some(_), Some(now)) if self.crowded_out => now.entry.models,
            _ => self.models_offered(),
        }
    }

    /// Last week's takings of an option that could return.
    pub fn takings_due(&self, option: &OptionKey) -> u32 {
        match (self.before, self.now) {
            (Some(_), Some(now)) if self.crowded_out => now.entry.takings(option),
            _ => self.takings_offered(option),
        }
    }

    fn models_offered(&self) -> u32 {
        let size = |line: Line<'_>| self.offered?.size_within(line.entry.models);
        self.before.and_then(size).map_or(0, |size| size.models)
    }

    fn takings_offered(&self, key: &OptionKey) -> u32 {
        let option = self.offered.and_then(|unit| unit.option(key));
        let (Some(before), Some(option)) = (self.before, option) else {
            return 0;
        };
        let group = |other: &OptionKey| self.offered?.option(other)?.group.as_ref();
        let excludes = |other: &OptionKey, taken: u32| {
            other != key && taken > 0 && group(other) == option.group.as_ref()
        };
        let mut kept = self.kept_options();
        let excluded = option.group.is_some() && kept.any(|(other, taken)| excludes(other, taken));
        if excluded {
            0
        } else {
            before.entry.takings(key).min(option.limit)
        }
    }

    /// Last week's options with how often they are still taken.
    fn kept_options(&self) -> impl Iterator<Item = (&OptionKey, u32)> {
        let before = self.before.into_iter();
        let options = before.flat_map(|before| &before.entry.options);
        let now = self.now.map(|now| now.entry);
        options.map(move |(key, &had)| (key, now.map_or(0, |now| had.min(now.takings(key)))))
    }

    /// Points of what both entries have, as one of them is priced.
    fn common(&self, priced: Option<Line<'_>>) -> Points {
        let (Some(before), Some(now), Some(priced)) = (self.before, self.now, priced) else {
            return Points::ZERO;
        };
        let models = before.entry.models.min(now.entry.models);
        let both = |option: &OptionKey| before.entry.takings(option).min(now.entry.takings(option));
        let unit = priced.unit;
        unit.map_or(Points::ZERO, |unit| price(unit, models, before.entry, both))
            .min(priced.points)
    }

    /// Points of what this week's version still offers of last week's entry, at last week's prices.
    fn offered_then(&self) -> Points {
        let before = self.before;
        before.map_or(Points::ZERO, |before| {
            self.offered_at(before.unit).min(before.points)
        })
    }

    fn offered_at(&self, unit: Option<&Unit>) -> Points {
        match (self.before, unit, self.models_offered()) {
            (None, ..) | (_, None, _) | (.., 0) => Points::ZERO,
            (Some(before), Some(unit), models) => price(unit, models, before.entry, |option| {
                self.takings_offered(option)
            }),
        }
    }

    /// Points of what is missing, at this week's prices.
    fn missing(&self) -> Points {
        self.offered_at(self.offered).left_after(self.old())
    }
}

/// Points of so many models of an entry with so many takings of its options.
fn price(unit: &Unit, models: u32, entry: &Entry, takings: impl Fn(&OptionKey) -> u32) -> Points {
    let body = unit.size_within(models).map(|size| size.points);
    let options = entry.options.keys().filter_map(|key| {
        let price = unit.option(key)?.price;
        Some(price.for_models(models).times(takings(key)))
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
    /// Sets the lists side by side. `now` are the lines of `list` in this week's `catalogue`.
    pub fn new(
        previous: Previous<'a>,
        list: &'a ArmyList,
        now: &[Line<'a>],
        catalogue: &'a Catalogue,
    ) -> Self {
        let same_faction = previous.list.faction() == list.faction();
        let offered = catalogue.faction(previous.list.faction());
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
                offered: offered.and_then(|faction| faction.unit(&line.entry.unit)),
                crowded_out: false,
            })
            .collect();
        pairs.extend(now.iter().filter_map(|&line| {
            let known = previous.list.entry(&line.entry.key);
            (!known.is_some_and(|before| returns(before, line.entry))).then_some(Pair {
                before: None,
                now: Some(line),
                offered: None,
                crowded_out: false,
            })
        }));
        Self {
            pairs,
            total_before: before.iter().map(|line| line.points).sum(),
        }
    }

    /// Forgives what is missing where it would not fit under the cap beside all that returns.
    #[must_use]
    pub fn under(mut self, cap: Points) -> Self {
        let returning: Points = self.pairs.iter().map(Pair::old).sum();
        let room = cap.left_after(returning);
        for pair in &mut self.pairs {
            pair.crowded_out = pair.missing() > room;
        }
        self
    }

    /// Points of last week's list that return, at last week's prices.
    pub fn kept(&self) -> Points {
        self.pairs.iter().map(Pair::kept).sum()
    }

    /// Points of last week's list that return or could have, at last week's prices.
    pub fn could_return(&self) -> Points {
        self.pairs.iter().map(Pair::could_return).sum()
    }

    /// Points of last week's list that could have returned and did not, at last week's prices.
    pub fn left(&self) -> Points {
        self.could_return().left_after(self.kept())
    }

    /// Last week's entries of which some points left.
    pub fn losses(&self) -> impl Iterator<Item = Line<'a>> {
        let lost = |pair: &&Pair<'a>| pair.kept() < pair.could_return();
        self.pairs
            .iter()
            .filter(lost)
            .filter_map(|pair| pair.before)
    }

    /// What is counted, in words: "last week's 300 points", or that part of them.
    pub fn counted(&self) -> String {
        let (could, total) = (self.could_return(), self.total_before);
        if could == total {
            format!("last week's {total} points")
        } else {
            format!("the {could} points that last week's {total} are reckoned at")
        }
    }
}

#[cfg(test)]
mod tests;
