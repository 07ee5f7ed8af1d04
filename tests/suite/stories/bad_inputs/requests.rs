//! Requests as such: type, size, address, method, token, version.

use std::io::{Read, Write};
use std::net::TcpStream;
use std::time::Duration;

use reqwest::Method;
use reqwest::blocking::RequestBuilder;
use serde_json::{Value, json};
use tallyhost::demo::data;

use super::{Scene, json_text, pointers};
use crate::harness::{Stage, demo_list};

/// However slow the machine.
const PATIENCE: Duration = Duration::from_secs(300);

#[test]
fn a_body_must_have_its_type_and_its_size() {
    let scene = Scene::set();
    let (oskrel, wennable) = (&scene.oskrel.actor, &scene.stage.wennable);
    let check = format!("{}/list/check", scene.stage.week(1));
    let list = demo_list("Oskrel", 1).to_string();
    for kind in [
        "text/plain",
        "application/json; charset=utf-16",
        "application/xml",
        "",
    ] {
        let typed =
            |request: RequestBuilder| request.header("content-type", kind).body(list.clone());
        oskrel
            .ask(Method::POST, &check, typed)
            .refused(415, "unsupported-media-type");
    }
    let untyped = |request: RequestBuilder| request.body(list.clone());
    oskrel
        .ask(Method::POST, &check, untyped)
        .refused(415, "unsupported-media-type");

    let limit = 64 * 1024;
    let padded = |bytes: usize| format!("{}{list}", " ".repeat(bytes - list.len()));
    json_text(oskrel, Method::POST, &check, &padded(limit)).expect(200);
    let problem = json_text(oskrel, Method::POST, &check, &padded(limit + 1))
        .refused(413, "payload-too-large");
    assert_eq!(problem["limit"], limit);

    let catalogue = wennable
        .get(&format!("{}/catalogues", scene.stage.club))
        .expect(200)[0]["id"]
        .clone();
    let versions = format!(
        "{}/catalogues/{}/versions",
        scene.stage.club,
        catalogue.as_str().unwrap()
    );
    let limit = 4 * 1024 * 1024;
    let problem = scene.nothing_written("a huge catalogue", || {
        json_text(wennable, Method::POST, &versions, &" ".repeat(limit + 1))
            .refused(413, "payload-too-large")
    });
    assert_eq!(problem["limit"], limit);
    let negative = json!({ "factions": [{ "key": "f", "name": "F", "units": [
        { "key": "u", "name": "U", "kind": "line", "sizes": [{ "models": 1, "points": -5 }], "minutes_per_model": 1 }
    ]}]});
    let problem = scene.nothing_written("negative points", || {
        wennable
            .post(&versions, &negative)
            .refused(422, "invalid-catalogue")
    });
    assert_eq!(pointers(&problem), ["/factions/0/units/0/sizes/0/points"]);
}

#[test]
fn what_is_not_there_and_what_is_not_allowed_are_told_apart() {
    let scene = Scene::set();
    let (club, season) = (&scene.stage.club, &scene.stage.season);
    let oskrel = &scene.oskrel.actor;
    for path in [
        "/nowhere",
        "/api/v1/nowhere",
        "/api/v1/clubs/1",
        "/api/v1/clubs/00000000-0000-0000-0000-000000000000",
        &format!("{club}/seasons/none"),
        &format!("{season}/weeks/0"),
        &format!("{season}/weeks/9"),
        &format!("{season}/weeks/300"),
        &format!("{season}/weeks/-1"),
        &format!("{season}/weeks/1.0"),
        &format!("{season}/weeks/+1"),
        &format!("{season}/weeks/01"),
    ] {
        oskrel.get(path).refused(404, "not-found");
    }
    for (method, path, allowed) in [
        (Method::DELETE, club.clone(), "GET"),
        (Method::PUT, format!("{season}/weeks/1/list/seal"), "POST"),
        (Method::TRACE, format!("{season}/weeks/1"), "GET, PATCH"),
    ] {
        let answer = oskrel.ask(method, &path, |request| request);
        let mut allow: Vec<&str> = answer.header("allow").unwrap().split(", ").collect();
        allow.sort_unstable();
        assert_eq!(allow.join(", "), allowed);
        answer.refused(405, "method-not-allowed");
    }
    for (query, parameter, actual) in [
        ("limit=0", "limit", json!(0)),
        ("limit=101", "limit", json!(101)),
        ("before=7&limit=ten", "limit", json!("ten")),
        ("limit=10&before=x", "before", json!("x")),
        ("limit=1&limit=2", "limit", Value::Null),
        ("sort=points", "sort", Value::Null),
    ] {
        let refused = oskrel.get(&format!("{season}/trail?{query}"));
        let problem = refused.refused(400, "invalid-parameter");
        let said = (&problem["parameter"], &problem["actual"]);
        assert_eq!(said, (&json!(parameter), &actual), "{query}");
        let detail = problem["detail"].as_str().unwrap();
        assert!(detail.contains(parameter), "{detail}");
    }
}

#[test]
fn a_token_that_is_not_ours_opens_nothing() {
    let scene = Scene::set();
    let stranger = scene.stage.server.visitor();
    let header = "eyJhbGciOiJub25lIiwidHlwIjoiYXQrand0In0";
    let claims = "eyJpc3MiOiJ0YWxseWhvc3QiLCJhdWQiOiJ0YWxseWhvc3QiLCJzdWIiOiIwMDAwMDAwMC0wMDAwLTAwMDAtMDAwMC0wMDAwMDAwMDAwMDAiLCJleHAiOjQwMDAwMDAwMDB9";
    for authorization in [
        format!("Bearer {header}.{claims}."),
        format!("Bearer {header}.{claims}.AAAA"),
        "Bearer ".to_owned(),
        "Bearer x".to_owned(),
        "Basic b3NrcmVsOng=".to_owned(),
    ] {
        let with =
            |request: RequestBuilder| request.header("authorization", authorization.as_str());
        for path in ["/api/v1/accounts/me", &scene.stage.season] {
            let answer = stranger.ask(Method::GET, path, with);
            assert_eq!(
                answer.header("www-authenticate"),
                Some("Bearer"),
                "{authorization}"
            );
            answer.refused(401, "invalid-token");
        }
    }
    stranger
        .get("/api/v1/accounts/me")
        .refused(401, "sign-in-needed");
}

#[test]
fn a_change_says_which_version_it_changes() {
    let scene = Scene::set();
    let wennable = &scene.stage.wennable;
    let rename = |tag: Option<&str>| {
        let dress = |request: RequestBuilder| {
            let request = request.json(&json!({ "name": "Winter at the ford" }));
            match tag {
                Some(tag) => request.header("if-match", tag),
                None => request,
            }
        };
        wennable.ask(Method::PATCH, &scene.stage.season, dress)
    };
    rename(None).refused(428, "precondition-required");
    rename(Some("1")).refused(400, "invalid-parameter");
    rename(Some("\"0\"")).refused(412, "version-mismatch");
    let current = wennable.get(&scene.stage.season).with_status(200);
    rename(current.header("etag")).expect(200);
}

#[test]
fn a_season_of_the_club_is_not_opened_to_everybody_once_people_play_in_it() {
    let stage = Stage::with(|season| season["visibility"] = json!("club"));
    stage.join("Oskrel");
    let change = |body: Value| {
        let now = stage.wennable.get(&stage.season).with_status(200);
        let version = now.header("etag").unwrap().to_owned();
        stage.wennable.ask(Method::PATCH, &stage.season, |request| {
            request.header("if-match", version.as_str()).json(&body)
        })
    };
    change(json!({ "places": 1 })).refused(422, "validation");
    change(json!({ "visibility": "public" })).expect(200);
    change(json!({ "visibility": "club" })).expect(200);
    stage.start();
    let problem = change(json!({ "visibility": "public" })).refused(409, "season-fixed");
    assert_eq!(pointers(&problem), ["/visibility"]);
    stage
        .server
        .visitor()
        .get(&stage.season)
        .refused(404, "not-found");
    let trail = stage
        .wennable
        .get(&format!("{}/trail", stage.season))
        .expect(200);
    let trail = trail.as_array().unwrap().iter();
    let told = trail.filter(|entry| entry["act"] == "update_season");
    let told: Vec<_> = told
        .map(|entry| entry["facts"]["visibility"].clone())
        .collect();
    assert_eq!(told, ["club", "public"]);
}

#[test]
fn a_member_sees_the_draft_that_may_be_joined_but_not_what_is_hidden_in_it() {
    let stage = Stage::draft();
    let sheet = json!({ "sheet": data::sheets().unwrap()[0] });
    let scenario = format!("{}/scenario", stage.week(1));
    stage.wennable.put(&scenario, &sheet).expect(204);
    stage.clock().show("2026-01-08T18:00:00+01:00");
    let member = stage.welcome("Juddeth");
    assert_eq!(member.get(&stage.season).expect(200)["state"], "draft");
    member.get(&scenario).refused(404, "not-found");
    let seasons = member.get(&format!("{}/seasons", stage.club)).expect(200);
    assert_eq!(seasons, json!([]));
    stage
        .server
        .visitor()
        .get(&stage.season)
        .refused(404, "not-found");
}

#[test]
fn a_body_that_does_not_come_is_not_waited_for() {
    let scene = Scene::set();
    for (path, kind) in [
        ("/api/v1/sessions", "application/json"),
        ("/sign-in", "application/x-www-form-urlencoded"),
    ] {
        let address = scene.stage.server.address().trim_start_matches("http://");
        let mut stream = TcpStream::connect(address).unwrap();
        stream.set_read_timeout(Some(PATIENCE)).unwrap();
        let head = format!(
            "POST {path} HTTP/1.1\r\nhost: localhost\r\ncontent-type: {kind}\r\n\
             content-length: 40\r\n\r\na"
        );
        stream.write_all(head.as_bytes()).unwrap();
        let mut answer = String::new();
        stream.read_to_string(&mut answer).unwrap();
        assert!(answer.starts_with("HTTP/1.1 408 "), "{answer}");
    }
}

#[test]
fn whoever_has_not_signed_in_sends_nothing_large() {
    let scene = Scene::set();
    let visitor = scene.stage.server.visitor();
    let long = format!("email=a&password={}", "x".repeat(64 * 1024));
    let form = |request: RequestBuilder| {
        request
            .header("content-type", "application/x-www-form-urlencoded")
            .body(long.clone())
    };
    let catalogues = scene.stage.club.strip_prefix("/api/v1").unwrap();
    for path in ["/sign-in", &format!("{catalogues}/catalogues")] {
        let problem = visitor.ask(Method::POST, path, form);
        problem.refused(413, "payload-too-large");
    }
    let painting = scene.stage.season.strip_prefix("/api/v1").unwrap();
    let parts = |request: RequestBuilder| {
        let part =
            "--b\r\ncontent-disposition: form-data; name=\"photo\"; filename=\"a\"\r\n\r\nx\r\n";
        request
            .header("content-type", "multipart/form-data; boundary=b")
            .body(format!("{}--b--\r\n", part.repeat(4)))
    };
    let unknown = visitor.ask(Method::POST, &format!("{painting}/painting"), parts);
    unknown.refused(401, "sign-in-needed");
}
