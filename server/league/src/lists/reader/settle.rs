//! From what the text says of each unit to entries, and what it says wrongly.

use std::collections::{BTreeMap, HashMap, HashSet};

use super::group::{Group, Number, Place};
use super::scan::Scanned;
use super::{Certainty, Meaning, Part, Reading};
use crate::catalogue::key::UnitKey;
use crate::catalogue::unit::Unit;
use crate::lists::army_list::{ArmyList, Entry, EntryKey, LONGEST_ENTRY_KEY, MOST_ENTRIES};
use crate::lists::facts::lines;
use crate::lists::finding::{Finding, Measure};
use crate::points::Points;

/// How many units of which size a text means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Sized {
    units: u32,
    models: u32,
    /// Whether the text says so, by word or by points that fit.
    said: bool,
}

/// Settles every unit, then holds what the text says of sums against the catalogue.
pub fn settle(mut scanned: Scanned<'_>) -> Reading {
    let mut findings = Vec::new();
    let mut entries = Entries::default();
    let groups = std::mem::take(&mut scanned.groups);
    for group in &groups {
        let sized = size(group);
        let keys = entries.add(group, sized);
        mark_models(&mut scanned, group, sized);
        mark_unit(&mut scanned, group, sized, &keys);
        findings.extend(disagreements(group, sized, &keys));
    }
    for (group, keys) in groups.iter().zip(&entries.keys) {
        join(&mut scanned, &mut entries.list, group, keys);
    }
    let list = scanned
        .faction
        .and_then(|faction| ArmyList::new(faction.key().clone(), entries.list).ok());
    if let Some(list) = &list {
        findings.extend(wrong_sums(&scanned, list));
    }
    findings.extend(scanned.other_factions.iter().map(|(faction, (line, _))| {
        let sentence = format!("Line {} names the faction \"{faction}\".", line + 1);
        Finding::new("list.stated-faction", sentence)
            .remark()
            .about(faction)
    }));
    Reading {
        lines: scanned.lines,
        list,
        findings,
    }
}

/// The entries made so far.
#[derive(Default)]
struct Entries {
    list: Vec<Entry>,
    /// The keys of each group.
    keys: Vec<Vec<EntryKey>>,
    used: HashSet<EntryKey>,
    counted: HashMap<UnitKey, usize>,
}

impl Entries {
    /// Makes the entries of a group; none when there would be too many.
    fn add(&mut self, group: &Group<'_>, sized: Sized) -> Vec<EntryKey> {
        let units = usize::try_from(sized.units).unwrap_or(usize::MAX);
        let room = MOST_ENTRIES.saturating_sub(self.list.len());
        let mut options = BTreeMap::new();
        for taken in &group.options {
            let count: &mut u32 = options.entry(taken.option.key.clone()).or_default();
            *count = count.saturating_add(taken.taken);
        }
        let count = if units > room { 0 } else { units };
        let keys: Vec<EntryKey> = (0..count).filter_map(|_| self.key(group.unit)).collect();
        self.list.extend(keys.iter().map(|key| Entry {
            key: key.clone(),
            unit: group.unit.key.clone(),
            models: sized.models,
            options: options.clone(),
            joins: None,
        }));
        self.keys.push(keys.clone());
        keys
    }

    /// `turf-cutters-1`, `turf-cutters-2`: the same text gives the same keys.
    fn key(&mut self, unit: &Unit) -> Option<EntryKey> {
        let stem: String = unit
            .key
            .as_str()
            .chars()
            .take(LONGEST_ENTRY_KEY - 4)
            .collect();
        let number = self.counted.entry(unit.key.clone()).or_default();
        loop {
            *number += 1;
            let key = EntryKey::new(&format!("{stem}-{number}")).ok()?;
            if self.used.insert(key.clone()) {
                return Some(key);
            }
        }
    }
}

/// The first reading of the numbers that agrees with the points the text states; without such,
/// the first reading.
fn size(group: &Group<'_>) -> Sized {
    let readings = readings(group);
    let agreeing = readings.iter().find(|sized| agrees(group, **sized));
    let smallest = Sized {
        units: 1,
        models: smallest(group.unit),
        said: false,
    };
    match (agreeing, readings.first()) {
        (Some(sized), _) => Sized {
            said: true,
            ..*sized
        },
        (None, first) => unoffered(group).or(first.copied()).unwrap_or(smallest),
    }
}

/// `x8` with points that eight units cannot cost is one unit of eight, a size that the check will
/// find not to be offered.
fn unoffered(group: &Group<'_>) -> Option<Sized> {
    let sizes = &group.unit.sizes;
    let models = group
        .times
        .xor(group.before)
        .filter(|_| group.models.is_none())?;
    let (least, most) = (sizes.first()?, sizes.last()?);
    let stated = group.numbers.iter().map(|number| number.number).max()?;
    let between = least.models < models && models < most.models;
    (between && stated < least.points.times(models).get()).then_some(Sized {
        units: 1,
        models,
        said: false,
    })
}

fn smallest(unit: &Unit) -> u32 {
    unit.sizes.first().map_or(1, |size| size.models)
}

/// What the numbers of a unit can mean, the likeliest first.
fn readings(group: &Group<'_>) -> Vec<Sized> {
    let unit = group.unit;
    let sized = |units, models, said| Sized {
        units,
        models,
        said,
    };
    if let Some(models) = group.models {
        let before = group.before.filter(|&before| before != models);
        let units = group.times.or(before).unwrap_or(1);
        let other = before.filter(|&before| before != units);
        let mut readings = vec![sized(units, models, other.is_none())];
        readings.extend(other.map(|units| sized(units, models, false)));
        return readings;
    }
    if let (Some(units), Some(models)) = (group.times, group.before) {
        return vec![sized(units, models, true)];
    }
    let offered = |number: u32| number > 1 && unit.points_at(number).is_some();
    let only_size = unit.sizes.len() == 1;
    let mut readings = Vec::new();
    let units = group.times.or(group.before).unwrap_or(1);
    let unsure = group.numbers.iter().filter(|number| !number.surely_points);
    readings.extend(
        unsure
            .filter(|number| number.option.is_none() && offered(number.number))
            .map(|number| sized(units, number.number, true)),
    );
    if let Some(before) = group.before.filter(|&before| offered(before)) {
        readings.push(sized(1, before, true));
    }
    readings.push(sized(units, smallest(unit), only_size));
    if let Some(times) = group.times.filter(|&times| offered(times)) {
        readings.push(sized(1, times, false));
    }
    readings.extend(
        unit.sizes
            .iter()
            .map(|size| sized(units, size.models, false)),
    );
    readings
}

/// Whether some points the text states are those of this reading.
fn agrees(group: &Group<'_>, sized: Sized) -> bool {
    let unit_numbers = group
        .numbers
        .iter()
        .filter(|number| !is_models(group, number, sized) && !is_of_option(group, number, sized));
    let mut unit_numbers = unit_numbers.peekable();
    unit_numbers.peek().is_some() && unit_numbers.any(|number| is_right(group, number, sized))
}

/// Points of one or all of these units, with or without options.
fn is_right(group: &Group<'_>, number: &Number, sized: Sized) -> bool {
    let Some(body) = group.body(sized.models) else {
        return false;
    };
    let whole = body + group.option_points(sized.models);
    let stated = Points::new(number.number);
    [body, whole]
        .into_iter()
        .any(|points| stated == points || stated == points.times(sized.units))
}

/// The number is read as the models of the unit.
fn is_models(group: &Group<'_>, number: &Number, sized: Sized) -> bool {
    models_number(group, sized).is_some_and(|models| std::ptr::eq(models, number))
}

/// The first number alone that is the models of the unit; a second one is not said of them again.
fn models_number<'g>(group: &'g Group<'_>, sized: Sized) -> Option<&'g Number> {
    if group.models.is_some() || group.unit.points_at(sized.models).is_none() {
        return None;
    }
    group.numbers.iter().find(|number| {
        !number.surely_points && number.option.is_none() && number.number == sized.models
    })
}

/// The number is what the option before it costs.
fn is_of_option(group: &Group<'_>, number: &Number, sized: Sized) -> bool {
    let option = number.option.and_then(|option| group.options.get(option));
    option.is_some_and(|taken| {
        let one = taken.option.price.for_models(sized.models);
        let stated = Points::new(number.number);
        let each = one.times(taken.taken);
        [one, each, each.times(sized.units)].contains(&stated)
    })
}

/// A number alone turned out to be the models.
fn mark_models(scanned: &mut Scanned<'_>, group: &Group<'_>, sized: Sized) {
    let at = models_number(group, sized).map(|number| number.at);
    if let Some(part) = at.and_then(|at| part(scanned, at))
        && matches!(part.meaning, Meaning::StatedPoints(_))
    {
        part.meaning = Meaning::Models(sized.models);
    }
}

fn mark_unit(scanned: &mut Scanned<'_>, group: &Group<'_>, sized: Sized, keys: &[EntryKey]) {
    let Some(part) = part(scanned, group.at) else {
        return;
    };
    if let Meaning::Unit {
        models, entries, ..
    } = &mut part.meaning
    {
        *models = sized.models;
        *entries = keys.to_vec();
    }
    if keys.is_empty() {
        part.certainty = Certainty::NotUnderstood;
    } else if !sized.said {
        part.certainty = part.certainty.max(Certainty::Guessed);
        let others = readings(group)
            .into_iter()
            .filter(|other| (other.units, other.models) != (sized.units, sized.models));
        let mut told: Vec<String> = others.map(|other| told(group.unit, other)).collect();
        told.dedup();
        part.alternatives.extend(told.into_iter().take(3));
    }
}

fn told(unit: &Unit, sized: Sized) -> String {
    let models = if sized.models == 1 { "model" } else { "models" };
    match sized.units {
        1 => format!("{}, {} {models}", unit.name, sized.models),
        units => format!("{units}x {}, {} {models}", unit.name, sized.models),
    }
}

fn part<'s>(scanned: &'s mut Scanned<'_>, (line, part): Place) -> Option<&'s mut Part> {
    scanned.lines.get_mut(line)?.parts.get_mut(part)
}

/// The remarks on stated points of a unit that are not the catalogue's.
fn disagreements(group: &Group<'_>, sized: Sized, keys: &[EntryKey]) -> Vec<Finding> {
    let wrong = group.numbers.iter().filter(|number| {
        !is_models(group, number, sized)
            && !is_of_option(group, number, sized)
            && !is_right(group, number, sized)
    });
    let body = group.body(sized.models).unwrap_or_default();
    let whole = (body + group.option_points(sized.models)).times(sized.units);
    wrong
        .map(|number| {
            let sentence = format!(
                "Line {} says {} points for {}; the catalogue says {whole}.",
                number.at.0 + 1,
                number.number,
                group.unit.name
            );
            Finding::new("list.stated-points", sentence)
                .remark()
                .measured(Measure::Points, whole.get(), number.number)
                .about(&group.unit.key)
                .entries(keys)
        })
        .collect()
}

/// Lets the first entry of a group join the first entry of the unit it names.
fn join(scanned: &mut Scanned<'_>, list: &mut [Entry], group: &Group<'_>, keys: &[EntryKey]) {
    let Some((host, place)) = group.joins else {
        return;
    };
    let joined = list
        .iter()
        .find(|entry| entry.unit == host.key && !keys.contains(&entry.key))
        .map(|entry| entry.key.clone());
    let leader = list
        .iter_mut()
        .find(|entry| keys.first() == Some(&entry.key));
    match (leader, joined) {
        (Some(leader), Some(joined)) => leader.joins = Some(joined),
        _ => {
            if let Some(part) = part(scanned, place) {
                part.certainty = Certainty::NotUnderstood;
            }
        }
    }
}

/// The remarks on stated sums that are not the list's.
fn wrong_sums(scanned: &Scanned<'_>, list: &ArmyList) -> Vec<Finding> {
    let lines = lines(list, scanned.catalogue);
    let total: Points = lines.iter().map(|line| line.points).sum();
    let mut findings = Vec::new();
    for (kind, stated, (at, _)) in &scanned.subtotals {
        let of_kind = lines
            .iter()
            .filter(|line| line.unit.is_some_and(|unit| &unit.kind == kind));
        let sum: Points = of_kind.map(|line| line.points).sum();
        if sum != *stated {
            let sentence = format!(
                "Line {} says {stated} points for the kind {}; the catalogue says {sum}.",
                at + 1,
                kind.words()
            );
            findings.push(
                Finding::new("list.stated-points", sentence)
                    .remark()
                    .measured(Measure::Points, sum.get(), stated.get())
                    .about(kind),
            );
        }
    }
    for (stated, (at, _)) in scanned.totals.iter().filter(|(stated, _)| *stated != total) {
        let sentence = format!(
            "Line {} says {stated} points in all; what was read has {total}.",
            at + 1
        );
        findings.push(
            Finding::new("list.stated-total", sentence)
                .remark()
                .measured(Measure::Points, total.get(), stated.get()),
        );
    }
    findings
}
