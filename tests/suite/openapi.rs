//! The OpenAPI document is kept in the project, so that a change of the interface is seen in review.

use std::collections::BTreeSet;
use std::fs;
use std::process::Command;

use serde_json::Value;

use crate::sources::root;

#[test]
fn the_document_that_is_kept_is_the_one_the_server_has() {
    let printed = Command::new(env!("CARGO_BIN_EXE_tallyhost"))
        .arg("openapi")
        .output()
        .unwrap();
    assert!(printed.status.success());
    let current: Value = serde_json::from_slice(&printed.stdout).unwrap();
    let kept: Value = serde_json::from_str(&kept()).unwrap();
    assert!(
        current == kept,
        "write it anew: cargo run --package tallyhost -- openapi >openapi/tallyhost.json"
    );
}

#[test]
fn every_operation_has_its_own_name_and_says_what_can_go_wrong() {
    let document: Value = serde_json::from_str(&kept()).unwrap();
    let mut names = BTreeSet::new();
    for (path, item) in document["paths"].as_object().unwrap() {
        for (method, operation) in item.as_object().unwrap() {
            let name = operation["operationId"].as_str().unwrap();
            assert!(names.insert(name), "{name} twice");
            assert!(
                operation["summary"].is_string(),
                "{method} {path} says nothing"
            );
            let problem = &operation["responses"]["default"]["content"];
            assert!(
                problem["application/problem+json"].is_object(),
                "{method} {path}"
            );
        }
    }
}

#[test]
fn every_reference_leads_to_a_schema_and_every_schema_is_used() {
    let text = kept();
    let document: Value = serde_json::from_str(&text).unwrap();
    let schemas = document["components"]["schemas"].as_object().unwrap();
    let schemas: BTreeSet<_> = schemas.keys().map(String::as_str).collect();
    let references = text.split("\"#/components/schemas/").skip(1);
    let references: BTreeSet<_> = references
        .filter_map(|rest| rest.split('"').next())
        .collect();
    assert_eq!(references, schemas);
}

fn kept() -> String {
    fs::read_to_string(root().join("openapi/tallyhost.json")).unwrap()
}
