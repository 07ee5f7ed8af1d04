//! What the catalogue itself demands of every entry, whatever the season's rules say.

use std::collections::BTreeMap;

use crate::catalogue::unit::Unit;
use crate::lists::army_list::Entry;
use crate::lists::facts::{Facts, Line};
use crate::lists::finding::{Finding, Measure};

/// Adds the findings entry by entry, then those about several entries.
pub fn check(facts: &Facts<'_>, findings: &mut Vec<Finding>) {
    if facts.faction.is_none() {
        let faction = facts.list.faction();
        let sentence = format!("The catalogue has no faction \"{faction}\".");
        findings.push(Finding::new("list.unknown-faction", sentence).about(faction));
        return;
    }
    for line in &facts.lines {
        match line.unit {
            None => findings.push(unknown_unit(line.entry)),
            Some(unit) => check_entry(facts, line, unit, findings),
        }
    }
    check_most_per_army(facts, findings);
}

fn unknown_unit(entry: &Entry) -> Finding {
    let sentence = format!("The faction has no unit \"{}\".", entry.unit);
    Finding::new("list.unknown-unit", sentence)
        .about(&entry.unit)
        .entries([&entry.key])
}

fn check_entry(facts: &Facts<'_>, line: &Line<'_>, unit: &Unit, findings: &mut Vec<Finding>) {
    if unit.points_at(line.entry.models).is_none() {
        findings.push(size_not_offered(line.entry, unit));
    }
    check_options(line.entry, unit, findings);
    check_groups(line.entry, unit, findings);
    check_joins(facts, line.entry, unit, findings);
}

fn size_not_offered(entry: &Entry, unit: &Unit) -> Finding {
    let sizes: Vec<String> = unit.sizes.iter().map(|s| s.models.to_string()).collect();
    let sentence = format!(
        "{} cannot have {} models; it comes with {}.",
        unit.name,
        entry.models,
        sizes.join(", ")
    );
    let nearest = unit
        .sizes
        .iter()
        .map(|size| size.models)
        .min_by_key(|models| models.abs_diff(entry.models))
        .unwrap_or_default();
    Finding::new("list.unit-size", sentence)
        .measured(Measure::Models, nearest, entry.models)
        .about(&unit.key)
        .entries([&entry.key])
}

fn check_options(entry: &Entry, unit: &Unit, findings: &mut Vec<Finding>) {
    for (key, &taken) in &entry.options {
        match unit.option(key) {
            None => findings.push(
                Finding::new(
                    "list.unknown-option",
                    format!("{} has no option \"{key}\".", unit.name),
                )
                .about(key)
                .entries([&entry.key]),
            ),
            Some(option) if taken > option.limit => findings.push(
                Finding::new(
                    "list.option-limit",
                    format!(
                        "{} takes {} {taken} times; at most {} allowed.",
                        unit.name, option.name, option.limit
                    ),
                )
                .measured(Measure::Takings, option.limit, taken)
                .about(key)
                .entries([&entry.key]),
            ),
            Some(_) => {}
        }
    }
}

fn check_groups(entry: &Entry, unit: &Unit, findings: &mut Vec<Finding>) {
    let mut groups: BTreeMap<_, Vec<&str>> = BTreeMap::new();
    for key in entry.options.keys() {
        if let Some(option) = unit.option(key)
            && let Some(group) = &option.group
        {
            groups.entry(group).or_default().push(option.name.as_str());
        }
    }
    for (group, names) in groups {
        if names.len() > 1 {
            let sentence = format!("{} may take only one of {}.", unit.name, names.join(", "));
            findings.push(
                Finding::new("list.option-group", sentence)
                    .measured(
                        Measure::Takings,
                        1,
                        u32::try_from(names.len()).unwrap_or(u32::MAX),
                    )
                    .about(group)
                    .entries([&entry.key]),
            );
        }
    }
}

fn check_joins(facts: &Facts<'_>, entry: &Entry, unit: &Unit, findings: &mut Vec<Finding>) {
    let Some(joined) = &entry.joins else { return };
    let host = facts.lines.iter().find(|line| &line.entry.key == joined);
    let allowed = unit.joins.as_ref().is_some_and(|keyword| {
        host.and_then(|line| line.unit)
            .is_some_and(|host| host.has(keyword))
    });
    if !allowed {
        let host_name = host.map_or(joined.as_str(), Line::name);
        let sentence = match &unit.joins {
            None => format!("{} joins no unit, so not {host_name} either.", unit.name),
            Some(keyword) => format!(
                "{} joins units with the keyword {} only; {host_name} has it not.",
                unit.name,
                keyword.words()
            ),
        };
        findings.push(
            Finding::new("list.joins", sentence)
                .about(&unit.key)
                .entries([&entry.key, joined]),
        );
    }
}

fn check_most_per_army(facts: &Facts<'_>, findings: &mut Vec<Finding>) {
    for (i, line) in facts.lines.iter().enumerate() {
        let Some((unit, most)) = line.unit.and_then(|unit| Some((unit, unit.most_per_army?)))
        else {
            continue;
        };
        let same = |other: &&Line<'_>| other.entry.unit == unit.key;
        if facts.lines.iter().take(i).any(|other| same(&other)) {
            continue;
        }
        let copies: Vec<_> = facts.lines.iter().filter(same).collect();
        let count = u32::try_from(copies.len()).unwrap_or(u32::MAX);
        if count > most {
            let sentence = format!(
                "{} is there {count} times; its army may have it {most} times.",
                unit.name
            );
            findings.push(
                Finding::new("list.most-per-army", sentence)
                    .measured(Measure::Units, most, count)
                    .about(&unit.key)
                    .entries(copies.iter().map(|line| &line.entry.key)),
            );
        }
    }
}
