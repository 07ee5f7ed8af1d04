use std::collections::BTreeSet;

use reqwest::Method;
use serde_json::json;

use super::{Wall, ask_with, tag, total, version};
use crate::harness::{Answer, Stage};

pub const RESOURCES: [&str; 6] = [
    "standings",
    "pairings",
    "results",
    "weeks",
    "statistics",
    "tables",
];

#[test]
fn everybody_reads_a_public_season_as_json_and_as_csv() {
    let wall = Wall::hang();
    let visitor = wall.stage.server.visitor();
    wall.give_a_point();
    let table = wall.read("standings").expect(200);
    assert_eq!(total(&table), 1);
    let ledger = format!("players/{}/ledger", wall.oskrel.id);
    assert_eq!(wall.read(&ledger).expect(200)["total"], 1);
    for resource in RESOURCES.into_iter().chain([ledger.as_str()]) {
        let json = wall.read(&format!("{resource}.json")).with_status(200);
        assert_eq!(json.header("content-type"), Some("application/json"));
        let same = wall.read(resource).with_status(200);
        assert_eq!((&same.body, tag(&same)), (&json.body, tag(&json)));
        let csv = wall.read(&format!("{resource}.csv")).with_status(200);
        let path = wall.path(resource);
        let same = ask_with(&visitor, &path, &[("accept", "text/csv, */*;q=0.1")]);
        assert_eq!((&same.body, tag(&same)), (&csv.body, tag(&csv)));
        assert!(csv.header("content-type").unwrap().starts_with("text/csv"));
        let columns = csv.text().lines().next().unwrap().split(',').count();
        assert!(columns > 4, "{}", csv.text());
        for answer in [json, csv] {
            assert_eq!(answer.header("access-control-allow-origin"), Some("*"));
            assert_eq!(answer.header("cache-control"), Some("public, no-cache"));
            assert!(answer.header("last-modified").unwrap().ends_with(" GMT"));
        }
    }
    assert!(wall.read("standings.csv").text().contains("\r\n1,Oskrel,"));
}

#[test]
fn a_table_says_its_tie_breaks_once_and_each_row_has_its_values_in_their_order() {
    let wall = Wall::hang();
    let table = wall.read("standings").expect(200);
    let season = wall.stage.wennable.get(&wall.stage.season).expect(200);
    let order = &season["policy"]["tie_breaks"]["order"];
    assert_eq!(&table["tie_breaks"], order);
    for row in table["rows"].as_array().unwrap() {
        let values = row["tie_breaks"].as_array().unwrap();
        assert_eq!(values.len(), order.as_array().unwrap().len());
        let place = |name: &str| order.as_array().unwrap().iter().position(|it| it == name);
        assert_eq!(values[place("score_margin").unwrap()], "0");
        assert!(values[place("direct_encounter").unwrap()].is_null());
    }
}

#[test]
fn a_table_and_a_badge_go_into_the_pages_of_others() {
    let wall = Wall::hang();
    let table = wall.read("standings.html").with_status(200);
    let policy = table.header("content-security-policy").unwrap();
    assert!(policy.contains("frame-ancestors *"), "{policy}");
    assert!(table.text().contains("<th scope=\"row\">Oskrel</th>"));
    wall.give_a_point();
    let badge = wall.read("badge.svg").with_status(200);
    assert_eq!(badge.header("content-type"), Some("image/svg+xml"));
    assert!(badge.text().contains("week 1: Oskrel"), "{}", badge.text());
}

#[test]
fn a_body_that_has_not_changed_is_not_sent_again() {
    let wall = Wall::hang();
    let visitor = wall.stage.server.visitor();
    for resource in RESOURCES {
        let path = wall.path(resource);
        let mut tags = Vec::new();
        for encoding in ["identity", "gzip", "br"] {
            let first = ask_with(&visitor, &path, &[("accept-encoding", encoding)]);
            let coded = (encoding != "identity").then_some(encoding);
            assert_eq!(first.header("content-encoding"), coded);
            let headers = [
                ("accept-encoding", encoding),
                ("if-none-match", &tag(&first)),
            ];
            let again = ask_with(&visitor, &path, &headers).with_status(304);
            assert!(again.body.is_empty());
            assert_eq!(tag(&again), tag(&first));
            tags.push(tag(&first));
        }
        tags.dedup();
        assert_eq!(tags.len(), 3, "other bytes, other tag: {tags:?}");
    }
}

/// The first answer passes everything that surrounds a route; those after it are given at the front.
#[test]
fn the_same_request_is_answered_alike_each_time_and_counted() {
    let wall = Wall::hang();
    let visitor = wall.stage.server.visitor();
    let tag = tag(&wall.read("standings"));
    let resources = ["standings", "standings.csv", "standings.html", "weeks"];
    let ways = [
        ("accept-encoding", "br, gzip"),
        ("accept-encoding", "identity"),
        ("if-none-match", tag.as_str()),
    ];
    for resource in resources {
        for way in ways {
            let ask = || ask_with(&visitor, &wall.path(resource), &[way]);
            let [first, second, third] = [(); 3].map(|()| ask());
            for later in [second, third] {
                assert_eq!((later.status, &later.body), (first.status, &first.body));
                assert_eq!(headers(&later), headers(&first));
            }
        }
    }
    let numbers = visitor.get("/metrics").text();
    let public = "http_requests_total{method=\"GET\",route=\"/public/";
    let counts = numbers.lines().filter(|line| line.starts_with(public));
    let counts = counts.filter_map(|line| line.rsplit(' ').next()?.parse::<usize>().ok());
    let asked = 1 + resources.len() * ways.len() * 3;
    assert_eq!(counts.sum::<usize>(), asked, "{numbers}");
}

/// All but the time of the answer, in order.
fn headers(answer: &Answer) -> BTreeSet<(String, String)> {
    let told = answer.headers.iter().filter(|(name, _)| *name != "date");
    let text = |(name, value): (&reqwest::header::HeaderName, &reqwest::header::HeaderValue)| {
        (name.to_string(), value.to_str().unwrap().to_owned())
    };
    told.map(text).collect()
}

#[test]
fn the_head_of_an_answer_tells_the_same_as_the_whole() {
    let wall = Wall::hang();
    let whole = wall.read("standings").with_status(200);
    let visitor = wall.stage.server.visitor();
    let head = visitor.ask(Method::HEAD, &wall.path("standings"), |request| request);
    assert_eq!((head.status, head.body.len()), (200, 0));
    let length = whole.body.len().to_string();
    assert_eq!(head.header("content-length"), Some(length.as_str()));
    for name in ["etag", "content-type", "last-modified", "vary"] {
        assert_eq!(head.header(name), whole.header(name), "{name}");
    }
}

#[test]
fn the_read_service_is_for_reading_what_there_is() {
    let wall = Wall::hang();
    let visitor = wall.stage.server.visitor();
    let standings = wall.path("standings");
    ask_with(&visitor, &standings, &[("accept", "image/png")]).refused(406, "not-acceptable");
    let written = visitor.post(&standings, &json!({}));
    assert_eq!(written.header("allow"), Some("GET, HEAD, OPTIONS"));
    written.refused(405, "method-not-allowed");
    for of in [
        "standings?week=0",
        "standings?week=52",
        "pairings?week=52",
        "weeks.html",
        "players/00000000-0000-0000-0000-000000000000/ledger",
    ] {
        wall.read(of).refused(404, "not-found");
    }
    for of in ["standings?weak=1", "standings?version=one", "weeks?week=1"] {
        wall.read(of).refused(400, "invalid-parameter");
    }
}

#[test]
fn what_is_not_for_everybody_is_not_there_whatever_is_asked() {
    let stage = Stage::draft();
    let draft = format!(
        "{}/standings",
        stage.season.replacen("/api/v1", "/public", 1)
    );
    let unknown = stage.server.visitor().get(&draft);
    unknown.refused(404, "not-found");

    let wall = Wall::over(stage);
    let known = wall.read("standings").with_status(200);
    let wennable = &wall.stage.wennable;
    let season = wennable.get(&wall.stage.season).with_status(200);
    let closed = json!({ "visibility": "club" });
    let close = |request: reqwest::blocking::RequestBuilder| {
        request.header("if-match", tag(&season)).json(&closed)
    };
    wennable
        .ask(Method::PATCH, &wall.stage.season, close)
        .expect(200);
    let visitor = wall.stage.server.visitor();
    for resource in RESOURCES {
        let path = wall.path(resource);
        let headers = [
            ("if-none-match", tag(&known)),
            ("range", "bytes=0-9".into()),
        ];
        let headers = headers
            .each_ref()
            .map(|(name, value)| (*name, value.as_str()));
        let answer = ask_with(&visitor, &path, &headers);
        assert_eq!(answer.header("cache-control"), Some("no-store"));
        assert_eq!(answer.header("etag"), None);
        answer.refused(404, "not-found");
    }
    wall.read("events").refused(404, "not-found");
}

#[test]
fn all_resources_of_one_version_are_of_one_version() {
    let wall = Wall::hang();
    let before = version(&wall.read("standings").expect(200));
    wall.give_a_point();
    for resource in RESOURCES {
        assert_eq!(version(&wall.read(resource).expect(200)), before + 1);
    }
}

/// Fetch Standard, CORS-preflight fetch: a conditional request from a page of another site asks first.
#[test]
fn a_page_of_another_site_may_read_and_is_told_so_before() {
    let wall = Wall::hang();
    let visitor = wall.stage.server.visitor();
    let preflight = |path: &str| {
        visitor.ask(Method::OPTIONS, path, |request| {
            request
                .header("origin", "https://club.example")
                .header("access-control-request-method", "GET")
                .header("access-control-request-headers", "if-none-match")
        })
    };
    for resource in RESOURCES.into_iter().chain(["events", "badge.svg"]) {
        let answer = preflight(&wall.path(resource)).with_status(204);
        assert_eq!(answer.header("access-control-allow-origin"), Some("*"));
        let headers = answer.header("access-control-allow-headers").unwrap();
        assert!(headers.contains("if-none-match"), "{headers}");
        let methods = answer.header("access-control-allow-methods").unwrap();
        assert!(
            methods.contains("GET") && !methods.contains("POST"),
            "{methods}"
        );
    }
    let refused = wall.read("standings?week=52");
    assert_eq!(refused.header("access-control-allow-origin"), Some("*"));
    refused.refused(404, "not-found");
    let desk = preflight(&wall.stage.season);
    assert_eq!(desk.header("access-control-allow-origin"), None);
}

#[test]
fn a_reader_that_has_seen_a_version_is_answered_with_nothing_older() {
    let wall = Wall::hang();
    let visitor = wall.stage.server.visitor();
    let version = wall.give_a_point_at(&wall.stage.server);
    let seen = format!("standings?at_least={version}");
    assert_eq!(total(&wall.read(&seen).expect(200)), 1);
    let ahead = wall.read(&format!("standings?at_least={}", version + 1));
    assert_eq!(ahead.header("retry-after"), Some("1"));
    ahead.refused(503, "unavailable");
    let tag = format!("\"{}.0123456789abcdef\"", version + 1);
    let path = wall.path("standings");
    ask_with(&visitor, &path, &[("if-none-match", &tag)]).refused(503, "unavailable");
    wall.give_a_point();
    assert_eq!(
        total(&ask_with(&visitor, &path, &[("if-none-match", &tag)]).expect(200)),
        2
    );
}
