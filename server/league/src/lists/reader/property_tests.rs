//! Property tests of the parser: what holds for every text.

use std::collections::BTreeMap;

use proptest::prelude::*;

use super::name_index::normalize_name;
use super::segment::Segment;
use super::*;
use crate::catalogue::unit::Unit;
use crate::lists::army_list::Entry;
use crate::lists::line::entry_points;
use crate::lists::samples::catalogue;

/// Bits of lists and of nonsense, glued together in any order.
fn scraps() -> impl Strategy<Value = String> {
    let scrap = prop::sample::select(vec![
        "Turf Cutters",
        "turf",
        "Mire Speaker",
        "HULKS",
        "mud sledges",
        "Sodwether Moot",
        "Leader",
        "line",
        "joins",
        "total",
        "cap",
        "models",
        "points",
        "pts",
        "2x",
        "x3",
        "10",
        "0",
        "4294967295",
        "99999999999999999999",
        "1,250",
        "1.000,00",
        "Punkte",
        ",",
        ":",
        "(",
        ")",
        " - ",
        "+",
        ".",
        "1. ",
        "\n",
        "\r\n",
        "\t",
        " ",
        "&",
        " and ",
        "with",
        " w/ ",
        " leads ",
        " of oak ",
        "12.5",
        "Orchard Levy",
        " 6 models ",
        "é",
        "’",
        "½",
        "漢",
        "\u{301}",
        "\u{202e}",
        "🐗",
    ]);
    proptest::collection::vec(scrap, 0..60).prop_map(|scraps| scraps.join(""))
}

fn nothing_is_lost(text: &str) -> Result<(), TestCaseError> {
    let moot = FactionKey::new("sodwether-moot").unwrap();
    for faction in [None, Some(&moot)] {
        let reading = parse(text, &catalogue(), faction);
        let lines: Vec<&str> = reading
            .lines
            .iter()
            .map(|line| line.text.as_str())
            .collect();
        prop_assert_eq!(lines, text.lines().collect::<Vec<_>>());
        for line in &reading.lines {
            let says_something = line.text.chars().any(char::is_alphanumeric);
            prop_assert_eq!(says_something, !line.parts.is_empty(), "{:?}", line);
            for part in &line.parts {
                prop_assert!(line.text.contains(&part.text), "{:?}", line);
                let nothing = part.meaning == Meaning::Nothing;
                prop_assert!(!nothing || part.certainty == Certainty::NotUnderstood);
            }
            every_word_is_told(line)?;
        }
    }
    Ok(())
}

/// Every word stands in some part, and no part with a name has words beside those of the name.
fn every_word_is_told(line: &ReadLine) -> Result<(), TestCaseError> {
    let words = line.text.split(|c: char| !c.is_alphanumeric());
    for word in words.filter(|word| word.contains(char::is_alphabetic)) {
        let reported = line.parts.iter().any(|part| part.text.contains(word));
        prop_assert!(reported, "{word} of {line:?}");
    }
    for part in line
        .parts
        .iter()
        .filter(|part| part.certainty != Certainty::NotUnderstood)
    {
        let (Meaning::Unit { name, .. } | Meaning::Option { name, .. }) = &part.meaning else {
            continue;
        };
        let typed = Segment::parse(&part.text).name;
        prop_assert!(
            typed.len() <= normalize_name(name).len() + 3,
            "{typed} for {name}"
        );
    }
    Ok(())
}

/// An entry of the sample faction that the catalogue offers.
fn entry() -> impl Strategy<Value = Entry> {
    (0_usize..8, 0_usize..9, any::<bool>()).prop_map(|(unit, size, optioned)| {
        let catalogue = catalogue();
        let unit = &catalogue.factions()[0].units()[unit];
        let option = unit.options[0].key.clone();
        let options: BTreeMap<_, _> = [(option, 1)].into();
        Entry {
            key: EntryKey::new("x").unwrap(),
            unit: unit.key.clone(),
            models: unit.sizes[size % unit.sizes.len()].models,
            options: if optioned { options } else { [].into() },
            joins: None,
        }
    })
}

/// An entry as a line in one of our ways of writing it.
fn written(entry: &Entry, unit: &Unit, way: usize) -> String {
    let options: Vec<&str> = entry
        .options
        .keys()
        .map(|key| unit.option(key).unwrap().name.as_str())
        .collect();
    let (name, models, points) = (&unit.name, entry.models, entry_points(entry, unit));
    let listed = options
        .iter()
        .map(|option| format!(", {option}"))
        .collect::<String>();
    let below = options
        .iter()
        .map(|option| format!("\n   * {option}"))
        .collect::<String>();
    match way {
        0 => format!("1x {name}, {models} models{listed}: {points}"),
        1 => format!(
            "- {} ({models} models) [{points} pts]{below}",
            name.as_str().to_uppercase()
        ),
        2 => format!(
            "3) {name}; size {models}; {}; = {points}",
            options.join(" + ")
        ),
        _ => format!("• {name} {points} points{listed} ({models} models)"),
    }
}

proptest! {
    #[test]
    fn any_bytes_are_read_without_a_loss(bytes in proptest::collection::vec(any::<u8>(), 0..600)) {
        nothing_is_lost(&String::from_utf8_lossy(&bytes))?;
    }

    #[test]
    fn any_characters_are_read_without_a_loss(text in "\\PC{0,80}(\n\\PC{0,80}){0,6}") {
        nothing_is_lost(&text)?;
    }

    #[test]
    fn any_scraps_of_lists_are_read_without_a_loss(text in scraps()) {
        nothing_is_lost(&text)?;
    }

    #[test]
    fn a_list_written_out_is_read_back_the_same(
        entries in proptest::collection::vec((entry(), 0_usize..4), 1..12),
    ) {
        let catalogue = catalogue();
        let moot = &catalogue.factions()[0];
        let lines = entries
            .iter()
            .map(|(entry, way)| written(entry, moot.unit(&entry.unit).unwrap(), *way));
        let text: Vec<String> = lines.collect();
        let reading = parse(&text.join("\n"), &catalogue, Some(moot.key()));
        let list = reading.list.unwrap();
        let bare = |entry: &Entry| (entry.unit.clone(), entry.models, entry.options.clone());
        let read: Vec<_> = list.entries().iter().map(bare).collect();
        let meant: Vec<_> = entries.iter().map(|(entry, _)| bare(entry)).collect();
        prop_assert_eq!(read, meant);
        prop_assert_eq!(reading.findings, vec![]);
        for line in &reading.lines {
            prop_assert_eq!(line.certainty(), Certainty::Understood, "{:?}", line);
        }
    }
}
