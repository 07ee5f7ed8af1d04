//! Rules of the catalogue: what it demands of every entry, whatever the season's list rules say.

use std::collections::BTreeMap;

use messages::{Value, findings, values};

use crate::catalogue::unit::Unit;
use crate::lists::army_list::Entry;
use crate::lists::finding::{Finding, Measure};
use crate::lists::line::ListLine;
use crate::lists::list_facts::ListFacts;

/// Adds the findings entry by entry, then those about several entries.
pub fn check(facts: &ListFacts<'_>, findings: &mut Vec<Finding>) {
    if facts.faction.is_none() {
        let faction = facts.list.faction();
        let message = findings::finding_unknown_faction(faction);
        findings.push(Finding::new("list.unknown-faction", message).about(faction));
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
    let message = findings::finding_unknown_unit(&entry.unit);
    Finding::new("list.unknown-unit", message)
        .about(&entry.unit)
        .entries([&entry.key])
}

fn check_entry(
    facts: &ListFacts<'_>,
    line: &ListLine<'_>,
    unit: &Unit,
    findings: &mut Vec<Finding>,
) {
    if unit.points_at(line.entry.models).is_none() {
        findings.push(size_not_offered(line.entry, unit));
    }
    check_options(line.entry, unit, findings);
    check_groups(line.entry, unit, findings);
    check_joins(facts, line.entry, unit, findings);
}

fn size_not_offered(entry: &Entry, unit: &Unit) -> Finding {
    let sizes = Value::joined(unit.sizes.iter().map(|size| size.models), values::comma);
    let message = findings::finding_unit_size(&unit.name, entry.models, sizes);
    let nearest = unit
        .sizes
        .iter()
        .map(|size| size.models)
        .min_by_key(|models| models.abs_diff(entry.models))
        .unwrap_or_default();
    Finding::new("list.unit-size", message)
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
                    findings::finding_unknown_option(&unit.name, key),
                )
                .about(key)
                .entries([&entry.key]),
            ),
            Some(option) if taken > option.limit => findings.push(
                Finding::new(
                    "list.option-limit",
                    findings::finding_option_limit(&unit.name, &option.name, taken, option.limit),
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
            let options = Value::joined(names.iter().copied(), values::comma);
            let message = findings::finding_option_group(&unit.name, options);
            findings.push(
                Finding::new("list.option-group", message)
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

fn check_joins(facts: &ListFacts<'_>, entry: &Entry, unit: &Unit, findings: &mut Vec<Finding>) {
    let Some(joined) = &entry.joins else { return };
    let host = facts.lines.iter().find(|line| &line.entry.key == joined);
    let allowed = unit.joins.as_ref().is_some_and(|keyword| {
        host.and_then(|line| line.unit)
            .is_some_and(|host| host.has_keyword(keyword))
    });
    if !allowed {
        let host_name = host.map_or(joined.as_str(), ListLine::name);
        let message = match &unit.joins {
            None => findings::finding_joins_nobody(&unit.name, host_name),
            Some(keyword) => findings::finding_joins_others(&unit.name, keyword, host_name),
        };
        findings.push(
            Finding::new("list.joins", message)
                .about(&unit.key)
                .entries([&entry.key, joined]),
        );
    }
}

fn check_most_per_army(facts: &ListFacts<'_>, findings: &mut Vec<Finding>) {
    for (i, line) in facts.lines.iter().enumerate() {
        let Some((unit, most)) = line.unit.and_then(|unit| Some((unit, unit.most_per_army?)))
        else {
            continue;
        };
        let same = |other: &&ListLine<'_>| other.entry.unit == unit.key;
        if facts.lines.iter().take(i).any(|other| same(&other)) {
            continue;
        }
        let copies: Vec<_> = facts.lines.iter().filter(same).collect();
        let count = u32::try_from(copies.len()).unwrap_or(u32::MAX);
        if count > most {
            let message = findings::finding_most_per_army(&unit.name, count, most);
            findings.push(
                Finding::new("list.most-per-army", message)
                    .measured(Measure::Units, most, count)
                    .about(&unit.key)
                    .entries(copies.iter().map(|line| &line.entry.key)),
            );
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::lists::check::check;
    use crate::lists::samples::{catalogue, entries, list, list_of, numbers, terms};

    fn found(now: &str) -> Vec<(String, Vec<String>)> {
        let report = check(&list(now), &catalogue(), &terms(2000, &[]));
        let found = report.findings.iter().map(|finding| {
            let entries = entries(finding).into_iter().map(String::from);
            (finding.code.to_string(), entries.collect())
        });
        found.collect()
    }

    fn expected(code: &str, entries: &[&str]) -> (String, Vec<String>) {
        let entries = entries.iter().map(ToString::to_string).collect();
        (code.into(), entries)
    }

    #[test]
    fn a_list_of_the_catalogue_has_no_findings() {
        let now = "a mire-speaker 1 reed-mask >b, b turf-cutters 8 long-spades mud-sledges";
        assert_eq!(found(now), []);
    }

    #[test]
    fn everything_the_catalogue_does_not_offer_is_told_at_once() {
        let now = "a turf-cutters 7, b pole-hands 8, c stilt-waders 4 eel-nets*2 pennant, \
                   d turf-cutters 8 long-spades short-spades, e mire-speaker 1 >c, \
                   f mire-speaker 1, g sump-midwife 1 >d";
        assert_eq!(
            found(now),
            [
                expected("list.unit-size", &["a"]),
                expected("list.unknown-unit", &["b"]),
                expected("list.option-limit", &["c"]),
                expected("list.unknown-option", &["c"]),
                expected("list.option-group", &["d"]),
                expected("list.joins", &["e", "c"]),
                expected("list.joins", &["g", "d"]),
                expected("list.most-per-army", &["e", "f"]),
            ]
        );
    }

    #[test]
    fn a_size_that_is_not_offered_names_the_nearest_one_and_still_costs_points() {
        let check = |now| check(&list(now), &catalogue(), &terms(2000, &[]));
        let small = check("a turf-cutters 7");
        assert_eq!(numbers(&small.findings), [("list.unit-size", 8, 7)]);
        assert_eq!(small.total.get(), 56);
        let large = check("a turf-cutters 20");
        assert_eq!(numbers(&large.findings), [("list.unit-size", 16, 20)]);
        assert_eq!(large.total.get(), 112);
    }

    #[test]
    fn an_unknown_faction_is_told_once() {
        let report = check(
            &list_of("nobody", "a b 1, c d 1"),
            &catalogue(),
            &terms(10, &[]),
        );
        assert_eq!(numbers(&report.findings), [("list.unknown-faction", 0, 0)]);
    }

    #[test]
    fn options_cost_per_unit_or_per_model() {
        let now = "a turf-cutters 10 mud-sledges long-spades";
        let report = check(&list(now), &catalogue(), &terms(87, &[]));
        assert_eq!(report.total.get(), 70 + 8 + 10);
        assert_eq!(report.left.get(), 0);
        assert_eq!(numbers(&report.findings), [("list.over-cap", 87, 88)]);
        assert_eq!(
            report.findings[0].message().to_string(),
            "The list has 88 points, 1 over the cap of 87."
        );
        assert!(!report.is_accepted());
    }
}
