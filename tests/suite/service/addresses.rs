//! The public addresses in the OpenAPI document, and what it says of them.

use std::collections::BTreeSet;

use serde_json::Value;

use super::OpenSeason;
use crate::harness::{Server, Stage};
use crate::sources::{files, root};

fn document() -> Value {
    let kept = std::fs::read_to_string(root().join("openapi/tallyhost.json")).unwrap();
    serde_json::from_str(&kept).unwrap()
}

fn public_addresses() -> BTreeSet<String> {
    let document = document();
    let paths = document["paths"].as_object().unwrap().keys();
    paths
        .filter(|path| path.starts_with("/public/"))
        .cloned()
        .collect()
}

#[test]
fn every_public_address_stands_in_the_document() {
    let routes = files("server/read_service/src", "routes.rs").remove(0).text;
    let quoted = routes.split('"');
    let quoted = quoted.filter(|text| text.starts_with('/') && !text.starts_with("//"));
    let mut scope = String::new();
    let mut routed = BTreeSet::new();
    for text in quoted {
        let path = text.split("{ending").next().unwrap();
        let path = path.replace(":[0-9a-f-]+", "");
        // A picture has no address without its ending.
        let ending = if text.ends_with(".svg}") { ".svg" } else { "" };
        let path = format!("{path}{ending}");
        match path.as_str() {
            "/public/clubs/{club}/seasons/{season}" => scope.clone_from(&path),
            whole if whole.starts_with("/public/") => {
                routed.insert(whole.to_owned());
            }
            part => {
                routed.insert(format!("{scope}{part}"));
            }
        }
    }
    assert!(routed.len() > 10, "{routed:?}");
    assert_eq!(public_addresses(), routed);
}

/// An example that shows other members than the server sends misleads whoever follows it.
#[test]
fn the_examples_of_the_document_have_the_members_of_real_answers() {
    let open = OpenSeason::start();
    let document = document();
    for path in public_addresses() {
        let content = &document["paths"][&path]["get"]["responses"]["200"]["content"];
        let media = content.as_object().unwrap();
        for (kind, form) in media {
            assert!(!form["example"].is_null(), "{path} {kind} has no example");
        }
        let Some(example) = content.get("application/json").map(|form| &form["example"]) else {
            continue;
        };
        let csv = content["text/csv"]["example"].as_str().unwrap();
        let answer = |path: &str| open.stage.server.visitor().get(path);
        let Some(real) = filled(&open, &path) else {
            continue;
        };
        let body = answer(&real).expect(200);
        assert_eq!(members(example), members(&body), "{path}");
        let head = answer(&format!("{real}.csv")).with_status(200).text();
        let head = head.lines().next().unwrap().to_owned();
        assert!(
            csv.starts_with(&head) || head.starts_with(csv.lines().next().unwrap()),
            "{head}"
        );
    }
}

/// A path led to the season; nothing for a record, which needs somebody's agreement.
fn filled(open: &OpenSeason, path: &str) -> Option<String> {
    let season = "/public/clubs/{club}/seasons/{season}";
    let path = path
        .replace(season, &open.public.path(""))
        .replace("{player}", &open.oskrel.id);
    (!path.contains('{')).then_some(path)
}

fn members(body: &Value) -> BTreeSet<&String> {
    body.as_object().unwrap().keys().collect()
}

#[test]
fn what_is_not_for_everybody_is_at_no_public_address() {
    let stage = Stage::with(|season| season.visibility("club"));
    let open = OpenSeason::over(stage);
    let server: &Server = &open.stage.server;
    for path in public_addresses() {
        let Some(path) = filled(&open, &path).filter(|path| path.contains("/clubs/")) else {
            continue;
        };
        server.visitor().get(&path).refused(404, "not-found");
    }
    let directory = server.visitor().directory("").expect(200);
    assert!(directory.seasons.is_empty());
}
