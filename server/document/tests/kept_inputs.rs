//! Inputs that a fuzzer found worth keeping (`tests/fuzz`) are read by every test run.

#![allow(clippy::unwrap_used, clippy::panic, reason = "tests may fail loudly")]

use std::fs;
use std::path::Path;

use document::catalogue::CatalogueDocument;
use document::csv::catalogue::read_catalogue_csv;
use league::catalogue::Catalogue;
use league::lists::reader::parse;

#[test]
fn kept_texts_are_read_line_by_line_without_a_loss() {
    let demo = include_str!("../../../demo/catalogue.json");
    let demo: CatalogueDocument = serde_json::from_str(demo).unwrap();
    let demo = Catalogue::try_from(demo).unwrap();
    for (name, bytes) in kept("read_list") {
        let text = String::from_utf8(bytes).unwrap();
        for faction in [None, Some(demo.factions()[0].key())] {
            let reading = parse(&text, &demo, faction);
            let lines = reading.lines.iter().map(|line| line.text.as_str());
            assert!(lines.eq(text.lines()), "{name}");
        }
    }
}

#[test]
fn kept_tables_are_a_catalogue_or_a_list_of_faults() {
    for (name, bytes) in kept("catalogue_csv") {
        match read_catalogue_csv(&bytes) {
            Ok(catalogue) => assert_eq!(written_and_read(&catalogue), catalogue, "{name}"),
            Err(faults) => assert!(faults.iter().all(|fault| fault.row >= 1), "{name}"),
        }
    }
}

#[test]
fn kept_documents_are_a_catalogue_or_a_list_of_faults() {
    for (name, bytes) in kept("catalogue_json") {
        let Ok(document) = serde_json::from_slice::<CatalogueDocument>(&bytes) else {
            continue;
        };
        match Catalogue::try_from(document) {
            Ok(catalogue) => assert_eq!(written_and_read(&catalogue), catalogue, "{name}"),
            Err(faults) => assert!(!faults.is_empty(), "{name}"),
        }
    }
}

fn written_and_read(catalogue: &Catalogue) -> Catalogue {
    CatalogueDocument::from(catalogue).try_into().unwrap()
}

/// Name and bytes of every input that is kept for a target.
fn kept(target: &str) -> Vec<(String, Vec<u8>)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../tests/fuzz/corpus")
        .join(target);
    let files = fs::read_dir(folder).unwrap().map(|file| {
        let path = file.unwrap().path();
        (path.display().to_string(), fs::read(path).unwrap())
    });
    let files: Vec<_> = files.collect();
    assert!(!files.is_empty(), "nothing is kept for {target}");
    files
}
