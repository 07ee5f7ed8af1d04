//! Requests as such: type, size, address, method, token, version.

use std::io::{Read, Write};
use std::net::TcpStream;
use std::time::Duration;

use reqwest::Method;
use reqwest::blocking::RequestBuilder;
use serde_json::{Value, json};
use tallyhost::demo::data;

use super::{Started, json_text};
use crate::harness::{List, Stage};

/// However slow the machine.
const TIMEOUT: Duration = Duration::from_secs(300);

#[test]
fn a_body_must_have_its_type_and_its_size() {
    let started = Started::start();
    let (oskrel, wennable) = (&started.oskrel.actor, &started.stage.owner);
    let check = started.stage.week(1).at("list/check");
    let list = json!(List::demo("Oskrel", 1)).to_string();
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
    assert_eq!(problem.limit(), limit);

    let versions = started.stage.catalogue.at("versions");
    let limit = 4 * 1024 * 1024;
    let problem = started.nothing_written("a huge catalogue", || {
        json_text(wennable, Method::POST, &versions, &" ".repeat(limit + 1))
            .refused(413, "payload-too-large")
    });
    assert_eq!(problem.limit(), limit);
    let negative = json!({ "factions": [{ "key": "f", "name": "F", "units": [
        { "key": "u", "name": "U", "kind": "line", "sizes": [{ "models": 1, "points": -5 }], "minutes_per_model": 1 }
    ]}]});
    let problem = started.nothing_written("negative points", || {
        wennable
            .post(&versions, &negative)
            .refused(422, "invalid-catalogue")
    });
    assert_eq!(problem.pointers(), ["/factions/0/units/0/sizes/0/points"]);
}

#[test]
fn what_is_not_there_and_what_is_not_allowed_are_told_apart() {
    let started = Started::start();
    let (club, season) = (&started.stage.club.path, &started.stage.season.path);
    let oskrel = &started.oskrel.actor;
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
        assert_eq!(problem.member("parameter"), parameter, "{query}");
        assert_eq!(problem.actual(), &actual, "{query}");
        let detail = &problem.detail;
        assert!(detail.contains(parameter), "{detail}");
    }
}

#[test]
fn a_token_that_is_not_ours_opens_nothing() {
    let started = Started::start();
    let stranger = started.stage.server.visitor();
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
        for path in ["/api/v1/accounts/me", &started.stage.season.path] {
            let answer = stranger.ask(Method::GET, path, with);
            assert_eq!(
                answer.header("www-authenticate"),
                Some("Bearer"),
                "{authorization}"
            );
            answer.refused(401, "invalid-token");
        }
    }
    stranger.me().refused(401, "sign-in-needed");
}

#[test]
fn a_change_says_which_version_it_changes() {
    let started = Started::start();
    let season = &started.stage.season;
    let renamed = json!({ "name": "Winter at the ford" });
    let rename = |tag: Option<&str>| season.update_from(tag, &renamed);
    rename(None).refused(428, "precondition-required");
    rename(Some("1")).refused(400, "invalid-parameter");
    let any = rename(Some("*")).refused(428, "precondition-required");
    assert!(any.detail.contains('*'), "{any}");
    rename(Some("\"0\"")).refused(412, "version-mismatch");
    let current = season.state().with_status(200);
    rename(current.header("etag")).expect(200);
}

#[test]
fn a_season_of_the_club_is_not_opened_to_everybody_once_people_play_in_it() {
    let stage = Stage::with(|season| season.visibility("club"));
    stage.join("Oskrel");
    let change = |body: Value| stage.season.update(&body);
    change(json!({ "places": 1 })).refused(422, "validation");
    change(json!({ "visibility": "public" })).expect(200);
    change(json!({ "visibility": "club" })).expect(200);
    stage.start();
    let problem = change(json!({ "visibility": "public" })).refused(409, "season-fixed");
    assert_eq!(problem.pointers(), ["/visibility"]);
    let seen = stage.season.by(stage.visitor());
    seen.state().refused(404, "not-found");
    let trail = stage.season.trail().expect(200);
    let told = trail.iter().filter(|entry| entry.act == "update_season");
    let told: Vec<&Value> = told.map(|entry| entry.fact("visibility")).collect();
    assert_eq!(told, ["club", "public"]);
}

#[test]
fn a_member_sees_the_draft_that_may_be_joined_but_not_what_is_hidden_in_it() {
    let stage = Stage::draft();
    let sheet = json!({ "sheet": data::sheets().unwrap()[0] });
    stage.week(1).set_scenario(&sheet).expect(204);
    stage.clock().show("2026-01-08T18:00:00+01:00");
    let member = stage.welcome("Juddeth");
    let season = stage.season.by(&member);
    assert_eq!(season.state().expect(200).state, "draft");
    season.week(1).scenario().refused(404, "not-found");
    assert!(season.club().seasons().expect(200).is_empty());
    let seen = season.by(stage.visitor());
    seen.state().refused(404, "not-found");
}

#[test]
fn a_body_that_does_not_come_is_not_waited_for() {
    let started = Started::start();
    for (path, kind) in [
        ("/api/v1/sessions", "application/json"),
        ("/sign-in", "application/x-www-form-urlencoded"),
    ] {
        let address = started.stage.server.address().trim_start_matches("http://");
        let mut stream = TcpStream::connect(address).unwrap();
        stream.set_read_timeout(Some(TIMEOUT)).unwrap();
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
fn a_body_that_breaks_off_or_has_no_right_chunks_is_not_called_too_large() {
    let started = Started::start();
    let address = started.stage.server.address().trim_start_matches("http://");
    for path in ["/api/v1/sessions", "/sign-in"] {
        let kind = match path {
            "/sign-in" => "application/x-www-form-urlencoded",
            _ => "application/json",
        };
        let mut stream = TcpStream::connect(address).unwrap();
        stream.set_read_timeout(Some(TIMEOUT)).unwrap();
        let request = format!(
            "POST {path} HTTP/1.1\r\nhost: localhost\r\ncontent-type: {kind}\r\n\
             transfer-encoding: chunked\r\n\r\nno number of bytes\r\n{{}}\r\n0\r\n\r\n"
        );
        stream.write_all(request.as_bytes()).unwrap();
        let mut answer = String::new();
        stream.read_to_string(&mut answer).unwrap();
        assert!(answer.starts_with("HTTP/1.1 400 "), "{answer}");
        assert!(answer.contains("/problems/broken-body"), "{answer}");
    }
}

#[test]
fn three_players_for_a_pair_are_told_at_their_place() {
    let started = Started::start();
    let [a, b, c] = [1, 2, 3].map(|number| format!("{number:0>8}-0000-4000-8000-000000000000"));
    let orders = json!({ "pins": [[a, b], [a, b, c]] });
    let rounds = started.stage.week(1).at("rounds");
    let problem = started.stage.owner.post(&rounds, &orders);
    let problem = problem.refused(422, "validation");
    assert_eq!(problem.pointers(), ["/pins/1"]);
}

#[test]
fn a_seed_is_taken_as_far_as_the_interface_says() {
    let started = Started::start();
    let season = &started.stage.season;
    season.forecast(i64::MAX.unsigned_abs(), 1).expect(200);
    let refused = season.forecast(i64::MAX.unsigned_abs() + 1, 1);
    let problem = refused.refused(400, "invalid-parameter");
    assert_eq!(problem.member("parameter"), "seed");
}

#[test]
fn whoever_has_not_signed_in_sends_nothing_large() {
    let started = Started::start();
    let visitor = started.stage.server.visitor();
    let long = format!("email=a&password={}", "x".repeat(64 * 1024));
    let form = |request: RequestBuilder| {
        request
            .header("content-type", "application/x-www-form-urlencoded")
            .body(long.clone())
    };
    for path in ["/sign-in", &started.stage.club.page("catalogues")] {
        let problem = visitor.ask(Method::POST, path, form);
        problem.refused(413, "payload-too-large");
    }
    let painting = started.stage.season.page("painting");
    let parts = |request: RequestBuilder| {
        let part =
            "--b\r\ncontent-disposition: form-data; name=\"photo\"; filename=\"a\"\r\n\r\nx\r\n";
        request
            .header("content-type", "multipart/form-data; boundary=b")
            .body(format!("{}--b--\r\n", part.repeat(4)))
    };
    let unknown = visitor.ask(Method::POST, &painting, parts);
    unknown.refused(401, "sign-in-needed");
}
