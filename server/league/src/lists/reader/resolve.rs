//! Resolution: from what the text says of each unit to entries, and findings where it is wrong.

use std::collections::{BTreeMap, HashMap, HashSet};

use messages::{Message, findings};

use super::mentions::{NumberMention, PartIndex, UnitMention};
use super::scan::ScannedText;
use super::{Certainty, LinePart, Meaning, Reading};
use crate::catalogue::key::UnitKey;
use crate::catalogue::unit::Unit;
use crate::lists::army_list::{ArmyList, Entry, EntryKey, MAX_ENTRIES, MAX_ENTRY_KEY_LENGTH};
use crate::lists::finding::{Finding, Measure};
use crate::lists::line::lines;
use crate::points::Points;

/// How many units of which size a text means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct ResolvedSize {
    units: u32,
    models: u32,
    /// Whether the text says so, by word or by points that fit.
    stated: bool,
}

/// Settles every unit, then holds what the text says of sums against the catalogue.
pub fn resolve(mut scanned: ScannedText<'_>) -> Reading {
    let mut findings = Vec::new();
    let mut entries = Entries::default();
    let mentions = std::mem::take(&mut scanned.units);
    for mention in &mentions {
        let sized = resolve_size(mention);
        let keys = entries.add(mention, sized);
        mark_models(&mut scanned, mention, sized);
        mark_unit(&mut scanned, mention, sized, &keys);
        findings.extend(disagreements(mention, sized, &keys));
    }
    for (mention, keys) in mentions.iter().zip(&entries.keys) {
        join(&mut scanned, &mut entries.list, mention, keys);
    }
    let list = scanned
        .faction
        .and_then(|faction| ArmyList::new(faction.key().clone(), entries.list).ok());
    if let Some(list) = &list {
        findings.extend(wrong_sums(&scanned, list));
    }
    findings.extend(scanned.other_factions.iter().map(|(faction, (line, _))| {
        let message = findings::finding_stated_faction(line + 1, faction);
        Finding::new("list.stated-faction", message)
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
    /// The keys of each mention.
    keys: Vec<Vec<EntryKey>>,
    used: HashSet<EntryKey>,
    counted: HashMap<UnitKey, usize>,
}

impl Entries {
    /// Makes the entries of a mention; none when there would be too many.
    fn add(&mut self, mention: &UnitMention<'_>, sized: ResolvedSize) -> Vec<EntryKey> {
        let units = usize::try_from(sized.units).unwrap_or(usize::MAX);
        let room = MAX_ENTRIES.saturating_sub(self.list.len());
        let mut options = BTreeMap::new();
        for taken in &mention.options {
            let count: &mut u32 = options.entry(taken.option.key.clone()).or_default();
            *count = count.saturating_add(taken.taken);
        }
        let count = if units > room { 0 } else { units };
        let keys: Vec<EntryKey> = (0..count).filter_map(|_| self.key(mention.unit)).collect();
        self.list.extend(keys.iter().map(|key| Entry {
            key: key.clone(),
            unit: mention.unit.key.clone(),
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
            .take(MAX_ENTRY_KEY_LENGTH - 4)
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
fn resolve_size(mention: &UnitMention<'_>) -> ResolvedSize {
    let readings = candidate_sizes(mention);
    let agreeing = readings
        .iter()
        .find(|sized| is_consistent(mention, **sized));
    let smallest = ResolvedSize {
        units: 1,
        models: min_models(mention.unit),
        stated: false,
    };
    match (agreeing, readings.first()) {
        (Some(sized), _) => ResolvedSize {
            stated: true,
            ..*sized
        },
        (None, first) => unoffered_size(mention)
            .or(first.copied())
            .unwrap_or(smallest),
    }
}

/// `x8` with points that eight units cannot cost is one unit of eight, a size that the check will
/// find not to be offered.
fn unoffered_size(mention: &UnitMention<'_>) -> Option<ResolvedSize> {
    let sizes = &mention.unit.sizes;
    let models = mention
        .times
        .xor(mention.before)
        .filter(|_| mention.models.is_none())?;
    let (least, most) = (sizes.first()?, sizes.last()?);
    let stated = mention.numbers.iter().map(|number| number.number).max()?;
    let between = least.models < models && models < most.models;
    (between && stated < least.points.saturating_mul(models).get()).then_some(ResolvedSize {
        units: 1,
        models,
        stated: false,
    })
}

fn min_models(unit: &Unit) -> u32 {
    unit.sizes.first().map_or(1, |size| size.models)
}

/// What the numbers of a unit can mean, the likeliest first.
fn candidate_sizes(mention: &UnitMention<'_>) -> Vec<ResolvedSize> {
    let unit = mention.unit;
    let sized = |units, models, said| ResolvedSize {
        units,
        models,
        stated: said,
    };
    if let Some(models) = mention.models {
        let before = mention.before.filter(|&before| before != models);
        let units = mention.times.or(before).unwrap_or(1);
        let other = before.filter(|&before| before != units);
        let mut readings = vec![sized(units, models, other.is_none())];
        readings.extend(other.map(|units| sized(units, models, false)));
        return readings;
    }
    if let (Some(units), Some(models)) = (mention.times, mention.before) {
        return vec![sized(units, models, true)];
    }
    let offered = |number: u32| number > 1 && unit.points_at(number).is_some();
    let only_size = unit.sizes.len() == 1;
    let mut readings = Vec::new();
    let units = mention.times.or(mention.before).unwrap_or(1);
    let unsure = mention
        .numbers
        .iter()
        .filter(|number| !number.surely_points);
    readings.extend(
        unsure
            .filter(|number| number.option.is_none() && offered(number.number))
            .map(|number| sized(units, number.number, true)),
    );
    if let Some(before) = mention.before.filter(|&before| offered(before)) {
        readings.push(sized(1, before, true));
    }
    readings.push(sized(units, min_models(unit), only_size));
    if let Some(times) = mention.times.filter(|&times| offered(times)) {
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
fn is_consistent(mention: &UnitMention<'_>, sized: ResolvedSize) -> bool {
    let unit_numbers = mention.numbers.iter().filter(|number| {
        !is_models(mention, number, sized) && !is_of_option(mention, number, sized)
    });
    let mut unit_numbers = unit_numbers.peekable();
    unit_numbers.peek().is_some() && unit_numbers.any(|number| is_right(mention, number, sized))
}

/// Points of one or all of these units, with or without options.
fn is_right(mention: &UnitMention<'_>, number: &NumberMention, sized: ResolvedSize) -> bool {
    let Some(body) = mention.unit_points(sized.models) else {
        return false;
    };
    let whole = body + mention.option_points(sized.models);
    let stated = Points::new(number.number);
    [body, whole]
        .into_iter()
        .any(|points| stated == points || stated == points.saturating_mul(sized.units))
}

/// The number is read as the models of the unit.
fn is_models(mention: &UnitMention<'_>, number: &NumberMention, sized: ResolvedSize) -> bool {
    models_number(mention, sized).is_some_and(|models| std::ptr::eq(models, number))
}

/// The first number alone that is the models of the unit; a second one would mean something else.
fn models_number<'g>(
    mention: &'g UnitMention<'_>,
    sized: ResolvedSize,
) -> Option<&'g NumberMention> {
    if mention.models.is_some() || mention.unit.points_at(sized.models).is_none() {
        return None;
    }
    mention.numbers.iter().find(|number| {
        !number.surely_points && number.option.is_none() && number.number == sized.models
    })
}

/// The number is what the option before it costs.
fn is_of_option(mention: &UnitMention<'_>, number: &NumberMention, sized: ResolvedSize) -> bool {
    let option = number.option.and_then(|option| mention.options.get(option));
    option.is_some_and(|taken| {
        let one = taken.option.price.for_models(sized.models);
        let stated = Points::new(number.number);
        let each = one.saturating_mul(taken.taken);
        [one, each, each.saturating_mul(sized.units)].contains(&stated)
    })
}

/// A number alone turned out to be the models.
fn mark_models(scanned: &mut ScannedText<'_>, mention: &UnitMention<'_>, sized: ResolvedSize) {
    let at = models_number(mention, sized).map(|number| number.at);
    if let Some(part) = at.and_then(|at| part(scanned, at))
        && matches!(part.meaning, Meaning::StatedPoints(_))
    {
        part.meaning = Meaning::Models(sized.models);
    }
}

fn mark_unit(
    scanned: &mut ScannedText<'_>,
    mention: &UnitMention<'_>,
    sized: ResolvedSize,
    keys: &[EntryKey],
) {
    let Some(part) = part(scanned, mention.at) else {
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
    } else if !sized.stated {
        part.certainty = part.certainty.max(Certainty::Guessed);
        let others = candidate_sizes(mention)
            .into_iter()
            .filter(|other| (other.units, other.models) != (sized.units, sized.models));
        let mut phrases: Vec<Message> = others
            .map(|other| size_message(mention.unit, other))
            .collect();
        phrases.dedup();
        part.alternatives.extend(phrases.into_iter().take(3));
    }
}

fn size_message(unit: &Unit, sized: ResolvedSize) -> Message {
    match sized.units {
        1 => findings::reading_unit(&unit.name, sized.models),
        units => findings::reading_units(units, &unit.name, sized.models),
    }
}

fn part<'s>(scanned: &'s mut ScannedText<'_>, (line, part): PartIndex) -> Option<&'s mut LinePart> {
    scanned.lines.get_mut(line)?.parts.get_mut(part)
}

/// The remarks on stated points of a unit that are not the catalogue's.
fn disagreements(
    mention: &UnitMention<'_>,
    sized: ResolvedSize,
    keys: &[EntryKey],
) -> Vec<Finding> {
    let wrong = mention.numbers.iter().filter(|number| {
        !is_models(mention, number, sized)
            && !is_of_option(mention, number, sized)
            && !is_right(mention, number, sized)
    });
    let body = mention.unit_points(sized.models).unwrap_or_default();
    let whole = (body + mention.option_points(sized.models)).saturating_mul(sized.units);
    wrong
        .map(|number| {
            let (line, name) = (number.at.0 + 1, &mention.unit.name);
            let message = findings::finding_stated_points(line, number.number, name, whole);
            Finding::new("list.stated-points", message)
                .remark()
                .measured(Measure::Points, whole.get(), number.number)
                .about(&mention.unit.key)
                .entries(keys)
        })
        .collect()
}

/// Lets the first entry of a mention join the first entry of the unit it names.
fn join(
    scanned: &mut ScannedText<'_>,
    list: &mut [Entry],
    mention: &UnitMention<'_>,
    keys: &[EntryKey],
) {
    let Some((host, place)) = mention.joins else {
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
fn wrong_sums(scanned: &ScannedText<'_>, list: &ArmyList) -> Vec<Finding> {
    let lines = lines(list, scanned.catalogue);
    let total: Points = lines.iter().map(|line| line.points).sum();
    let mut findings = Vec::new();
    for (kind, stated, (at, _)) in &scanned.subtotals {
        let of_kind = lines
            .iter()
            .filter(|line| line.unit.is_some_and(|unit| &unit.kind == kind));
        let sum: Points = of_kind.map(|line| line.points).sum();
        if sum != *stated {
            let message = findings::finding_stated_kind_points(at + 1, stated, kind, sum);
            findings.push(
                Finding::new("list.stated-points", message)
                    .remark()
                    .measured(Measure::Points, sum.get(), stated.get())
                    .about(kind),
            );
        }
    }
    for (stated, (at, _)) in scanned.totals.iter().filter(|(stated, _)| *stated != total) {
        let message = findings::finding_stated_total(at + 1, stated, total);
        findings.push(
            Finding::new("list.stated-total", message)
                .remark()
                .measured(Measure::Points, total.get(), stated.get()),
        );
    }
    findings
}
