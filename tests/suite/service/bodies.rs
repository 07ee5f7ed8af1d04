use std::collections::BTreeSet;

use reqwest::Method;
use serde_json::json;

use super::{OpenSeason, ask_with, total, version};
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
    let open = OpenSeason::start();
    let visitor = open.stage.server.visitor();
    open.give_a_point();
    assert_eq!(total(&open.standings()), 1);
    let own = open.public.ledger(&open.oskrel.id, "").expect(200);
    assert_eq!(own.total, 1);
    let ledger = open.ledger_of_oskrel();
    for resource in RESOURCES.into_iter().chain([ledger.as_str()]) {
        let json = open.read(&format!("{resource}.json")).with_status(200);
        assert_eq!(json.header("content-type"), Some("application/json"));
        let same = open.read(resource).with_status(200);
        assert_eq!((&same.body, same.etag()), (&json.body, json.etag()));
        let csv = open.read(&format!("{resource}.csv")).with_status(200);
        let path = open.path(resource);
        let same = ask_with(&visitor, &path, &[("accept", "text/csv, */*;q=0.1")]);
        assert_eq!((&same.body, same.etag()), (&csv.body, csv.etag()));
        assert!(csv.header("content-type").unwrap().starts_with("text/csv"));
        let columns = csv.text().lines().next().unwrap().split(',').count();
        assert!(columns > 4, "{}", csv.text());
        for answer in [json, csv] {
            assert_eq!(answer.header("access-control-allow-origin"), Some("*"));
            assert_eq!(answer.header("cache-control"), Some("public, no-cache"));
            assert!(answer.header("last-modified").unwrap().ends_with(" GMT"));
        }
    }
    assert!(open.read("standings.csv").text().contains("\r\n1,Oskrel,"));
}

#[test]
fn a_table_says_its_tie_breaks_once_and_each_row_has_its_values_in_their_order() {
    let open = OpenSeason::start();
    let table = open.standings();
    let policy = open.stage.season.state().expect(200).policy;
    let order = policy.pointer("/tie_breaks/order").unwrap();
    assert_eq!(json!(table.tie_breaks), *order);
    for row in &table.rows {
        let values = &row.tie_breaks;
        assert_eq!(values.len(), table.tie_breaks.len());
        let value = |name: &str| {
            let place = table.tie_breaks.iter().position(|it| it == name);
            values[place.unwrap()].as_deref()
        };
        assert_eq!(value("score_margin"), Some("0"));
        assert_eq!(value("direct_encounter"), None);
    }
}

#[test]
fn a_table_and_a_badge_go_into_the_pages_of_others() {
    let open = OpenSeason::start();
    let table = open.read("standings.html").with_status(200);
    let policy = table.header("content-security-policy").unwrap();
    assert!(policy.contains("frame-ancestors *"), "{policy}");
    assert!(table.text().contains("<th scope=\"row\">Oskrel</th>"));
    open.give_a_point();
    let badge = open.read("badge.svg").with_status(200);
    assert_eq!(badge.header("content-type"), Some("image/svg+xml"));
    assert!(badge.text().contains("week 1: Oskrel"), "{}", badge.text());
}

#[test]
fn a_table_and_a_badge_are_in_the_language_of_their_address() {
    let open = OpenSeason::start();
    open.give_a_point();
    for (language, column, week) in [
        ("en", "Points", "week 1: Oskrel"),
        ("de", "Punkte", "Woche 1: Oskrel"),
        ("fr", "Victoires", "semaine 1: Oskrel"),
    ] {
        let table = open
            .read(&format!("standings.{language}.html"))
            .with_status(200);
        assert!(
            table
                .text()
                .contains(&format!("<html lang=\"{language}\">"))
        );
        assert!(table.text().contains(column), "{}", table.text());
        let badge = open.read(&format!("badge.{language}.svg")).with_status(200);
        assert!(badge.text().contains(week), "{}", badge.text());
    }
    open.read("standings.xx.html").with_status(404);
    open.read("badge.xx.svg").with_status(404);
}

#[test]
fn a_body_that_has_not_changed_is_not_sent_again() {
    let open = OpenSeason::start();
    let visitor = open.stage.server.visitor();
    for resource in RESOURCES {
        let path = open.path(resource);
        let mut tags = Vec::new();
        for encoding in ["identity", "gzip", "br"] {
            let first = ask_with(&visitor, &path, &[("accept-encoding", encoding)]);
            let coded = (encoding != "identity").then_some(encoding);
            assert_eq!(first.header("content-encoding"), coded);
            let headers = [
                ("accept-encoding", encoding),
                ("if-none-match", &first.etag()),
            ];
            let again = ask_with(&visitor, &path, &headers).with_status(304);
            assert!(again.body.is_empty());
            assert_eq!(again.etag(), first.etag());
            tags.push(first.etag());
        }
        tags.dedup();
        assert_eq!(tags.len(), 3, "other bytes, other tag: {tags:?}");
    }
}

/// The first answer passes everything that surrounds a route; those after it are given at the front.
#[test]
fn the_same_request_is_answered_alike_each_time_and_counted() {
    let open = OpenSeason::start();
    let visitor = open.stage.server.visitor();
    let tag = open.read("standings").etag();
    let resources = ["standings", "standings.csv", "standings.html", "weeks"];
    let ways = [
        ("accept-encoding", "br, gzip"),
        ("accept-encoding", "identity"),
        ("if-none-match", tag.as_str()),
    ];
    for resource in resources {
        for way in ways {
            let ask = || ask_with(&visitor, &open.path(resource), &[way]);
            let [first, second, third] = [(); 3].map(|()| ask());
            for later in [second, third] {
                assert_eq!((later.status, &later.body), (first.status, &first.body));
                assert_eq!(headers(&later), headers(&first));
            }
        }
    }
    let numbers = open.stage.server.metrics();
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
    let open = OpenSeason::start();
    let whole = open.read("standings").with_status(200);
    let visitor = open.stage.server.visitor();
    let head = visitor.ask(Method::HEAD, &open.path("standings"), |request| request);
    assert_eq!((head.status, head.body.len()), (200, 0));
    let length = whole.body.len().to_string();
    assert_eq!(head.header("content-length"), Some(length.as_str()));
    for name in ["etag", "content-type", "last-modified", "vary"] {
        assert_eq!(head.header(name), whole.header(name), "{name}");
    }
}

#[test]
fn the_read_service_is_for_reading_what_there_is() {
    let open = OpenSeason::start();
    let visitor = open.stage.server.visitor();
    let standings = open.path("standings");
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
        open.read(of).refused(404, "not-found");
    }
    for of in ["standings?weak=1", "standings?version=one", "weeks?week=1"] {
        open.read(of).refused(400, "invalid-parameter");
    }
}

#[test]
fn what_is_not_for_everybody_is_not_there_whatever_is_asked() {
    let stage = Stage::draft();
    let draft = stage.season.by(stage.visitor()).for_everybody();
    draft.standings().refused(404, "not-found");

    let open = OpenSeason::over(stage);
    let known = open.read("standings").with_status(200);
    let closed = json!({ "visibility": "club" });
    open.stage.season.update(&closed).expect(200);
    let visitor = open.stage.server.visitor();
    for resource in RESOURCES {
        let path = open.path(resource);
        let headers = [
            ("if-none-match", known.etag()),
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
    open.read("events").refused(404, "not-found");
}

#[test]
fn all_resources_of_one_version_are_of_one_version() {
    let open = OpenSeason::start();
    let before = open.standings().version;
    open.give_a_point();
    for resource in RESOURCES {
        assert_eq!(version(&open.read(resource).expect(200)), before + 1);
    }
}

/// Fetch Standard, CORS-preflight fetch: a conditional request from a page of another site asks first.
#[test]
fn a_page_of_another_site_may_read_and_is_told_so_before() {
    let open = OpenSeason::start();
    let visitor = open.stage.server.visitor();
    let preflight = |path: &str| {
        visitor.ask(Method::OPTIONS, path, |request| {
            request
                .header("origin", "https://club.example")
                .header("access-control-request-method", "GET")
                .header("access-control-request-headers", "if-none-match")
        })
    };
    for resource in RESOURCES.into_iter().chain(["events", "badge.svg"]) {
        let answer = preflight(&open.path(resource)).with_status(204);
        assert_eq!(answer.header("access-control-allow-origin"), Some("*"));
        let headers = answer.header("access-control-allow-headers").unwrap();
        assert!(headers.contains("if-none-match"), "{headers}");
        let methods = answer.header("access-control-allow-methods").unwrap();
        assert!(
            methods.contains("GET") && !methods.contains("POST"),
            "{methods}"
        );
    }
    let refused = open.read("standings?week=52");
    assert_eq!(refused.header("access-control-allow-origin"), Some("*"));
    refused.refused(404, "not-found");
    let desk = preflight(&open.stage.season.path);
    assert_eq!(desk.header("access-control-allow-origin"), None);
}

#[test]
fn a_reader_that_has_seen_a_version_is_answered_with_nothing_older() {
    let open = OpenSeason::start();
    let visitor = open.stage.server.visitor();
    let version = open.give_a_point_at(&open.stage.server);
    let seen = open.public.standings_from(version);
    assert_eq!(total(&seen.expect(200)), 1);
    let ahead = open.public.standings_from(version + 1);
    ahead.refused(422, "version-ahead");
    let tag = format!("\"{}.0123456789abcdef\"", version + 1);
    let path = open.path("standings");
    let now = ask_with(&visitor, &path, &[("if-none-match", &tag)]);
    assert_eq!(total(&now.of().expect(200)), 1);
    open.give_a_point();
    let newer = ask_with(&visitor, &path, &[("if-none-match", &tag)]);
    assert_eq!(total(&newer.of().expect(200)), 2);
}
