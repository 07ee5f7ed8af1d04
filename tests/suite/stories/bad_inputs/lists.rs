//! Lists that break the week, and bodies that are no lists.

use reqwest::Method;
use serde_json::{Value, json};

use super::{Started, json_text};
use crate::harness::{Entry, List, Said};

#[test]
fn a_list_that_breaks_the_week_is_refused_with_every_breach() {
    let started = Started::start();
    let own = started.stage.week(1).list_of(&started.oskrel);
    let cases: [(&str, List, &str, &[Said<'_>]); 6] = [
        (
            "one point over the cap",
            steadings(&[
                ("hedge-reeve", 1, &["thorn-crook"]),
                ("orchard-levy", 10, &[]),
                ("orchard-levy", 20, &[]),
                ("threshers", 4, &[]),
            ]),
            "points-cap-exceeded",
            &[("list.over-cap", "", json!(300), json!(301))],
        ),
        (
            "a unit that nobody knows",
            steadings(&[
                ("hedge-reeve", 1, &[]),
                ("orchard-levy", 10, &[]),
                ("moon-hares", 6, &[]),
            ]),
            "list-breaks-rules",
            &[("list.unknown-unit", "/entries/2", Value::Null, Value::Null)],
        ),
        (
            "an option of another unit",
            steadings(&[
                ("hedge-reeve", 1, &["spare-bell"]),
                ("orchard-levy", 10, &[]),
            ]),
            "list-breaks-rules",
            &[(
                "list.unknown-option",
                "/entries/0",
                Value::Null,
                Value::Null,
            )],
        ),
        (
            "no models, and more than any army has",
            steadings(&[
                ("hedge-reeve", 1, &[]),
                ("orchard-levy", 0, &[]),
                ("orchard-levy", u32::MAX, &[]),
            ]),
            "list-breaks-rules",
            &[
                ("list.unit-size", "/entries/1", json!(10), json!(0)),
                ("list.unit-size", "/entries/2", json!(20), json!(u32::MAX)),
            ],
        ),
        (
            "another faction",
            List::demo("Corvanel", 1),
            "list-breaks-rules",
            &[("list.faction-lock", "", Value::Null, Value::Null)],
        ),
        (
            "nothing at all",
            steadings(&[]),
            "list-breaks-rules",
            &[
                ("list.kind-count", "", json!(1), json!(0)),
                ("list.kind-count", "", json!(1), json!(0)),
            ],
        ),
    ];
    for (name, list, code, expected) in cases {
        let problem = started.nothing_written(name, || own.seal(&list).refused(422, code));
        assert_eq!(problem.said(), expected, "{name}: {problem}");
    }
}

#[test]
fn a_body_that_is_none_is_refused_by_its_place() {
    let started = Started::start();
    let over = "x".repeat(61);
    let cases: [(&str, &str, u16, &str, &[&str]); 17] = [
        (
            "negative",
            r#"{"faction":"a","entries":[{"key":"a","unit":"b","models":-3}]}"#,
            422,
            "validation",
            &["/entries/0/models"],
        ),
        (
            "2^32",
            r#"{"faction":"a","entries":[{"key":"a","unit":"b","models":4294967296}]}"#,
            422,
            "validation",
            &["/entries/0/models"],
        ),
        (
            "a text for a number",
            r#"{"faction":"a","entries":[{"key":"a","unit":"b","models":"8"}]}"#,
            422,
            "validation",
            &["/entries/0/models"],
        ),
        (
            "a fraction",
            r#"{"faction":"a","entries":[{"key":"a","unit":"b","models":8.0}]}"#,
            422,
            "validation",
            &["/entries/0/models"],
        ),
        (
            "an exponent",
            r#"{"faction":"a","entries":[{"key":"a","unit":"b","models":1e2}]}"#,
            422,
            "validation",
            &["/entries/0/models"],
        ),
        (
            "not a number",
            r#"{"faction":"a","entries":[{"key":"a","unit":"b","models":NaN}]}"#,
            400,
            "malformed-json",
            &[],
        ),
        (
            "a time of one's own",
            r#"{"faction":"a","entries":[],"submitted_at":"2026-01-01T00:00:00Z"}"#,
            422,
            "unknown-field",
            &["/submitted_at"],
        ),
        (
            "a field too few",
            r#"{"faction":"a"}"#,
            422,
            "validation",
            &["/entries"],
        ),
        (
            "the same key twice",
            r#"{"faction":"a","entries":[{"key":"a","unit":"b","models":1},{"key":"a","unit":"b","models":1}]}"#,
            422,
            "validation",
            &["/entries/1/key"],
        ),
        (
            "keys that are none",
            r#"{"faction":"A B","entries":[{"key":"","unit":"../x","models":1}]}"#,
            422,
            "validation",
            &["/faction", "/entries/0/key", "/entries/0/unit"],
        ),
        (
            "U+0000",
            "{\"faction\":\"a\\u0000\",\"entries\":[]}",
            422,
            "validation",
            &["/faction"],
        ),
        (
            "half a surrogate pair",
            r#"{"faction":"\ud800","entries":[]}"#,
            400,
            "malformed-json",
            &[],
        ),
        (
            "a doubled name",
            r#"{"faction":"a","faction":"b","entries":[]}"#,
            400,
            "malformed-json",
            &[],
        ),
        (
            "more after the end",
            r#"{"faction":"a","entries":[]} {}"#,
            400,
            "malformed-json",
            &[],
        ),
        (
            "a byte order mark",
            "\u{feff}{\"faction\":\"a\",\"entries\":[]}",
            400,
            "malformed-json",
            &[],
        ),
        (
            "cut off",
            r#"{"faction":"a","entries":["#,
            400,
            "malformed-json",
            &[],
        ),
        ("nothing", "", 400, "malformed-json", &[]),
    ];
    let own = started.stage.week(1).list_of(&started.oskrel);
    for (name, body, status, code, places) in cases {
        let problem = started.nothing_written(name, || {
            json_text(&own.actor, Method::POST, &own.at("seal"), body).refused(status, code)
        });
        assert_eq!(problem.pointers(), places, "{name}: {problem}");
    }
    let many = List::of("a", vec![Entry::new(over, "b", 1); 201]);
    let problem =
        started.nothing_written("201 entries", || own.seal(&many).refused(422, "validation"));
    assert_eq!(problem.pointers().len(), 201);
}

fn steadings(units: &[(&str, u32, &[&str])]) -> List {
    let units = units.iter().enumerate();
    let entries = units.map(|(place, (unit, models, options))| {
        Entry::new(format!("unit-{place}"), unit, *models).with(options)
    });
    List::of("bramblestile-steadings", entries)
}
