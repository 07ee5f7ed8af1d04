//! Requests as such: type, size, address, method, token, version.

use reqwest::Method;
use reqwest::blocking::RequestBuilder;
use serde_json::json;

use super::{Scene, json_text, pointers};
use crate::harness::demo_list;

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
    for query in [
        "limit=0",
        "limit=101",
        "limit=ten",
        "limit=1&limit=2",
        "sort=points",
    ] {
        oskrel
            .get(&format!("{season}/trail?{query}"))
            .refused(400, "invalid-parameter");
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
