//! A week's lists: drafted, checked, sealed, opened all at once.

use std::collections::BTreeMap;
use std::io::Write;
use std::process::{Command, Stdio};
use std::thread;

use chrono::Duration;
use reqwest::Method;
use serde_json::{Value, json};

use crate::harness::{Answer, Player, Stage, demo_list};

pub const LAST_MOMENT: &str = "2026-01-12T20:59:59.999999+01:00";
pub const DEADLINE: &str = "2026-01-12T21:00:00+01:00";
/// Week 2 is announced.
pub const SECOND_WEEK: &str = "2026-01-15T18:00:00+01:00";

#[test]
fn a_draft_belongs_to_its_owner_and_two_windows_do_not_overwrite_each_other() {
    let stage = Stage::draft();
    let [oskrel, corvanel] = ["Oskrel", "Corvanel"].map(|handle| stage.join(handle));
    stage.start();
    let list = format!("{}/list", stage.week(1));
    oskrel.actor.get(&list).refused(404, "not-found");

    let first = save_draft(&stage, &oskrel, None, &demo_list("Oskrel", 1)).with_status(200);
    assert_eq!(first.header("etag"), Some("\"1\""));
    save_draft(&stage, &oskrel, None, &demo_list("Oskrel", 1))
        .refused(428, "precondition-required");
    let half = json!({ "faction": "bramblestile-steadings", "entries": [] });
    let second = save_draft(&stage, &oskrel, Some("\"1\""), &half).expect(200);
    assert_eq!(second["draft_revision"], 2);
    let stale = save_draft(&stage, &oskrel, Some("\"1\""), &half).refused(412, "version-mismatch");
    assert_eq!(stale["revision"], 2);

    let own = oskrel.actor.get(&list).expect(200);
    assert_eq!((&own["draft"], &own["sealed"]), (&half, &Value::Null));
    corvanel.actor.get(&list).refused(404, "not-found");
}

#[test]
fn a_check_tells_everything_and_saves_nothing() {
    let stage = Stage::draft();
    let lumeth = stage.join("Lumeth");
    stage.start();
    let hulks = json!({ "faction": "sodwether-moot", "entries": [
        { "key": "a", "unit": "mire-speaker", "models": 1 },
        { "key": "b", "unit": "sump-midwife", "models": 1 },
        { "key": "c", "unit": "bog-oak-hulks", "models": 3 },
        { "key": "d", "unit": "turf-cutters", "models": 8 },
    ]});
    let report = lumeth
        .actor
        .post(&format!("{}/list/check", stage.week(1)), &hulks)
        .expect(200);
    assert_eq!(
        (&report["accepted"], &report["total"]),
        (&json!(false), &json!(75 + 50 + 135 + 56))
    );
    let found: Vec<_> = report["findings"]
        .as_array()
        .unwrap()
        .iter()
        .map(measured)
        .collect();
    assert_eq!(
        found,
        [
            ("list.over-cap", Some(300), Some(316)),
            ("list.kind-count", Some(1), Some(2)),
            ("list.largest-unit", Some(120), Some(135)),
        ]
    );
    lumeth
        .actor
        .get(&format!("{}/list", stage.week(1)))
        .refused(404, "not-found");
}

#[test]
fn a_sealed_list_gives_a_receipt_that_sha256sum_confirms_and_another_takes_its_place() {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.start();
    let sealed = seal(&stage, &oskrel, 1, &demo_list("Oskrel", 1)).with_status(201);
    let own = sealed.header("location").unwrap().to_owned();
    let receipt = sealed.json();
    assert_eq!(receipt["contents"]["list"], demo_list("Oskrel", 1));
    assert_eq!(receipt["digest"], sha256sum(&receipt["contents"]));
    assert_eq!(receipt["report"]["total"], 300);

    let smaller = without_last_entry(demo_list("Oskrel", 1));
    let second = seal(&stage, &oskrel, 1, &smaller).expect(201);
    assert_eq!(second["digest"], sha256sum(&second["contents"]));
    assert_ne!(second["contents"]["salt"], receipt["contents"]["salt"]);
    let kept = oskrel.actor.get(&own).expect(200)["sealed"].clone();
    assert_eq!(
        (&kept["list"], &kept["receipt"]),
        (&smaller, &second["digest"])
    );
}

#[test]
fn a_token_that_has_run_out_and_one_whose_session_is_over_seal_nothing() {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.start();
    let visitor = stage.server.visitor();
    let person = json!({ "email": "oskrel@example.org", "password": "six lanterns on the ford" });
    let sign_in = || visitor.post("/api/v1/sessions", &person).expect(200)["access_token"].clone();
    let path = format!("{}/list/seal", stage.week(1));
    let seal_with = |token: &Value| {
        visitor.ask(Method::POST, &path, |request| {
            request
                .bearer_auth(token.as_str().unwrap())
                .json(&demo_list("Oskrel", 1))
        })
    };
    let [old, ended] = [(); 2].map(|()| sign_in());
    visitor
        .ask(Method::DELETE, "/api/v1/sessions/current", |request| {
            request.bearer_auth(ended.as_str().unwrap())
        })
        .expect(204);
    seal_with(&ended).refused(401, "invalid-token");
    stage.clock().advance(Duration::minutes(15));
    seal_with(&old).refused(401, "invalid-token");
    visitor
        .post(&path, &demo_list("Oskrel", 1))
        .refused(401, "sign-in-needed");
    oskrel
        .actor
        .get(&format!("{}/list", stage.week(1)))
        .refused(404, "not-found");
    seal_with(&sign_in()).expect(201);
}

#[test]
fn of_several_lists_the_last_one_counts_and_every_receipt_stays_a_proof() {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.start();
    let whole = demo_list("Oskrel", 1);
    let smaller = without_last_entry(whole.clone());
    let smallest = without_last_entry(smaller.clone());
    let lists = [whole, smallest, smaller];
    let receipts = lists
        .each_ref()
        .map(|list| seal(&stage, &oskrel, 1, list).expect(201));
    stage.clock().show(DEADLINE);
    open(&stage, 1).expect(204);

    let mut opened = opened(&stage, 1).into_iter();
    let opened = opened.find(|list| list["state"] == "sealed").unwrap();
    let opened = &opened["sealed"];
    let [first, second, last] = &receipts;
    assert_eq!(opened["list"], last["contents"]["list"]);
    assert_eq!(opened["receipt"], last["digest"]);
    for (receipt, list) in receipts.iter().zip(&lists) {
        let contents = &receipt["contents"];
        assert_eq!(&contents["list"], list);
        assert_eq!(receipt["digest"], sha256sum(contents));
        assert_eq!(contents["list_id"], first["contents"]["list_id"]);
    }
    let mut forged = second["contents"].clone();
    forged["salt"] = last["contents"]["salt"].clone();
    assert_ne!(
        second["digest"],
        sha256sum(&forged),
        "each list has a salt of its own"
    );
}

#[test]
fn first_lists_that_a_player_sends_at_the_same_moment_are_one_list_with_several_receipts() {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.start();
    let list = demo_list("Oskrel", 1);
    let receipts: Vec<Value> = thread::scope(|threads| {
        let send = || seal(&stage, &oskrel, 1, &list).expect(201);
        let sent = [(); 4].map(|()| threads.spawn(send));
        sent.map(|one| one.join().unwrap()).into()
    });

    let path = format!("{}/list", stage.week(1));
    let kept = oskrel.actor.get(&path).expect(200);
    for receipt in &receipts {
        assert_eq!(receipt["contents"]["list_id"], kept["id"]);
        assert_eq!(receipt["digest"], sha256sum(&receipt["contents"]));
    }
    let counts = |receipt: &&Value| receipt["digest"] == kept["sealed"]["receipt"];
    assert_eq!(receipts.iter().filter(counts).count(), 1);
}

#[test]
fn a_list_is_in_time_up_to_the_last_microsecond_of_the_grace() {
    let stage = Stage::draft();
    let [oskrel, corvanel] = ["Oskrel", "Corvanel"].map(|handle| stage.join(handle));
    stage.clock().show("2026-01-08T17:59:59.999999+01:00");
    stage
        .wennable
        .post(&format!("{}/start", stage.season), &json!({}))
        .expect(200);
    seal(&stage, &oskrel, 1, &demo_list("Oskrel", 1)).refused(409, "week-state");

    stage.clock().show(LAST_MOMENT);
    seal(&stage, &oskrel, 1, &demo_list("Oskrel", 1)).expect(201);
    stage.clock().show(DEADLINE);
    let late =
        seal(&stage, &corvanel, 1, &demo_list("Corvanel", 1)).refused(409, "deadline-passed");
    assert_eq!(late["deadline"], "2026-01-12T20:00:00+00:00");
    assert_eq!(late["server_time"], "2026-01-12T20:00:00+00:00");
    corvanel
        .actor
        .get(&format!("{}/list", stage.week(1)))
        .refused(404, "not-found");
    let replaced = without_last_entry(demo_list("Oskrel", 1));
    seal(&stage, &oskrel, 1, &replaced).refused(409, "deadline-passed");
    let kept = oskrel
        .actor
        .get(&format!("{}/list", stage.week(1)))
        .expect(200);
    assert_eq!(kept["sealed"]["list"], demo_list("Oskrel", 1));
}

#[test]
fn late_lists_need_leave_which_everybody_can_read_and_nobody_gives_to_themselves() {
    let stage = Stage::draft();
    let [wennable, pellamoor] = ["Wennable", "Pellamoor"].map(|handle| stage.join(handle));
    stage.start();
    stage.clock().show(DEADLINE);
    let leaves = format!("{}/late-leaves", stage.week(1));
    let leave =
        |player: &Player| json!({ "player": player.id, "reason": "Power cut in Mill Lane" });
    let refused = stage.wennable.post(&leaves, &leave(&wennable));
    refused.refused(403, "conflict-of-interest");
    pellamoor
        .actor
        .post(&leaves, &leave(&pellamoor))
        .refused(403, "forbidden");
    stage.wennable.post(&leaves, &leave(&pellamoor)).expect(204);
    stage
        .wennable
        .post(&leaves, &leave(&pellamoor))
        .refused(409, "week-state");

    stage.clock().show("2026-01-12T21:30:59+01:00");
    let sealed = seal(&stage, &pellamoor, 1, &demo_list("Pellamoor", 1)).expect(201);
    assert_eq!(sealed["late_minutes"], 30);
    let trail = stage
        .server
        .visitor()
        .get(&format!("{}/trail", stage.season))
        .expect(200);
    let told = trail
        .as_array()
        .unwrap()
        .iter()
        .find(|entry| entry["act"] == "grant_late_leave");
    assert_eq!(told.unwrap()["facts"]["reason"], "Power cut in Mill Lane");
}

#[test]
fn lists_are_opened_all_at_once_and_last_weeks_stands_in_where_none_came() {
    let stage = Stage::draft();
    let [oskrel, corvanel] = ["Oskrel", "Corvanel"].map(|handle| stage.join(handle));
    stage.start();
    seal(&stage, &oskrel, 1, &demo_list("Oskrel", 1)).expect(201);
    stage.clock().show(LAST_MOMENT);
    open(&stage, 1).refused(409, "deadline-ahead");
    let trail = format!("{}/trail", stage.season);
    let told = stage.server.visitor().get(&trail).expect(200)[0].clone();
    assert_eq!(
        (&told["act"], &told["facts"]),
        (&json!("open_lists_too_early"), &json!({ "week": 1 })),
        "everybody can read who tried"
    );
    stage.clock().show(DEADLINE);
    open(&stage, 1).expect(204);
    open(&stage, 1).expect(204);
    let lists = opened(&stage, 1);
    let of = |lists: &[Value], player: &Player| {
        let mut lists = lists.iter();
        lists
            .find(|list| list["player"] == player.id)
            .unwrap()
            .clone()
    };
    assert_eq!(of(&lists, &corvanel)["state"], "missing");
    assert_eq!(
        of(&lists, &oskrel)["sealed"]["list"],
        demo_list("Oskrel", 1)
    );

    stage.clock().show(SECOND_WEEK);
    seal(&stage, &corvanel, 2, &demo_list("Corvanel", 2)).expect(201);
    stage.clock().show("2026-01-19T21:00:00+01:00");
    open(&stage, 2).expect(204);
    let lists = opened(&stage, 2);
    assert_eq!(of(&lists, &corvanel)["sealed"]["stands_in"], false);
    assert_eq!(of(&lists, &oskrel)["sealed"]["stands_in"], true);
    assert_eq!(
        of(&lists, &oskrel)["sealed"]["list"],
        demo_list("Oskrel", 1)
    );
}

#[test]
fn nobody_learns_of_a_list_before_it_is_opened() {
    let stage = Stage::draft();
    let [oskrel, corvanel, lumeth] =
        ["Oskrel", "Corvanel", "Lumeth"].map(|handle| stage.join(handle));
    stage.start();
    let before = seen(&stage, &lumeth);
    seal(&stage, &oskrel, 1, &demo_list("Oskrel", 1)).expect(201);
    save_draft(&stage, &corvanel, None, &demo_list("Corvanel", 1)).expect(200);
    assert_eq!(seen(&stage, &lumeth), before);

    let lists = format!("{}/lists", stage.week(1));
    let unknown = format!("{}/lists", stage.week(52));
    for person in [&lumeth.actor, &stage.server.visitor()] {
        let hidden = person.get(&lists).refused(404, "not-found");
        let absent = person.get(&unknown).refused(404, "not-found");
        assert_eq!(hidden["detail"], absent["detail"]);
    }
    let known = stage.wennable.get(&lists).with_status(200);
    for word in ["bramblestile", "orrery", "hedge-reeve", "points", "receipt"] {
        assert!(!known.text().contains(word), "{word} in {}", known.text());
    }
    let known = known.json();
    assert_eq!(known["opened"], false);
    let state = |player: &Player| {
        let lists = known["lists"].as_array().unwrap();
        lists
            .iter()
            .find(|list| list["player"] == player.id)
            .unwrap()["state"]
            .clone()
    };
    let states = [&oskrel, &corvanel, &lumeth].map(state);
    assert_eq!(states, ["sealed", "draft", "missing"]);
}

/// All that others can see of the season, without what differs in every answer.
fn seen(stage: &Stage, by: &Player) -> Vec<(Option<String>, String)> {
    let paths = [
        "",
        "/players",
        "/weeks",
        "/trail",
        "/weeks/1/lists",
        "/weeks/1/scenario",
    ];
    let look = |path| {
        let answer = by.actor.get(&format!("{}{path}", stage.season));
        let mut body = answer.json();
        if let Some(problem) = body.as_object_mut() {
            problem.remove("request_id");
        }
        (answer.header("etag").map(str::to_owned), body.to_string())
    };
    paths.map(look).to_vec()
}

pub fn save_draft(stage: &Stage, player: &Player, revision: Option<&str>, list: &Value) -> Answer {
    let path = format!("{}/list/draft", stage.week(1));
    player
        .actor
        .ask(Method::PUT, &path, |request| match revision {
            Some(revision) => request.json(list).header("if-match", revision),
            None => request.json(list),
        })
}

pub fn seal(stage: &Stage, player: &Player, week: u8, list: &Value) -> Answer {
    player
        .actor
        .post(&format!("{}/list/seal", stage.week(week)), list)
}

pub fn open(stage: &Stage, week: u8) -> Answer {
    stage
        .wennable
        .post(&format!("{}/lists/open", stage.week(week)), &json!({}))
}

pub fn opened(stage: &Stage, week: u8) -> Vec<Value> {
    let answer = stage
        .server
        .visitor()
        .get(&format!("{}/lists", stage.week(week)))
        .expect(200);
    assert_eq!(answer["opened"], true);
    answer["lists"].as_array().unwrap().clone()
}

fn measured(finding: &Value) -> (&str, Option<u64>, Option<u64>) {
    (
        finding["code"].as_str().unwrap(),
        finding["limit"].as_u64(),
        finding["actual"].as_u64(),
    )
}

pub fn without_last_entry(mut list: Value) -> Value {
    list["entries"].as_array_mut().unwrap().pop();
    list
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
    seal(&stage, &oskrel, 1, &demo_list("Oskrel", 1)).expect(201);
    save_draft(&stage, &corvanel, None, &demo_list("Corvanel", 1)).expect(200);
    stage.clock().show(DEADLINE);
    open(&stage, 1).expect(204);
    let lists = opened(&stage, 1);
    let of = |player: &Player| {
        let mut lists = lists.iter();
        lists.find(|list| list["player"] == player.id).unwrap()
    };
    assert_eq!(lists.len(), 2);
    assert_eq!(of(&oskrel)["state"], "sealed");
    let nothing = json!({ "player": corvanel.id, "state": "missing" });
    assert_eq!(of(&corvanel), &nothing);
    let page = stage.week(1).replacen("/api/v1", "", 1);
    let page = stage.server.visitor().get(&page).text();
    assert!(
        page.contains("Corvanel: <span class=\"soft\">no list</span>"),
        "{page}"
    );
}
