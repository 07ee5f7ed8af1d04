//! The receipt of a sealed list can be checked with tools from outside.

#![allow(clippy::unwrap_used, clippy::panic, reason = "tests may fail loudly")]

use std::io::Write;
use std::process::{Command, Stdio};

use document::lists::army_list::{ArmyListDocument, EntryDocument};
use document::lists::receipt::SealedList;

/// RFC 8785, section 3.2.2 and 3.2.3: the published sample objects, from memory.
#[test]
fn the_canonical_form_gives_the_published_examples_of_rfc_8785() {
    let sample = r#"{
        "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
        "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
        "literals": [null, true, false]
    }"#;
    assert_eq!(
        canonical(sample),
        r#"{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}"#
    );
    let sorting = r#"{
        "\u20ac": "Euro Sign", "\r": "Carriage Return",
        "\ufb33": "Hebrew Letter Dalet With Dagesh", "1": "One",
        "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control",
        "\u00f6": "Latin Small Letter O With Diaeresis"
    }"#;
    let sorted = canonical(sorting);
    let places = [
        "Carriage", "One", "Control", "Latin", "Euro", "Emoji", "Hebrew",
    ]
    .map(|name| sorted.find(name).unwrap());
    assert!(places.is_sorted(), "{sorted}");
}

fn canonical(text: &str) -> String {
    let value: serde_json::Value = serde_json::from_str(text).unwrap();
    serde_json_canonicalizer::to_string(&value).unwrap()
}

fn sealed() -> SealedList {
    SealedList {
        list: ArmyListDocument {
            faction: "sodwether-moot".into(),
            entries: vec![EntryDocument {
                key: "hulks-1".into(),
                unit: "bog-oak-hulks".into(),
                models: 2,
                options: [("root-armour".into(), 1)].into(),
                joins: None,
            }],
        },
        list_id: "01890a5d-ac96-774b-bcce-b302099a8057".into(),
        salt: "000102030405060708090a0b0c0d0e0f".into(),
    }
}

#[test]
fn the_canonical_form_of_a_sealed_list_stays_as_it_is() {
    assert_eq!(
        String::from_utf8(sealed().canonical().unwrap()).unwrap(),
        concat!(
            r#"{"list":{"entries":[{"key":"hulks-1","models":2,"options":{"root-armour":1},"#,
            r#""unit":"bog-oak-hulks"}],"faction":"sodwether-moot"},"#,
            r#""list_id":"01890a5d-ac96-774b-bcce-b302099a8057","#,
            r#""salt":"000102030405060708090a0b0c0d0e0f"}"#
        )
    );
}

#[test]
fn sha256sum_prints_the_receipt() {
    let mut sum = Command::new("sha256sum")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let bytes = sealed().canonical().unwrap();
    sum.stdin.take().unwrap().write_all(&bytes).unwrap();
    let output = String::from_utf8(sum.wait_with_output().unwrap().stdout).unwrap();
    assert_eq!(
        output.split_whitespace().next(),
        Some(sealed().receipt().unwrap().as_str())
    );
}

#[test]
fn another_salt_or_list_gives_another_receipt() {
    let receipt = sealed().receipt().unwrap();
    let mut other = sealed();
    other.salt.replace_range(..2, "ff");
    assert_ne!(other.receipt().unwrap(), receipt);
    let mut other = sealed();
    other.list.entries[0].models = 3;
    assert_ne!(other.receipt().unwrap(), receipt);
}
