//! Never stale: whoever asks after the writer was answered sees what was written.

use std::collections::BTreeMap;
use std::sync::atomic::{AtomicBool, AtomicI64, Ordering};
use std::thread;

use serde_json::json;

use super::{OpenSeason, ask_with, total};
use crate::harness::PublicTable;

/// Writes of one history. Thousands more say no more: each is a chance to read what is over.
const WRITES: i64 = 60;

#[test]
fn an_old_tag_is_never_confirmed_after_a_change_was_acknowledged() {
    let open = OpenSeason::start();
    let visitor = open.stage.server.visitor();
    let path = open.path("standings");
    for written in 1..=WRITES {
        let old = open.read("standings").etag();
        open.give_a_point();
        let answer = ask_with(&visitor, &path, &[("if-none-match", &old)]);
        assert_eq!(total(&answer.of().expect(200)), written);
    }
}

#[test]
fn a_version_that_the_season_has_not_come_to_is_refused_at_once_and_tags_of_it_change_nothing() {
    let open = OpenSeason::start();
    let visitor = open.stage.server.visitor();
    let newest = open.standings().version;
    for ahead in [newest + 1, i64::MAX - 1, i64::MAX] {
        let answer = open.public.by(&visitor).standings_from(ahead);
        assert_eq!(answer.header("retry-after"), None);
        let problem = answer.refused(422, "version-ahead");
        assert_eq!(problem.member("newest"), newest, "{problem}");
        let tag = format!("\"{ahead}.0b5c\"");
        let answer = ask_with(
            &visitor,
            &open.path("standings"),
            &[("if-none-match", &tag)],
        );
        assert_eq!(answer.of::<PublicTable>().expect(200).version, newest);
    }
    let log = open.stage.server.log();
    assert!(!log.contains("unavailable"), "{log}");
}

/// History check: each reader's versions never fall; what was acknowledged before a read began is
/// in its answer; and there is one body for each version, which holds as many points as that version
/// has writes.
#[test]
fn readers_beside_a_writer_see_whole_versions_that_only_rise() {
    let open = OpenSeason::start();
    let first = open.standings().version;
    let (acknowledged, over) = (AtomicI64::new(0), AtomicBool::new(false));
    let read = || {
        let visitor = open.stage.server.visitor();
        let mut seen: Vec<(i64, i64, Vec<u8>)> = Vec::new();
        while !over.load(Ordering::Acquire) {
            let before = acknowledged.load(Ordering::Acquire);
            let answer = open.public.by(&visitor).standings().with_status(200);
            seen.push((before, answer.view().version, answer.body));
        }
        seen
    };
    let histories = thread::scope(|scope| {
        let readers: Vec<_> = (0..3).map(|_| scope.spawn(read)).collect();
        for _ in 0..WRITES {
            open.give_a_point();
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
            assert_eq!(total(&table), version - first, "torn: {table:?}");
            let known = bodies.entry(version).or_insert_with(|| body.clone());
            assert_eq!(*known, body, "two bodies of version {version}");
        }
    }
}

#[test]
fn a_body_ends_with_the_moment_that_reveals_more() {
    let open = OpenSeason::start();
    let sheet = &tallyhost::demo::data::scenarios().unwrap()[1];
    open.stage.week(2).set_scenario(sheet).expect(204);
    let hidden = open.public.weeks().with_status(200);
    let week = hidden.view().weeks.remove(1);
    assert_eq!(week.phase, "planned");
    assert!(week.scenario.is_none(), "{week:?}");

    open.stage.clock().show(&week.announce_at);
    open.stage.until_reveals_are_published();
    let shown = open.public.weeks().with_status(200);
    let week = shown.view().weeks.remove(1);
    assert_eq!(week.phase, "announced");
    assert_eq!(week.scenario.unwrap().kind, "full");
    assert_ne!(shown.etag(), hidden.etag());
}

#[test]
fn a_scenario_that_changes_before_it_is_known_changes_when_it_will_be_known() {
    let open = OpenSeason::start();
    let mut sheet = tallyhost::demo::data::scenarios().unwrap()[1].clone();
    let week = open.stage.week(2);
    week.set_scenario(&sheet).expect(204);
    open.public.weeks().expect(200);
    let revealed = json!({ "kind": "at", "time": "2026-01-08T17:59:00" });
    *sheet.get_mut("full").unwrap() = revealed;
    week.set_scenario(&sheet).expect(204);
    let week = open.public.weeks().expect(200).weeks.remove(1);
    assert_eq!(week.scenario.unwrap().kind, "full");
}

#[test]
fn a_crowd_makes_a_body_once() {
    let open = OpenSeason::start();
    let made = || number(&open, "standings_pages{event=\"miss\"}");
    let before = made();
    thread::scope(|scope| {
        for _ in 0..8 {
            scope.spawn(|| open.read("standings").expect(200));
        }
    });
    assert_eq!(made(), before + 1);
    let before = encoded(&open);
    open.read("standings").expect(200);
    assert_eq!(encoded(&open), before);
}

#[test]
fn what_nobody_read_of_the_last_version_is_not_encoded_ahead() {
    let open = OpenSeason::start();
    let visitor = open.stage.server.visitor();
    let compressed = || {
        let answer = ask_with(
            &visitor,
            &open.path("standings"),
            &[("accept-encoding", "gzip")],
        );
        answer.with_status(200);
    };
    compressed();
    for _ in 0..2 {
        open.give_a_point();
        open.read("standings").expect(200);
    }
    let before = encoded(&open);
    compressed();
    assert_eq!(encoded(&open), before + 1);
}

fn encoded(open: &OpenSeason) -> u64 {
    number(open, "standings_pages{event=\"encode\"}")
}

/// One of the numbers for those who run the server.
fn number(open: &OpenSeason, name: &str) -> u64 {
    let text = open.stage.server.metrics();
    let line = text.lines().find_map(|line| line.strip_prefix(name));
    line.unwrap().trim().parse().unwrap()
}
