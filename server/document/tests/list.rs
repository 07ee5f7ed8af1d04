//! Army lists come in from JSON, whole or with every fault named.

#![allow(clippy::unwrap_used, clippy::panic, reason = "tests may fail loudly")]

use document::lists::army_list::ArmyListDocument;
use league::lists::ArmyList;

fn parse(text: &str) -> ArmyListDocument {
    serde_json::from_str(text).unwrap()
}

#[test]
fn a_list_written_out_reads_back_the_same() {
    let document = parse(
        r#"{"faction": "moot", "entries": [
            {"key": "speaker", "unit": "mire-speaker", "models": 1, "joins": "a_1"},
            {"key": "a_1", "unit": "hulks", "models": 2, "options": {"root-armour": 1}}
        ]}"#,
    );
    let list = ArmyList::try_from(document.clone()).unwrap();
    assert_eq!(ArmyListDocument::from(&list), document);
}

#[test]
fn every_fault_is_told_with_its_pointer() {
    let faults = ArmyList::try_from(parse(
        r#"{"faction": "The Moot", "entries": [
            {"key": "a b", "unit": "", "models": 1, "options": {"Root/armour": 1}, "joins": ""}
        ]}"#,
    ))
    .unwrap_err();
    let places: Vec<&str> = faults.iter().map(|fault| fault.pointer.as_str()).collect();
    assert_eq!(
        places,
        [
            "/faction",
            "/entries/0/key",
            "/entries/0/unit",
            "/entries/0/options/Root~1armour",
            "/entries/0/joins",
        ]
    );
    let faults = ArmyList::try_from(parse(
        r#"{"faction": "moot", "entries": [
            {"key": "a", "unit": "hulks", "models": 2},
            {"key": "a", "unit": "hulks", "models": 2, "joins": "z"}
        ]}"#,
    ))
    .unwrap_err();
    let codes: Vec<&str> = faults.iter().map(|fault| fault.code.as_str()).collect();
    assert_eq!(codes, ["list.entry-twice", "list.joins-nothing"]);
    assert_eq!(faults[1].pointer, "/entries/1/joins");
}

#[test]
fn a_negative_number_of_models_cannot_be_parsed() {
    let text = r#"{"faction": "moot", "entries": [{"key": "a", "unit": "b", "models": -2}]}"#;
    assert!(serde_json::from_str::<ArmyListDocument>(text).is_err());
}
