//! Tests of the parser: whatever a line says beside what was understood is reported.

use super::*;
use crate::lists::samples::{catalogue, numbers};

fn reading(text: &str) -> Reading {
    let moot = FactionKey::new("sodwether-moot").unwrap();
    parse(text, &catalogue(), Some(&moot))
}

/// The parts that were not understood.
fn leftovers(reading: &Reading) -> Vec<&str> {
    let parts = reading.lines.iter().flat_map(|line| &line.parts);
    parts
        .filter(|part| part.certainty == Certainty::NotUnderstood)
        .map(|part| part.text.as_str())
        .collect()
}

/// The entries as "unit models option*taken".
fn entries(reading: &Reading) -> Vec<String> {
    let list = reading.list.as_ref().unwrap();
    let described = list.entries().iter().map(|entry| {
        let options = entry
            .options
            .iter()
            .map(|(key, taken)| format!(" {key}*{taken}"));
        format!(
            "{} {}{}",
            entry.unit,
            entry.models,
            options.collect::<String>()
        )
    });
    described.collect()
}

#[test]
fn options_and_models_are_read_without_marks_between_them() {
    for text in [
        "2x Rushlight Kin 6 models w/ marsh gas",
        "2x Rushlight Kin 6 models with marsh gas",
        "2x 6 Rushlight Kin and marsh gas",
        "2 6 rushlight kin mit marsh gas",
    ] {
        let reading = reading(text);
        assert_eq!(
            entries(&reading),
            ["rushlight-kin 6 marsh-gas*1"; 2],
            "{text}"
        );
        assert_eq!(leftovers(&reading), [""; 0], "{text}");
    }
}

#[test]
fn words_beside_a_name_are_told() {
    for (text, left) in [
        ("Turf Cutters of the Ford", vec!["of the Ford"]),
        ("8 Turf Cutters with banner", vec!["banner"]),
        ("1000000000000 Turf Cutters", vec!["1000000000000"]),
        ("grim Turf Cutters, 8 models", vec!["grim"]),
        ("Turf Cutters 8 models 12.5 points", vec!["12.5"]),
        ("Turf Cutters, 8 models, 9 models", vec!["9 models"]),
        ("Turf Cutters, mud sledges of oak", vec!["of oak"]),
        ("Total of evil 56", vec!["evil"]),
        ("Total 56 of 300 or 400", vec!["or", "400"]),
    ] {
        assert_eq!(leftovers(&reading(text)), left, "{text}");
    }
}

#[test]
fn one_unit_leads_another() {
    let reading = reading("Turf Cutters 8\nMire Speaker leads Turf Cutters");
    let list = reading.list.as_ref().unwrap();
    let joined = list.entries()[1].joins.as_ref().map(EntryKey::as_str);
    assert_eq!(joined, Some("turf-cutters-1"));
    assert_eq!(leftovers(&reading), [""; 0]);
}

#[test]
fn a_unit_of_another_faction_is_told_as_such() {
    let reading = reading("Turf Cutters 8\n3x Orchard Levy\nmud sledges");
    let foreign = Meaning::ForeignUnit {
        faction: FactionKey::new("bramblestile-steadings").unwrap(),
        name: "Orchard Levy".into(),
    };
    assert_eq!(reading.lines[1].parts[0].meaning, foreign);
    assert_eq!(entries(&reading), ["turf-cutters 8"]);
    assert_eq!(leftovers(&reading), ["3x Orchard Levy", "mud sledges"]);
}

#[test]
fn points_that_many_units_cannot_cost_are_those_of_one_unit() {
    let reading = reading("Bog-Oak Hulks x3, root armour: 155 pts");
    assert_eq!(entries(&reading), ["bog-oak-hulks 3 root-armour*1"]);
    let reading = self::reading("Turf Cutters x9, mud sledges: 88 pts");
    assert_eq!(entries(&reading), ["turf-cutters 9 mud-sledges*1"]);
    assert_eq!(numbers(&reading.findings), [("list.stated-points", 71, 88)]);
}

#[test]
fn a_number_is_the_models_or_the_points_and_not_both() {
    let reading = reading("Trf Cutters (9)\nTurf Cutters (8): 8");
    let last = reading.lines[0].parts.last();
    assert_eq!(last.map(|part| &part.meaning), Some(&Meaning::Models(9)));
    assert_eq!(numbers(&reading.findings), [("list.stated-points", 56, 8)]);
}
