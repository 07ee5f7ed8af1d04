//! The OpenAPI document is kept in the project, so that a change of the interface is seen in review.

use std::collections::BTreeSet;
use std::fs;
use std::process::Command;

use serde_json::Value;

use crate::harness::Stage;
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

#[test]
fn every_part_of_an_address_and_every_query_is_told() {
    let document: Value = serde_json::from_str(&kept()).unwrap();
    for (path, method, operation) in operations(&document) {
        let parts: BTreeSet<_> = path.split(['{', '}']).skip(1).step_by(2).collect();
        let told = parameters(operation)
            .iter()
            .filter(|parameter| parameter["in"] == "path")
            .map(|parameter| parameter["name"].as_str().unwrap());
        assert_eq!(told.collect::<BTreeSet<_>>(), parts, "{method} {path}");
        for parameter in parameters(operation) {
            assert!(
                parameter["schema"].is_object(),
                "{method} {path}: {parameter}"
            );
            assert!(
                parameter["description"].is_string(),
                "{method} {path}: {parameter}"
            );
            assert!(
                parameter["in"] != "path" || parameter["required"] == true,
                "{path}"
            );
        }
    }
    let folder = root().join("server/web/src/api");
    for file in fs::read_dir(folder).unwrap() {
        let text = fs::read_to_string(file.unwrap().path()).unwrap();
        for operation in text.split("#[utoipa::path(").skip(1) {
            let (head, rest) = operation.split_once("pub async fn ").unwrap();
            let signature = rest.split_once("-> ").unwrap().0;
            for query in signature.split("Query<").skip(1) {
                let name = query.split_once('>').unwrap().0;
                assert!(head.contains(name), "{name} is not named in {head}");
            }
        }
    }
}

#[test]
fn every_body_has_an_example() {
    let document: Value = serde_json::from_str(&kept()).unwrap();
    for (path, method, operation) in operations(&document) {
        let asked = operation["requestBody"]["content"].as_object();
        let answers = operation["responses"].as_object().unwrap();
        let answered = answers
            .iter()
            .filter(|(status, _)| status.starts_with('2'))
            .filter_map(|(_, answer)| answer["content"].as_object());
        for (kind, content) in asked.into_iter().chain(answered).flatten() {
            let is_of_bytes = kind.starts_with("image/") || kind == "application/zip";
            let has = ["example", "examples"]
                .iter()
                .any(|name| content.get(name).is_some());
            assert!(has || is_of_bytes, "{method} {path}: {kind}");
        }
    }
}

#[test]
fn the_example_of_a_table_of_units_is_imported() {
    let stage = Stage::draft();
    let document: Value = serde_json::from_str(&kept()).unwrap();
    let import = "/api/v1/clubs/{club}/catalogues/{catalogue}/versions";
    let body = &document["paths"][import]["post"]["requestBody"]["content"]["text/csv"];
    let table = body["example"].as_str().unwrap();
    stage.catalogue.import_text("text/csv", table).expect(201);
}

fn operations(document: &Value) -> impl Iterator<Item = (&str, &str, &Value)> {
    let paths = document["paths"].as_object().unwrap();
    paths.iter().flat_map(|(path, item)| {
        let methods = item.as_object().unwrap().iter();
        methods.map(move |(method, operation)| (path.as_str(), method.as_str(), operation))
    })
}

fn parameters(operation: &Value) -> &[Value] {
    operation["parameters"]
        .as_array()
        .map_or(&[], Vec::as_slice)
}

fn kept() -> String {
    fs::read_to_string(root().join("openapi/tallyhost.json")).unwrap()
}
