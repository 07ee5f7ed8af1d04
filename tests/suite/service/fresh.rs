//! Never stale: whoever asks after the writer was answered sees what was written.

use std::collections::BTreeMap;
use std::sync::atomic::{AtomicBool, AtomicI64, Ordering};
use std::thread;

use super::{Wall, ask_with, tag, total, version};
use crate::harness::until;

/// Writes of one history. Thousands more say no more: each is a chance to read what is over.
const WRITES: i64 = 60;

#[test]
fn an_old_tag_is_never_confirmed_after_a_change_was_acknowledged() {
    let wall = Wall::hang();
    let visitor = wall.stage.server.visitor();
    let path = wall.path("standings");
    for written in 1..=WRITES {
        let old = tag(&wall.read("standings"));
        wall.give_a_point();
        let answer = ask_with(&visitor, &path, &[("if-none-match", &old)]);
        assert_eq!(total(&answer.expect(200)), written);
    }
}

/// History check: each reader's versions never fall; what was acknowledged before a read began is
/// in its answer; and there is one body for each version, which holds as many points as that version
/// has writes.
#[test]
fn readers_beside_a_writer_see_whole_versions_that_only_rise() {
    let wall = Wall::hang();
    let first = version(&wall.read("standings").expect(200));
    let (acknowledged, over) = (AtomicI64::new(0), AtomicBool::new(false));
    let read = || {
        let visitor = wall.stage.server.visitor();
        let mut seen: Vec<(i64, i64, Vec<u8>)> = Vec::new();
        while !over.load(Ordering::Acquire) {
            let before = acknowledged.load(Ordering::Acquire);
            let answer = visitor.get(&wall.path("standings")).with_status(200);
            seen.push((before, version(&answer.json()), answer.body));
        }
        seen
    };
    let histories = thread::scope(|scope| {
        let readers: Vec<_> = (0..3).map(|_| scope.spawn(read)).collect();
        for _ in 0..WRITES {
            wall.give_a_point();
            acknowledged.fetch_add(1, Ordering::AcqRel);
        }
        over.store(true, Ordering::Release);
        let seen = readers.into_iter().map(|reader| reader.join().unwrap());
        seen.collect::<Vec<_>>()
    });
    let mut bodies = BTreeMap::new();
    for history in histories {
        assert!(!history.is_empty());
        assert!(history.is_sorted_by_key(|(_, version, _)| *version));
        for (acknowledged, version, body) in history {
            assert!(version >= first + acknowledged, "stale: {version}");
            let table = serde_json::from_slice(&body).unwrap();
            assert_eq!(total(&table), version - first, "torn: {table}");
            let known = bodies.entry(version).or_insert_with(|| body.clone());
            assert_eq!(*known, body, "two bodies of version {version}");
        }
    }
}

#[test]
fn a_body_ends_with_the_moment_that_reveals_more() {
    let wall = Wall::hang();
    let sheet = &tallyhost::demo::data::scenarios().unwrap()[1];
    let scenario = format!("{}/scenario", wall.stage.week(2));
    wall.stage.wennable.put(&scenario, sheet).expect(204);
    let hidden = wall.read("weeks").with_status(200);
    let week = hidden.json()["weeks"][1].clone();
    assert_eq!(week["phase"], "planned");
    assert!(week.get("scenario").is_none(), "{week}");

    let announced = week["announce_at"].as_str().unwrap();
    wall.stage.clock().show(announced);
    until("the week is announced", || {
        wall.read("weeks").expect(200)["weeks"][1]["phase"] == "announced"
    });
    let shown = wall.read("weeks").with_status(200);
    let seen = &shown.json()["weeks"][1]["scenario"];
    assert_eq!(seen["kind"], "full", "{seen}");
    assert_ne!(tag(&shown), tag(&hidden));
}

#[test]
fn a_scenario_that_changes_before_it_is_known_changes_when_it_will_be_known() {
    let wall = Wall::hang();
    let mut sheet = tallyhost::demo::data::scenarios().unwrap()[1].clone();
    let scenario = format!("{}/scenario", wall.stage.week(2));
    wall.stage.wennable.put(&scenario, &sheet).expect(204);
    wall.read("weeks").expect(200);
    sheet["full"] = serde_json::json!({ "kind": "at", "time": "2026-01-08T17:59:00" });
    wall.stage.wennable.put(&scenario, &sheet).expect(204);
    let week = wall.read("weeks").expect(200)["weeks"][1].clone();
    assert_eq!(week["scenario"]["kind"], "full", "{week}");
}

#[test]
fn a_crowd_makes_a_body_once() {
    let wall = Wall::hang();
    let made = || number(&wall, "standings_pages{event=\"miss\"}");
    let before = made();
    thread::scope(|scope| {
        for _ in 0..8 {
            scope.spawn(|| wall.read("standings").expect(200));
        }
    });
    assert_eq!(made(), before + 1);
    let before = encoded(&wall);
    wall.read("standings").expect(200);
    assert_eq!(encoded(&wall), before);
}

#[test]
fn what_nobody_read_of_the_last_version_is_not_encoded_ahead() {
    let wall = Wall::hang();
    let visitor = wall.stage.server.visitor();
    let compressed = || {
        let answer = ask_with(
            &visitor,
            &wall.path("standings"),
            &[("accept-encoding", "gzip")],
        );
        answer.with_status(200);
    };
    compressed();
    for _ in 0..2 {
        wall.give_a_point();
        wall.read("standings").expect(200);
    }
    let before = encoded(&wall);
    compressed();
    assert_eq!(encoded(&wall), before + 1);
}

fn encoded(wall: &Wall) -> u64 {
    number(wall, "standings_pages{event=\"encode\"}")
}

/// One of the numbers for those who run the server.
fn number(wall: &Wall, name: &str) -> u64 {
    let text = wall.stage.server.visitor().get("/metrics").text();
    let line = text.lines().find_map(|line| line.strip_prefix(name));
    line.unwrap().trim().parse().unwrap()
}
