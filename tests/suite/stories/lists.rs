//! A week's lists: drafted, checked, sealed, opened all at once.

use std::collections::BTreeMap;
use std::io::Write;
use std::process::{Command, Stdio};
use std::thread;

use chrono::Duration;
use serde_json::{Value, json};

use crate::harness::{Entry, List, Player, Receipt, Stage, WeekLists};

pub const LAST_MOMENT: &str = "2026-01-12T20:59:59.999999+01:00";
pub const DEADLINE: &str = "2026-01-12T21:00:00+01:00";
/// Week 2 is announced.
pub const SECOND_WEEK: &str = "2026-01-15T18:00:00+01:00";

#[test]
fn a_draft_belongs_to_its_owner_and_two_windows_do_not_overwrite_each_other() {
    let stage = Stage::draft();
    let [oskrel, corvanel] = ["Oskrel", "Corvanel"].map(|handle| stage.join(handle));
    stage.start();
    let own = stage.week(1).list_of(&oskrel);
    own.own().refused(404, "not-found");

    let whole = List::demo("Oskrel", 1);
    let first = own.draft(&whole).with_status(200);
    assert_eq!(first.etag(), "\"1\"");
    own.draft(&whole).refused(428, "precondition-required");
    let half = List::of("bramblestile-steadings", []);
    let second = own.draft_over("\"1\"", &half).expect(200);
    assert_eq!(second.draft_revision, 2);
    let stale = own
        .draft_over("\"1\"", &half)
        .refused(412, "version-mismatch");
    assert_eq!(stale.member("revision"), 2);

    let kept = own.own().expect(200);
    assert_eq!(kept.draft, Some(half));
    assert!(kept.sealed.is_none());
    let others = stage.week(1).list_of(&corvanel);
    others.own().refused(404, "not-found");
}

#[test]
fn a_check_tells_everything_and_saves_nothing() {
    let stage = Stage::draft();
    let lumeth = stage.join("Lumeth");
    stage.start();
    let hulks = [
        Entry::new("a", "mire-speaker", 1),
        Entry::new("b", "sump-midwife", 1),
        Entry::new("c", "bog-oak-hulks", 3),
        Entry::new("d", "turf-cutters", 8),
    ];
    let own = stage.week(1).list_of(&lumeth);
    let checked = own.check(&List::of("sodwether-moot", hulks)).expect(200);
    let report = checked.report;
    assert_eq!((report.accepted, report.total), (false, 75 + 50 + 135 + 56));
    assert_eq!(
        report.measured(),
        [
            ("list.over-cap", Some(300), Some(316)),
            ("list.kind-count", Some(1), Some(2)),
            ("list.largest-unit", Some(120), Some(135)),
        ]
    );
    own.own().refused(404, "not-found");
}

#[test]
fn a_sealed_list_gives_a_receipt_that_sha256sum_confirms_and_another_takes_its_place() {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.start();
    let own = stage.week(1).list_of(&oskrel);
    let whole = List::demo("Oskrel", 1);
    let sealed = own.seal(&whole).with_status(201);
    assert_eq!(sealed.header("location"), Some(own.path.as_str()));
    let receipt = sealed.view();
    assert_eq!(receipt.list(), whole);
    assert_eq!(receipt.digest, sha256sum(&receipt.contents));
    assert_eq!(receipt.report.total, 300);

    let smaller = whole.without_last_entry();
    let second = own.seal(&smaller).expect(201);
    assert_eq!(second.digest, sha256sum(&second.contents));
    assert_ne!(second.salt(), receipt.salt());
    let kept = own.own().expect(200).sealed.unwrap();
    assert_eq!((kept.list, kept.receipt), (smaller, second.digest));
}

#[test]
fn a_token_that_has_run_out_and_one_whose_session_is_over_seal_nothing() {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.start();
    let visitor = stage.visitor();
    let sign_in = || {
        let tokens = visitor.sign_in_with("oskrel@example.org", "six lanterns on the ford");
        visitor.holding(&tokens.expect(200).access)
    };
    let own = stage.week(1).list_of(&oskrel);
    let list = List::demo("Oskrel", 1);
    let [old, ended] = [(); 2].map(|()| sign_in());
    ended.sign_out().expect(204);
    own.by(&ended).seal(&list).refused(401, "invalid-token");
    stage.clock().advance(Duration::minutes(15));
    own.by(&old).seal(&list).refused(401, "invalid-token");
    own.by(&visitor).seal(&list).refused(401, "sign-in-needed");
    own.own().refused(404, "not-found");
    own.by(sign_in()).seal(&list).expect(201);
}

#[test]
fn of_several_lists_the_last_one_counts_and_every_receipt_stays_a_proof() {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.start();
    let whole = List::demo("Oskrel", 1);
    let smaller = whole.clone().without_last_entry();
    let smallest = smaller.clone().without_last_entry();
    let lists = [whole, smallest, smaller];
    let own = stage.week(1).list_of(&oskrel);
    let receipts = lists.each_ref().map(|list| own.seal(list).expect(201));
    stage.clock().show(DEADLINE);
    stage.week(1).open_lists().expect(204);

    let opened = opened(&stage, 1);
    let mut sealed = opened.lists.iter().filter(|list| list.state == "sealed");
    let opened = sealed.next().unwrap().sealed();
    let [first, second, last] = &receipts;
    assert_eq!(opened.list, last.list());
    assert_eq!(opened.receipt, last.digest);
    for (receipt, list) in receipts.iter().zip(&lists) {
        assert_eq!(receipt.list(), *list);
        assert_eq!(receipt.digest, sha256sum(&receipt.contents));
        assert_eq!(receipt.list_id(), first.list_id());
    }
    let mut forged = second.contents.clone();
    *forged.pointer_mut("/salt").unwrap() = last.salt().clone();
    assert_ne!(
        second.digest,
        sha256sum(&forged),
        "each list has a salt of its own"
    );
}

#[test]
fn first_lists_that_a_player_sends_at_the_same_moment_are_one_list_with_several_receipts() {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.start();
    let list = List::demo("Oskrel", 1);
    let own = stage.week(1).list_of(&oskrel);
    let receipts: Vec<Receipt> = thread::scope(|threads| {
        let send = || own.seal(&list).expect(201);
        let sent = [(); 4].map(|()| threads.spawn(send));
        sent.map(|one| one.join().unwrap()).into()
    });

    let kept = own.own().expect(200);
    let sealed = kept.sealed.unwrap();
    for receipt in &receipts {
        assert_eq!(receipt.list_id(), &kept.id);
        assert_eq!(receipt.digest, sha256sum(&receipt.contents));
    }
    let counts = |receipt: &&Receipt| receipt.digest == sealed.receipt;
    assert_eq!(receipts.iter().filter(counts).count(), 1);
}

#[test]
fn of_lists_that_are_sealed_at_the_same_moment_the_one_with_the_latest_receipt_stands() {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.start();
    stage.clock().run();
    let list = List::demo("Oskrel", 1);
    let own = stage.week(1).list_of(&oskrel);
    let seal_at_once = || {
        thread::scope(|threads| {
            let sent = [(); 4].map(|()| threads.spawn(|| own.seal(&list).expect(201)));
            sent.map(|one| one.join().unwrap())
        })
    };
    for round in 0..25 {
        let receipts = seal_at_once();
        let instant =
            |receipt: &&Receipt| chrono::DateTime::parse_from_rfc3339(&receipt.sealed_at).unwrap();
        let last = receipts.iter().max_by_key(instant).unwrap();
        let kept = own.own().expect(200).sealed.unwrap();
        assert_eq!(kept.receipt, last.digest, "round {round}");
    }
}

#[test]
fn a_list_is_in_time_up_to_the_last_microsecond_of_the_grace() {
    let stage = Stage::draft();
    let [oskrel, corvanel] = ["Oskrel", "Corvanel"].map(|handle| stage.join(handle));
    let [own, late] = [&oskrel, &corvanel].map(|player| stage.week(1).list_of(player));
    let list = List::demo("Oskrel", 1);
    stage.clock().show("2026-01-08T17:59:59.999999+01:00");
    stage.season.start().expect(200);
    own.seal(&list).refused(409, "week-state");

    stage.clock().show(LAST_MOMENT);
    own.seal(&list).expect(201);
    stage.clock().show(DEADLINE);
    let refused = late
        .seal(&List::demo("Corvanel", 1))
        .refused(409, "deadline-passed");
    assert_eq!(refused.member("deadline"), "2026-01-12T20:00:00+00:00");
    assert_eq!(refused.member("server_time"), "2026-01-12T20:00:00+00:00");
    late.own().refused(404, "not-found");
    let replaced = list.clone().without_last_entry();
    own.seal(&replaced).refused(409, "deadline-passed");
    assert_eq!(own.own().expect(200).sealed.unwrap().list, list);
}

#[test]
fn late_lists_need_leave_which_everybody_can_read_and_nobody_gives_to_themselves() {
    const REASON: &str = "Power cut in Mill Lane";
    let stage = Stage::draft();
    let [wennable, pellamoor] = ["Wennable", "Pellamoor"].map(|handle| stage.join(handle));
    stage.start();
    stage.clock().show(DEADLINE);
    let week = stage.week(1);
    week.grant_late_leave(&wennable, REASON)
        .refused(403, "conflict-of-interest");
    week.by(&pellamoor)
        .grant_late_leave(&pellamoor, REASON)
        .refused(403, "forbidden");
    week.grant_late_leave(&pellamoor, REASON).expect(204);
    week.grant_late_leave(&pellamoor, REASON)
        .refused(409, "week-state");

    stage.clock().show("2026-01-12T21:30:59+01:00");
    let sealed = week.list_of(&pellamoor).seal(&List::demo("Pellamoor", 1));
    assert_eq!(sealed.expect(201).late_minutes, Some(30));
    let trail = stage.season.by(stage.visitor()).trail().expect(200);
    let told = trail.iter().find(|entry| entry.act == "grant_late_leave");
    assert_eq!(told.unwrap().fact("reason"), REASON);
}

#[test]
fn lists_are_opened_all_at_once_and_last_weeks_stands_in_where_none_came() {
    let stage = Stage::draft();
    let [oskrel, corvanel] = ["Oskrel", "Corvanel"].map(|handle| stage.join(handle));
    stage.start();
    let first_list = List::demo("Oskrel", 1);
    let [first, second] = [1, 2].map(|week| stage.week(week));
    first.list_of(&oskrel).seal(&first_list).expect(201);
    stage.clock().show(LAST_MOMENT);
    first.open_lists().refused(409, "deadline-ahead");
    let trail = stage.season.by(stage.visitor()).trail().expect(200);
    assert_eq!(
        (trail[0].act.as_str(), &trail[0].facts),
        ("open_lists_too_early", &json!({ "week": 1 })),
        "everybody can read who tried"
    );
    stage.clock().show(DEADLINE);
    first.open_lists().expect(204);
    first.open_lists().expect(204);
    let lists = opened(&stage, 1);
    assert_eq!(lists.of(&corvanel).state, "missing");
    assert_eq!(lists.of(&oskrel).sealed().list, first_list);

    stage.clock().show(SECOND_WEEK);
    let own = second.list_of(&corvanel);
    own.seal(&List::demo("Corvanel", 2)).expect(201);
    stage.clock().show("2026-01-19T21:00:00+01:00");
    second.open_lists().expect(204);
    let lists = opened(&stage, 2);
    assert!(!lists.of(&corvanel).sealed().stands_in);
    let stand_in = lists.of(&oskrel).sealed();
    assert!(stand_in.stands_in);
    assert_eq!(stand_in.list, first_list);
}

#[test]
fn nobody_learns_of_a_list_before_it_is_opened() {
    let stage = Stage::draft();
    let [oskrel, corvanel, lumeth] =
        ["Oskrel", "Corvanel", "Lumeth"].map(|handle| stage.join(handle));
    stage.start();
    let week = stage.week(1);
    let before = seen(&stage, &lumeth);
    week.list_of(&oskrel)
        .seal(&List::demo("Oskrel", 1))
        .expect(201);
    week.list_of(&corvanel)
        .draft(&List::demo("Corvanel", 1))
        .expect(200);
    assert_eq!(seen(&stage, &lumeth), before);

    for person in [&lumeth.actor, &stage.visitor()] {
        let lists = |week| stage.week(week).by(person).lists();
        let hidden = lists(1).refused(404, "not-found");
        let absent = lists(52).refused(404, "not-found");
        assert_eq!(hidden.detail, absent.detail);
    }
    let known = week.lists().with_status(200);
    for word in ["bramblestile", "orrery", "hedge-reeve", "points", "receipt"] {
        assert!(!known.text().contains(word), "{word} in {}", known.text());
    }
    let known = known.view();
    assert!(!known.opened);
    let states = [&oskrel, &corvanel, &lumeth].map(|player| known.of(player).state.as_str());
    assert_eq!(states, ["sealed", "draft", "missing"]);
}

/// All that others can see of the season, without what differs in every answer.
fn seen(stage: &Stage, by: &Player) -> Vec<(Option<String>, String)> {
    let paths = [
        "",
        "players",
        "weeks",
        "trail",
        "weeks/1/lists",
        "weeks/1/scenario",
    ];
    let season = stage.season.by(by);
    let look = |path| {
        let answer = season.get::<Value>(path);
        let mut body = answer.json();
        if let Some(problem) = body.as_object_mut() {
            problem.remove("request_id");
        }
        (answer.header("etag").map(str::to_owned), body.to_string())
    };
    paths.map(look).to_vec()
}

/// The opened lists of a week as a visitor reads them.
pub fn opened(stage: &Stage, week: u8) -> WeekLists {
    let lists = stage.week(week).by(stage.visitor()).lists().expect(200);
    assert!(lists.opened);
    lists
}

/// What `sha256sum` prints for the canonical JSON of a value.
fn sha256sum(value: &Value) -> String {
    let mut program = Command::new("sha256sum")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut input = program.stdin.take().unwrap();
    input.write_all(canonical(value).as_bytes()).unwrap();
    drop(input);
    let output = program.wait_with_output().unwrap();
    String::from_utf8(output.stdout).unwrap()[..64].to_owned()
}

/// Canonical JSON (RFC 8785) of a value of whole numbers and plain letters: no white space, names
/// sorted.
fn canonical(value: &Value) -> String {
    match value {
        Value::Object(members) => {
            let sorted: BTreeMap<_, _> = members.iter().collect();
            let members = sorted
                .into_iter()
                .map(|(name, value)| format!("\"{name}\":{}", canonical(value)));
            format!("{{{}}}", members.collect::<Vec<_>>().join(","))
        }
        Value::Array(items) => {
            format!(
                "[{}]",
                items.iter().map(canonical).collect::<Vec<_>>().join(",")
            )
        }
        plain => plain.to_string(),
    }
}

#[test]
fn who_plays_without_a_list_stands_among_the_opened_ones() {
    let stage = Stage::draft();
    let [oskrel, corvanel] = ["Oskrel", "Corvanel"].map(|handle| stage.join(handle));
    stage.start();
    let week = stage.week(1);
    week.list_of(&oskrel)
        .seal(&List::demo("Oskrel", 1))
        .expect(201);
    week.list_of(&corvanel)
        .draft(&List::demo("Corvanel", 1))
        .expect(200);
    stage.clock().show(DEADLINE);
    week.open_lists().expect(204);
    let lists = opened(&stage, 1);
    assert_eq!(lists.lists.len(), 2);
    assert_eq!(lists.of(&oskrel).state, "sealed");
    let nothing = lists.of(&corvanel);
    assert_eq!(nothing.state, "missing");
    assert!(nothing.sealed.is_none());
    let page = stage.visitor().get(&week.page("")).text();
    assert!(
        page.contains("Corvanel: <span class=\"soft\">no list</span>"),
        "{page}"
    );
}
