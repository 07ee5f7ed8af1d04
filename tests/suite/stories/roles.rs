//! Who may do what: every operation of the OpenAPI document, asked by every kind of person.

use std::collections::BTreeMap;
use std::process::Command;

use reqwest::Method;
use serde_json::{Value, json};
use tallyhost::demo::data;

use crate::harness::{Actor, Stage, demo_list};

/// Nobody signed in; an account outside the club; then the roles of the club. The player is the only
/// one who plays in the season.
const PEOPLE: [&str; 6] = [
    "visitor",
    "stranger",
    "player",
    "referee",
    "organiser",
    "owner",
];

/// What makes the body of a request of one of them.
type Body = fn(&Scene, &str) -> Value;

/// Operation, which season, body, and the status that each of [`PEOPLE`] gets, asked in this order.
/// The season that runs is open to the club alone; the other is a draft.
const TABLE: &[(&str, Season, Body, [u16; 6])] = &[
    ("register_account", Running, account, [202; 6]),
    (
        "find_account",
        Running,
        nothing,
        [401, 200, 200, 200, 200, 200],
    ),
    ("sign_in", Running, credentials, [200; 6]),
    ("refresh_session", Running, no_token, [401; 6]),
    ("sign_out", Running, nothing, [401, 204, 204, 204, 204, 204]),
    (
        "create_club",
        Running,
        named,
        [401, 201, 201, 201, 201, 201],
    ),
    ("find_club", Running, nothing, [200; 6]),
    (
        "create_invitation",
        Running,
        invitation,
        [401, 404, 403, 403, 200, 200],
    ),
    (
        "accept_invitation",
        Running,
        no_code,
        [401, 404, 404, 404, 404, 404],
    ),
    (
        "list_members",
        Running,
        nothing,
        [401, 404, 200, 200, 200, 200],
    ),
    (
        "update_member",
        Running,
        role,
        [401, 404, 403, 403, 403, 204],
    ),
    (
        "delete_member",
        Running,
        nothing,
        [401, 404, 403, 403, 403, 204],
    ),
    (
        "create_catalogue",
        Running,
        name,
        [401, 404, 403, 403, 201, 201],
    ),
    (
        "list_catalogues",
        Running,
        nothing,
        [401, 404, 200, 200, 200, 200],
    ),
    (
        "create_catalogue_version",
        Running,
        catalogue,
        [401, 404, 403, 403, 201, 201],
    ),
    (
        "find_catalogue_version",
        Running,
        nothing,
        [401, 404, 200, 200, 200, 200],
    ),
    (
        "create_season",
        Running,
        season,
        [401, 404, 403, 403, 201, 201],
    ),
    ("list_seasons", Running, nothing, [200; 6]),
    (
        "find_season",
        Running,
        nothing,
        [404, 404, 200, 200, 200, 200],
    ),
    (
        "find_season",
        Draft,
        nothing,
        [404, 404, 404, 404, 200, 200],
    ),
    (
        "update_season",
        Running,
        nothing,
        [401, 404, 403, 403, 412, 412],
    ),
    (
        "list_weeks",
        Running,
        nothing,
        [404, 404, 200, 200, 200, 200],
    ),
    (
        "find_week",
        Running,
        nothing,
        [404, 404, 200, 200, 200, 200],
    ),
    (
        "update_week",
        Running,
        nothing,
        [401, 404, 403, 403, 204, 204],
    ),
    (
        "tell_availability",
        Running,
        nights,
        [401, 404, 204, 404, 404, 404],
    ),
    (
        "update_scenario",
        Draft,
        sheet,
        [401, 404, 403, 403, 204, 204],
    ),
    (
        "find_scenario",
        Draft,
        nothing,
        [404, 404, 404, 404, 200, 200],
    ),
    ("join_season", Draft, place, [401, 404, 201, 201, 201, 201]),
    (
        "list_players",
        Running,
        nothing,
        [404, 404, 200, 200, 200, 200],
    ),
    (
        "list_players",
        Draft,
        nothing,
        [404, 404, 404, 404, 200, 200],
    ),
    (
        "update_player",
        Running,
        nights,
        [401, 404, 403, 403, 200, 200],
    ),
    ("save_draft", Running, list, [401, 404, 200, 404, 404, 404]),
    ("check_list", Running, list, [401, 404, 200, 404, 404, 404]),
    ("seal_list", Running, list, [401, 404, 201, 404, 404, 404]),
    (
        "find_own_list",
        Running,
        nothing,
        [401, 404, 200, 404, 404, 404],
    ),
    (
        "list_lists",
        Running,
        nothing,
        [404, 404, 404, 404, 200, 200],
    ),
    (
        "open_lists",
        Running,
        nothing,
        [401, 404, 403, 403, 409, 409],
    ),
    (
        "grant_late_leave",
        Running,
        leave,
        [401, 404, 403, 403, 204, 409],
    ),
    (
        "list_trail",
        Running,
        nothing,
        [404, 404, 200, 200, 200, 200],
    ),
    (
        "start_season",
        Draft,
        nothing,
        [401, 404, 403, 403, 200, 409],
    ),
    (
        "end_season",
        Running,
        nothing,
        [401, 404, 403, 403, 409, 409],
    ),
    (
        "withdraw_player",
        Running,
        nothing,
        [401, 404, 403, 403, 200, 409],
    ),
];

#[derive(Clone, Copy, Debug, PartialEq)]
enum Season {
    Running,
    Draft,
}
use Season::{Draft, Running};

#[test]
fn every_operation_answers_every_kind_of_person_as_the_table_says() {
    let scene = Scene::set();
    let mut wrong = Vec::new();
    for (operation, season, body, expected) in TABLE {
        let (method, path) = &scene.operations[*operation];
        let path = scene.fill(path, *season);
        let got = PEOPLE.map(|person| {
            let dress = |request: reqwest::blocking::RequestBuilder| {
                let request = request.header("if-match", "\"0\"");
                let request = request.header("idempotency-key", format!("{operation}-{person}"));
                match *method {
                    Method::GET | Method::DELETE => request,
                    _ => request.json(&body(&scene, person)),
                }
            };
            scene.people[person]
                .ask(method.clone(), &path, dress)
                .status
        });
        if got != *expected {
            wrong.push(format!(
                "{operation} ({season:?}): expected {expected:?}, got {got:?}"
            ));
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn every_operation_of_the_document_has_a_row() {
    let missing: Vec<String> = operations()
        .into_keys()
        .filter(|name| !TABLE.iter().any(|(operation, ..)| operation == name))
        .collect();
    assert_eq!(missing, Vec::<String>::new());
}

struct Scene {
    stage: Stage,
    people: BTreeMap<&'static str, Actor>,
    operations: BTreeMap<String, (Method, String)>,
    /// The player whom others would change, of the season and of the club.
    corvanel: (String, String),
    draft: String,
}

impl Scene {
    fn set() -> Self {
        let stage = Stage::with(|season| season["visibility"] = json!("club"));
        let seasons = format!("{}/seasons", stage.club);
        let draft = stage
            .wennable
            .post(&seasons, &stage.season_body())
            .location(201);
        let oskrel = stage.join("Oskrel");
        let corvanel = stage.join("Corvanel");
        let account = corvanel.actor.get("/api/v1/accounts/me").expect(200)["id"].clone();
        let people = BTreeMap::from([
            ("visitor", stage.server.visitor()),
            ("stranger", stage.server.register("Stranger")),
            ("player", oskrel.actor),
            ("referee", stage.appoint("Ilkamar", "referee")),
            ("organiser", stage.appoint("Kestanby", "organiser")),
            ("owner", stage.wennable.clone()),
        ]);
        stage.start();
        Self {
            stage,
            people,
            operations: operations(),
            corvanel: (corvanel.id, account.as_str().unwrap().to_owned()),
            draft,
        }
    }

    /// A path of the document with the parts of this scene.
    fn fill(&self, path: &str, season: Season) -> String {
        let id = |path: &str| path.rsplit('/').next().unwrap().to_owned();
        let season = match season {
            Running => id(&self.stage.season),
            Draft => id(&self.draft),
        };
        let parts = [
            ("{club}", id(&self.stage.club)),
            ("{season}", season),
            ("{week}", "1".to_owned()),
            ("{player}", self.corvanel.0.clone()),
            ("{account}", self.corvanel.1.clone()),
            ("{catalogue}", self.stage.catalogue.clone()),
            ("{number}", "1".to_owned()),
        ];
        let filled = parts.iter().fold(path.to_owned(), |path, (name, part)| {
            path.replace(name, part)
        });
        assert!(!filled.contains('{'), "{filled}");
        filled
    }
}

/// Method and path of every operation, by name.
fn operations() -> BTreeMap<String, (Method, String)> {
    let printed = Command::new(env!("CARGO_BIN_EXE_tallyhost"))
        .arg("openapi")
        .output()
        .unwrap();
    let document: Value = serde_json::from_slice(&printed.stdout).unwrap();
    let mut operations = BTreeMap::new();
    for (path, item) in document["paths"].as_object().unwrap() {
        for (method, operation) in item.as_object().unwrap() {
            let method = method.to_uppercase().parse().unwrap();
            let name = operation["operationId"].as_str().unwrap().to_owned();
            operations.insert(name, (method, path.clone()));
        }
    }
    operations
}

fn nothing(_: &Scene, _: &str) -> Value {
    json!({})
}

fn account(_: &Scene, person: &str) -> Value {
    json!({ "email": format!("{person}@example.org"), "name": person, "password": data::PASSWORD })
}

fn credentials(_: &Scene, _: &str) -> Value {
    json!({ "email": "oskrel@example.org", "password": data::PASSWORD })
}

fn no_token(_: &Scene, _: &str) -> Value {
    json!({ "refresh_token": "none" })
}

fn named(_: &Scene, person: &str) -> Value {
    json!({ "name": person, "slug": person })
}

fn name(_: &Scene, person: &str) -> Value {
    json!({ "name": person })
}

fn invitation(_: &Scene, _: &str) -> Value {
    json!({ "role": "player", "uses": 1, "days": 1 })
}

fn no_code(_: &Scene, _: &str) -> Value {
    json!({ "code": "none" })
}

fn role(_: &Scene, _: &str) -> Value {
    json!({ "role": "player" })
}

fn catalogue(_: &Scene, _: &str) -> Value {
    data::catalogue().unwrap()
}

fn season(scene: &Scene, _: &str) -> Value {
    scene.stage.season_body()
}

fn nights(_: &Scene, _: &str) -> Value {
    json!({ "nights": ["first"] })
}

fn sheet(_: &Scene, _: &str) -> Value {
    json!({ "sheet": data::sheets().unwrap()[0] })
}

fn place(_: &Scene, person: &str) -> Value {
    json!({ "handle": person, "faction": "sodwether-moot", "nights": ["first"] })
}

fn list(_: &Scene, _: &str) -> Value {
    demo_list("Oskrel", 1)
}

fn leave(scene: &Scene, _: &str) -> Value {
    json!({ "player": scene.corvanel.0, "reason": "Power cut" })
}
