//! Reminding whoever owes something, without a word about who does not.

use std::collections::BTreeSet;

use serde_json::json;

use super::results::week::{FirstWeek, LAST_NIGHT, played};
use crate::harness::{List, Stage};

const LISTS: &str = "lists";
const RESULTS: &str = "results";

#[test]
fn whoever_has_no_sealed_list_is_reminded_and_the_trail_names_nobody() {
    let stage = Stage::draft();
    let [oskrel, corvanel, lumeth] =
        ["Oskrel", "Corvanel", "Lumeth"].map(|handle| stage.join(handle));
    stage.start();
    let week = stage.week(1);
    week.list_of(&oskrel)
        .seal(&List::demo("Oskrel", 1))
        .expect(201);
    week.list_of(&corvanel)
        .draft(&List::demo("Corvanel", 1))
        .expect(200);
    let reminded = week.remind(LISTS).expect(200).players;
    assert_eq!(reminded.len(), 2);
    let reminded: BTreeSet<String> = reminded.into_iter().collect();
    let missing = BTreeSet::from([corvanel.id, lumeth.id]);
    assert_eq!(reminded, missing, "a draft is not handed in");

    let newest = stage.season.trail().expect(200).remove(0);
    assert_eq!(newest.act, "send_reminders");
    assert_eq!(newest.facts, json!({ "week": 1, "about": "lists" }));
    let public = stage.season.by(&oskrel).trail().with_status(200).text();
    assert!(!public.contains("send_reminders"), "{public}");
}

#[test]
fn people_are_reminded_of_the_same_once_in_twelve_hours() {
    let stage = Stage::draft();
    stage.join("Oskrel");
    stage.start();
    let week = stage.week(1);
    week.remind(LISTS).expect(200);
    let soon = week.remind(LISTS).refused(429, "reminded-already");
    assert_eq!(soon.member("retry_after"), 12 * 60 * 60);
    stage.clock().show("2026-01-09T05:59:59.999999+01:00");
    week.remind(LISTS).refused(429, "reminded-already");
    stage.clock().show("2026-01-09T06:00:00+01:00");
    week.remind(LISTS).expect(200);
}

#[test]
fn nobody_is_reminded_of_what_is_not_due() {
    let week = FirstWeek::paired(&["Oskrel", "Corvanel"]);
    let remind = |about| week.week().remind(about);
    remind(LISTS).refused(409, "week-state");
    week.stage.clock().show("2026-01-13T18:59:59+01:00");
    remind(RESULTS).refused(409, "week-state");
    week.stage.clock().show(LAST_NIGHT);
    assert_eq!(remind(RESULTS).expect(200).players.len(), 2);
    let [first, _] = week.sides();
    week.report(first, "one", &played((4, 144), (2, 108)))
        .expect(200);
    week.stage.clock().show("2026-01-16T19:00:00+01:00");
    remind(RESULTS).refused(409, "week-state");
}
