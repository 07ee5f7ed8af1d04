//! Any text is read: no panic, no loss, and the check takes what comes of it.
#![no_main]

use std::sync::LazyLock;

use document::catalogue::CatalogueDocument;
use league::catalogue::Catalogue;
use league::lists::reader::parse;
use league::lists::{Terms, check};
use league::points::Points;
use league::week::WeekNo;
use libfuzzer_sys::fuzz_target;

static CATALOGUE: LazyLock<Catalogue> = LazyLock::new(|| {
    let text = include_str!("../../../demo/catalogue.json");
    let document: CatalogueDocument = serde_json::from_str(text).unwrap();
    document.try_into().unwrap()
});

fuzz_target!(|text: &str| {
    let faction = CATALOGUE.factions()[0].key();
    for wanted in [None, Some(faction)] {
        let reading = parse(text, &CATALOGUE, wanted);
        assert!(
            reading
                .lines
                .iter()
                .map(|line| line.text.as_str())
                .eq(text.lines())
        );
        for line in &reading.lines {
            let says_something = line.text.chars().any(char::is_alphanumeric);
            assert_eq!(says_something, !line.parts.is_empty());
        }
        if let Some(list) = reading.list {
            let terms = Terms {
                week: WeekNo::FIRST,
                cap: Points::new(500),
                rules: &[],
                faction: wanted,
                previous: None,
                painted: None,
            };
            check(&list, &CATALOGUE, &terms);
        }
    }
});
