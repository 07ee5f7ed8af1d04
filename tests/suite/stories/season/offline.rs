//! The public export checked with nothing but the file, as anybody may; and a tampered one found out.

use std::fs;
use std::process::Command;

use serde_json::{Value, json};

/// What `tallyhost verify` says of a file, and whether it is content.
pub fn verify(export: &Value) -> (bool, String) {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("season.json");
    fs::write(&file, export.to_string()).unwrap();
    let checked = Command::new(env!("CARGO_BIN_EXE_tallyhost"))
        .arg("verify")
        .arg(&file)
        .output()
        .unwrap();
    let said = String::from_utf8(checked.stdout).unwrap();
    (checked.status.success(), said)
}

/// Every promise of an ended season holds, and each way to cheat is named.
pub fn check(export: &Value) {
    let (content, said) = verify(export);
    assert!(content, "{said}");
    assert!(
        said.contains("the seed is the one committed to at the start"),
        "{said}"
    );
    assert!(!said.contains("open  "), "{said}");

    let round = "/weeks/2/rounds/0";
    let cheats: [(&str, Value, &str); 5] = [
        (
            "/seed",
            json!("00".repeat(32)),
            "the seed is the one committed to",
        ),
        (
            &format!("{round}/draw"),
            json!("00".repeat(32)),
            "the draw follows",
        ),
        (
            &format!("{round}/inputs/contenders/0/score"),
            json!(999),
            "the draw follows",
        ),
        (
            "/weeks/1/lists/0/contents/list/entries/0/models",
            json!(99),
            "is the one of its receipt",
        ),
        (
            "/weeks/2/games/0/first",
            export["weeks"][2]["games"][1]["first"].clone(),
            "the games are those of the proposal",
        ),
    ];
    for (place, forged, promise) in cheats {
        let mut export = export.clone();
        *export.pointer_mut(place).unwrap() = forged;
        let (content, said) = verify(&export);
        assert!(!content, "{place} was forged unnoticed");
        let named = said
            .lines()
            .any(|line| line.starts_with("BROKEN") && line.contains(promise));
        assert!(named, "{place}: {said}");
    }
}
