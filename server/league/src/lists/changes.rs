//! Comparison of a list with the player's last one, unit by unit.

use crate::catalogue::Catalogue;
use crate::catalogue::key::{OptionKey, UnitKey};
use crate::lists::army_list::{ArmyList, Entry, EntryKey};
use crate::lists::carry_over::{Comparison, EntryPair, PreviousList};
use crate::lists::line::{ListLine, lines};
use crate::points::Points;

/// What became of one unit of the collection.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ListChangeKind {
    /// Not in last week's list.
    Added,
    /// More models or options, nothing less.
    Grown,
    /// Fewer models or options, nothing more.
    Shrunk,
    /// More of something and less of something else.
    Refitted,
    /// The same, but the catalogue gives it other points.
    Repriced,
    /// Still in the list, though this week's catalogue does not have the unit.
    Gone,
    /// The same for the same points.
    Unchanged,
    /// In last week's list only.
    Left,
}

/// One unit of the collection in last week's list and this week's.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ListChange {
    /// Which unit of the collection.
    pub entry: EntryKey,
    /// What it is in the catalogue.
    pub unit: UnitKey,
    /// As people call it; the key where the catalogue has no such unit.
    pub name: String,
    /// What became of it.
    pub kind: ListChangeKind,
    /// Models last week, 0 when it was not there.
    pub models_before: u32,
    /// Models this week, 0 when it left.
    pub models_now: u32,
    /// Points last week, at last week's prices.
    pub points_before: Points,
    /// Points this week, at this week's prices.
    pub points_now: Points,
    /// Options taken more often than last week.
    pub options_gained: Vec<OptionKey>,
    /// Options taken less often than last week.
    pub options_lost: Vec<OptionKey>,
}

/// Last week's units in their order with what became of them, then the units that are new.
/// Which unit is which is judged by entry key, not by name.
pub fn compare_lists(
    previous: PreviousList<'_>,
    list: &ArmyList,
    catalogue: &Catalogue,
) -> Vec<ListChange> {
    let now = lines(list, catalogue);
    let comparison = Comparison::new(previous, list, &now, catalogue);
    comparison.pairs.iter().filter_map(change).collect()
}

fn change(pair: &EntryPair<'_>) -> Option<ListChange> {
    let line: ListLine<'_> = pair.now.or(pair.before)?;
    let models = |line: Option<ListLine<'_>>| line.map_or(0, |line| line.entry.models);
    let points = |line: Option<ListLine<'_>>| line.map_or(Points::ZERO, |line| line.points);
    let (options_gained, options_lost) = match (pair.before, pair.now) {
        (Some(before), Some(now)) => (
            options_taken_more(before.entry, now.entry),
            options_taken_more(now.entry, before.entry),
        ),
        _ => (Vec::new(), Vec::new()),
    };
    let mut change = ListChange {
        entry: line.entry.key.clone(),
        unit: line.entry.unit.clone(),
        name: line.name().into(),
        kind: ListChangeKind::Unchanged,
        models_before: models(pair.before),
        models_now: models(pair.now),
        points_before: points(pair.before),
        points_now: points(pair.now),
        options_gained,
        options_lost,
    };
    change.kind = change_kind(pair, &change);
    Some(change)
}

fn change_kind(pair: &EntryPair<'_>, change: &ListChange) -> ListChangeKind {
    let more = change.models_now > change.models_before || !change.options_gained.is_empty();
    let less = change.models_now < change.models_before || !change.options_lost.is_empty();
    match (pair.before.is_some(), pair.now.is_some(), more, less) {
        (false, ..) => ListChangeKind::Added,
        (_, false, ..) => ListChangeKind::Left,
        _ if pair.now.is_some_and(|now| now.unit.is_none()) => ListChangeKind::Gone,
        (_, _, true, true) => ListChangeKind::Refitted,
        (_, _, true, false) => ListChangeKind::Grown,
        (_, _, false, true) => ListChangeKind::Shrunk,
        _ if change.points_before != change.points_now => ListChangeKind::Repriced,
        _ => ListChangeKind::Unchanged,
    }
}

/// Options that `b` takes more often than `a`.
fn options_taken_more(a: &Entry, b: &Entry) -> Vec<OptionKey> {
    let more = b
        .options
        .iter()
        .filter(|&(key, &taken)| taken > a.options.get(key).copied().unwrap_or(0));
    more.map(|(key, _)| key.clone()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::samples::{catalogue, draft, list, repriced};

    fn changed(before: &str, now: &str) -> Vec<(String, ListChangeKind)> {
        let (old, new) = (catalogue(), repriced("rushlight-kin", 5));
        let before = list(before);
        let previous = PreviousList {
            list: &before,
            catalogue: &old,
        };
        compare_lists(previous, &list(now), &new)
            .into_iter()
            .map(|change| (change.entry.to_string(), change.kind))
            .collect()
    }

    #[test]
    fn every_unit_is_told_with_what_became_of_it() {
        let before = "a mire-speaker 1, b turf-cutters 8, c turf-cutters 9 mud-sledges, \
                      d rushlight-kin 6, e stilt-waders 5 eel-nets, f fen-trebuchet 4";
        let now = "g turf-cutters 8, e stilt-waders 6, d rushlight-kin 6, c turf-cutters 8, \
                   b turf-cutters 10, a mire-speaker 1";
        assert_eq!(
            changed(before, now),
            [
                ("a".into(), ListChangeKind::Unchanged),
                ("b".into(), ListChangeKind::Grown),
                ("c".into(), ListChangeKind::Shrunk),
                ("d".into(), ListChangeKind::Repriced),
                ("e".into(), ListChangeKind::Refitted),
                ("f".into(), ListChangeKind::Left),
                ("g".into(), ListChangeKind::Added),
            ]
        );
    }

    #[test]
    fn a_unit_that_the_catalogue_no_longer_has_is_told_as_gone() {
        let mut next = draft();
        next.factions[0]
            .units
            .retain(|unit| unit.key != "stilt-waders");
        let (old, new) = (catalogue(), Catalogue::build(&next).unwrap());
        let list = list("a stilt-waders 4, b turf-cutters 8");
        let previous = PreviousList {
            list: &list,
            catalogue: &old,
        };
        let became = compare_lists(previous, &list, &new).into_iter();
        let became: Vec<_> = became.map(|change| change.kind).collect();
        assert_eq!(became, [ListChangeKind::Gone, ListChangeKind::Unchanged]);
    }

    #[test]
    fn another_unit_under_the_same_key_is_another_unit() {
        assert_eq!(
            changed("a turf-cutters 8", "a bog-oak-hulks 2"),
            [
                ("a".into(), ListChangeKind::Left),
                ("a".into(), ListChangeKind::Added)
            ]
        );
    }
}
