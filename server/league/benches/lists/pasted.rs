//! A catalogue of some size, and texts that people could paste.

use league::catalogue::Catalogue;
use league::catalogue::draft::{CatalogueDraft, FactionDraft, OptionDraft, SizeDraft, UnitDraft};
use league::catalogue::key::slug;

const FIRST: [&str; 10] = [
    "Ford", "Quern", "Lantern", "Marsh", "Hedge", "Cinder", "Bobbin", "Ratchet", "Furrow", "Sluice",
];
const SECOND: [&str; 4] = ["Wardens", "Hands", "Runners", "Bearers"];
const KINDS: [&str; 5] = ["leader", "line", "swift", "heavy", "engine"];

/// Three factions of 40 units, each of 5 to 10 models with two options.
pub fn catalogue() -> Catalogue {
    let names = ["Lamplit Ford", "Quernlight Hill", "Thistle Quay"];
    let factions = names.iter().enumerate().map(|(f, name)| FactionDraft {
        key: slug(name),
        name: (*name).into(),
        units: (0..40).map(|i| unit(f, i)).collect(),
    });
    let factions = factions.collect();
    Catalogue::build(&CatalogueDraft { factions }).unwrap()
}

fn unit(faction: usize, i: usize) -> UnitDraft {
    let prefix = ["", "Old ", "New "][faction];
    let name = format!("{prefix}{} {}", FIRST[i / 4], SECOND[i % 4]);
    let option = |name: &str, points| OptionDraft {
        key: slug(name),
        name: name.into(),
        points,
        ..OptionDraft::default()
    };
    UnitDraft {
        key: slug(&name),
        name,
        kind: KINDS[i / 2 % 5].into(),
        keywords: vec![format!("toughness-{}", i % 4 + 1), "on-foot".into()],
        sizes: (5..=10)
            .map(|models| SizeDraft {
                models,
                points: models * 10,
            })
            .collect(),
        options: vec![option("long pennant", 10), option("smoke jars", 12)],
        minutes_per_model: 25,
        ..UnitDraft::default()
    }
}

/// A pasted list: a heading, then units in four ways of writing, with a total at the end.
pub fn text(lines: usize) -> String {
    let mut text = String::from("Lamplit Ford, 2000 points\n");
    for i in 0..lines - 2 {
        let name = format!("{} {}", FIRST[i / 4 % 10], SECOND[i % 4]);
        let line = match i % 4 {
            0 => format!("- {name}, 9 models, long pennant: 100\n"),
            1 => format!("2x {name} (8 models) [160 points]\n"),
            2 => format!("* {} x10 with smoke jars = 112\n", name.to_uppercase()),
            _ => format!("{i}. {name}, size 6\n"),
        };
        text.push_str(&line);
    }
    text.push_str("Total: 2000\n");
    text
}
