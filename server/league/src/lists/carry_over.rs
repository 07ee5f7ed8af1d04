//! Carry-over between two weeks: what returns of last week's list, what left and what is new.
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

use messages::{Message, findings};

use crate::catalogue::Catalogue;
use crate::catalogue::key::OptionKey;
use crate::catalogue::unit::Unit;
use crate::lists::army_list::{ArmyList, Entry};
use crate::lists::line::{ListLine, lines};
use crate::points::Points;

/// A player's last list with the catalogue version it was pinned to.
#[derive(Clone, Copy, Debug)]
pub struct PreviousList<'a> {
    pub list: &'a ArmyList,
    /// Its own catalogue version: it keeps the points it was sealed with.
    pub catalogue: &'a Catalogue,
}

/// One unit of the collection in last week's list, this week's, or both.
#[derive(Clone, Copy, Debug)]
pub struct EntryPair<'a> {
    /// Last week's entry with last week's points.
    pub before: Option<ListLine<'a>>,
    /// This week's entry with this week's points.
    pub now: Option<ListLine<'a>>,
    /// Last week's unit as this week's version has it.
    offered: Option<&'a Unit>,
    /// Whether what is missing would not fit under the cap beside what returns.
    crowded_out: bool,
}

impl EntryPair<'_> {
    /// Points of last week's entry that return, at last week's prices.
    pub fn kept_points(&self) -> Points {
        self.common_points(self.before)
            .min(self.offered_points_before())
    }

    /// Points of last week's entry that return or could have, at last week's prices.
    pub fn returnable_points(&self) -> Points {
        if self.crowded_out {
            self.kept_points()
        } else {
            self.offered_points_before()
        }
    }

    /// Points of this week's entry that are not new, at this week's prices.
    pub fn old_points(&self) -> Points {
        self.common_points(self.now)
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
        let size = |line: ListLine<'_>| self.offered?.size_within(line.entry.models);
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
    fn common_points(&self, priced: Option<ListLine<'_>>) -> Points {
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
    fn offered_points_before(&self) -> Points {
        let before = self.before;
        before.map_or(Points::ZERO, |before| {
            self.offered_points(before.unit).min(before.points)
        })
    }

    fn offered_points(&self, unit: Option<&Unit>) -> Points {
        match (self.before, unit, self.models_offered()) {
            (None, ..) | (_, None, _) | (.., 0) => Points::ZERO,
            (Some(before), Some(unit), models) => price(unit, models, before.entry, |option| {
                self.takings_offered(option)
            }),
        }
    }

    /// Points of what is missing, at this week's prices.
    fn missing_points(&self) -> Points {
        self.offered_points(self.offered)
            .saturating_sub(self.old_points())
    }
}

/// Points of so many models of an entry with so many takings of its options.
fn price(unit: &Unit, models: u32, entry: &Entry, takings: impl Fn(&OptionKey) -> u32) -> Points {
    let body = unit.size_within(models).map(|size| size.points);
    let options = entry.options.keys().filter_map(|key| {
        let price = unit.option(key)?.price;
        Some(price.for_models(models).saturating_mul(takings(key)))
    });
    body.unwrap_or_default() + options.sum()
}

/// Last week's list beside this week's.
#[derive(Clone, Debug)]
pub struct Comparison<'a> {
    /// Last week's entries in their order, then the entries that are new.
    pub pairs: Vec<EntryPair<'a>>,
    /// Points of last week's list at last week's prices.
    pub total_before: Points,
}

impl<'a> Comparison<'a> {
    /// Sets the lists side by side. `now` are the lines of `list` in this week's `catalogue`.
    pub fn new(
        previous: PreviousList<'a>,
        list: &'a ArmyList,
        now: &[ListLine<'a>],
        catalogue: &'a Catalogue,
    ) -> Self {
        let same_faction = previous.list.faction() == list.faction();
        let offered = catalogue.faction(previous.list.faction());
        let before = lines(previous.list, previous.catalogue);
        let returns = |a: &Entry, b: &Entry| same_faction && a.key == b.key && a.unit == b.unit;
        let mut pairs: Vec<EntryPair<'a>> = before
            .iter()
            .map(|&line| EntryPair {
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
            (!known.is_some_and(|before| returns(before, line.entry))).then_some(EntryPair {
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
    pub fn with_cap(mut self, cap: Points) -> Self {
        // Each missing part is compared with the whole room by itself: only what could not return in
        // any case is forgiven.
        let returning: Points = self.pairs.iter().map(EntryPair::old_points).sum();
        let room = cap.saturating_sub(returning);
        for pair in &mut self.pairs {
            pair.crowded_out = pair.missing_points() > room;
        }
        self
    }

    /// Points of last week's list that return, at last week's prices.
    pub fn kept_points(&self) -> Points {
        self.pairs.iter().map(EntryPair::kept_points).sum()
    }

    /// Points of last week's list that return or could have, at last week's prices.
    pub fn returnable_points(&self) -> Points {
        self.pairs.iter().map(EntryPair::returnable_points).sum()
    }

    /// Points of last week's list that could have returned and did not, at last week's prices.
    pub fn left_points(&self) -> Points {
        self.returnable_points().saturating_sub(self.kept_points())
    }

    /// Last week's entries of which some points left.
    pub fn losses(&self) -> impl Iterator<Item = ListLine<'a>> {
        let lost = |pair: &&EntryPair<'a>| pair.kept_points() < pair.returnable_points();
        self.pairs
            .iter()
            .filter(lost)
            .filter_map(|pair| pair.before)
    }

    /// What is counted: "last week's 300 points", or that part of them.
    pub fn counted(&self) -> Message {
        let (could, total) = (self.returnable_points(), self.total_before);
        if could == total {
            findings::finding_last_weeks_points(total)
        } else {
            findings::finding_last_weeks_points_reckoned(could, total)
        }
    }
}

#[cfg(test)]
mod tests;
