//! Slips: who may say what, and what becomes of two things said at once.

use std::collections::BTreeSet;
use std::sync::Barrier;
use std::thread;

use chrono::{DateTime, Duration, FixedOffset};
use reqwest::Method;
use reqwest::blocking::RequestBuilder;
use serde_json::{Value, json};

use super::week::{Week, played};
use crate::harness::Answer;

const FIRST_NIGHT: &str = "2026-01-13T19:00:00+01:00";
const PAIR: [&str; 2] = ["Oskrel", "Corvanel"];

/// 12 to 7.
fn twelve_to_seven() -> Value {
    played((4, 144), (2, 108))
}

/// 12 to 8.
fn twelve_to_eight() -> Value {
    played((4, 144), (2, 144))
}

/// Two acts that begin at the same moment.
fn at_once<A: Send, B: Send>(
    one: impl FnOnce() -> A + Send,
    other: impl FnOnce() -> B + Send,
) -> (A, B) {
    let start = Barrier::new(2);
    thread::scope(|scope| {
        let one = scope.spawn(|| {
            start.wait();
            one()
        });
        let other = scope.spawn(|| {
            start.wait();
            other()
        });
        (one.join().unwrap(), other.join().unwrap())
    })
}

#[test]
fn of_two_different_reports_at_once_one_opens_the_slip_the_other_disputes_it_and_none_is_lost() {
    let week = Week::paired(&PAIR);
    let [first, second] = week.sides();
    let (one, other) = at_once(
        || week.report(first, "one", &twelve_to_seven()).expect(200),
        || week.report(second, "other", &twelve_to_eight()).expect(200),
    );
    let kinds: BTreeSet<_> = [&one, &other]
        .map(|slip| slip["kind"].as_str().unwrap())
        .into();
    assert_eq!(kinds, BTreeSet::from(["reported", "disputed"]));
    let slip = week.stage.wennable.get(&week.game()).expect(200)["slip"].clone();
    assert_eq!(slip["kind"], "disputed");
    for total in [
        json!({ "first": 12, "second": 7 }),
        json!({ "first": 12, "second": 8 }),
    ] {
        assert!(
            slip.to_string().contains(&total.to_string()),
            "{total} in {slip}"
        );
    }
    assert!(
        week.lines(first).is_empty(),
        "nothing counts until a referee has ruled"
    );
}

#[test]
fn two_reports_at_once_that_agree_are_a_result() {
    let week = Week::paired(&PAIR);
    let [first, second] = week.sides();
    at_once(
        || week.report(first, "one", &twelve_to_seven()).expect(200),
        || week.report(second, "other", &twelve_to_seven()).expect(200),
    );
    let lines = |amount: i64| [("game".to_owned(), amount), ("attendance".to_owned(), 1)];
    assert_eq!(week.lines(first), lines(7));
    assert_eq!(week.lines(second), lines(3));
}

#[test]
fn the_same_report_sent_twice_at_once_is_one_report() {
    let week = Week::paired(&PAIR);
    let [first, _] = week.sides();
    let send = || week.report(first, "once", &twelve_to_seven()).expect(200);
    let (one, other) = at_once(send, send);
    assert_eq!(one, other);
    assert_eq!(
        week.acts()
            .iter()
            .filter(|act| *act == "report_result")
            .count(),
        1
    );

    let reused = week.report(first, "once", &twelve_to_eight());
    reused.refused(422, "idempotency-key-reused");
    let game = format!("{}/report", week.game());
    let keyless = first.actor.post(&game, &twelve_to_seven());
    keyless.refused(400, "idempotency-key-required");

    let elsewhere = week.stage.wennable.post(
        "/api/v1/clubs",
        &json!({ "name": "Another circle", "slug": "another" }),
    );
    let elsewhere = game.replace(&week.stage.club, &elsewhere.location(201));
    let dress = |request: RequestBuilder| {
        request
            .header("idempotency-key", "once")
            .json(&twelve_to_seven())
    };
    let replayed = first.actor.ask(Method::POST, &elsewhere, dress);
    replayed.refused(404, "not-found");
}

#[test]
fn the_same_penalty_sent_twice_is_one_ruling() {
    let week = Week::paired(&PAIR);
    let [first, _] = week.sides();
    let adjustments = format!("{}/adjustments", week.stage.season);
    let take = |amount: i32| {
        let body =
            json!({ "player": first.id, "week": 1, "amount": amount, "reason": "Came late" });
        week.stage
            .wennable
            .ask(Method::POST, &adjustments, |request| {
                request.header("idempotency-key", "late").json(&body)
            })
    };
    let ruling = take(-1).expect(200);
    assert_eq!(take(-1).expect(200), ruling);
    take(-2).refused(422, "idempotency-key-reused");
    let penalties = week.lines(first);
    let penalties: Vec<i64> = penalties.iter().map(|(_, amount)| *amount).collect();
    assert_eq!(penalties.iter().filter(|amount| **amount == -1).count(), 1);
}

#[test]
fn of_a_confirmation_and_a_dispute_at_once_one_is_done() {
    let week = Week::paired(&PAIR);
    let [first, second] = week.sides();
    week.report(first, "one", &twelve_to_seven()).expect(200);
    let act = |act: &str, body: &Value| second.actor.post(&format!("{}/{act}", week.game()), body);
    let (confirmed, disputed) = at_once(
        || act("confirm", &json!({})),
        || act("dispute", &json!({ "reason": "The ford was contested" })),
    );
    let statuses = BTreeSet::from([confirmed.status, disputed.status]);
    assert_eq!(statuses, BTreeSet::from([200, 409]));
    let slip = week.stage.wennable.get(&week.game()).expect(200)["slip"].clone();
    let (stands, too_late) = if confirmed.status == 200 {
        ("confirmed", disputed)
    } else {
        ("disputed", confirmed)
    };
    too_late.refused(409, "slip-state-changed");
    assert_eq!(slip["kind"], stands);
}

#[test]
fn nobody_answers_their_own_report_or_that_of_others() {
    let week = Week::paired(&PAIR);
    let [first, second] = week.sides();
    let act = |who: &crate::harness::Actor, act: &str, body: Value| -> Answer {
        who.post(&format!("{}/{act}", week.game()), &body)
    };
    act(&second.actor, "confirm", json!({})).refused(409, "slip-state-changed");
    week.report(first, "one", &twelve_to_seven()).expect(200);
    let reason = json!({ "reason": "The ford was contested" });
    act(&first.actor, "confirm", json!({})).refused(403, "self-confirmation");
    act(&first.actor, "dispute", reason.clone()).refused(403, "self-confirmation");
    let spectator = week.stage.welcome("Tamselle");
    act(&spectator, "confirm", json!({})).refused(403, "not-a-participant");
    act(&spectator, "dispute", reason.clone()).refused(403, "not-a-participant");
    act(&second.actor, "confirm", json!({})).expect(200);
    for (late, body) in [("dispute", reason), ("confirm", json!({}))] {
        act(&second.actor, late, body).refused(409, "slip-state-changed");
    }
    let late = week.report(first, "two", &twelve_to_eight());
    late.refused(409, "result-final");
}

#[test]
fn nobody_rules_on_a_game_of_their_own() {
    let week = Week::paired(&["Oskrel", "Wennable"]);
    let ruling = json!({ "outcome": twelve_to_seven(), "reason": "As both said" });
    let rule = format!("{}/rule", week.game());
    week.stage
        .wennable
        .post(&rule, &ruling)
        .refused(403, "conflict-of-interest");
    let referee = week.stage.appoint("Ilkamar", "referee");
    assert_eq!(referee.post(&rule, &ruling).expect(200)["kind"], "ruled");
}

#[test]
fn no_result_is_reported_before_the_night_begins() {
    let week = Week::sealed(&PAIR);
    let round = week.propose();
    week.publish(&round);
    let [first, _] = week.sides();
    week.stage.clock().show("2026-01-13T18:59:59.999999+01:00");
    let early = week
        .report(first, "one", &twelve_to_seven())
        .refused(409, "round-not-open");
    assert_eq!(early["begins_at"], "2026-01-13T18:00:00+00:00");
    week.stage.clock().show(FIRST_NIGHT);
    week.report(first, "one", &twelve_to_seven()).expect(200);
}

#[test]
fn silence_confirms_at_the_very_microsecond() {
    let week = Week::paired(&PAIR);
    let [first, second] = week.sides();
    let slip = week.report(first, "one", &twelve_to_seven()).expect(200);
    let due: DateTime<FixedOffset> = slip["confirm_due"].as_str().unwrap().parse().unwrap();
    let before = due - Duration::microseconds(1);
    week.stage.clock().show(&before.to_rfc3339());
    let kind = || week.stage.wennable.get(&week.game()).expect(200)["slip"]["kind"].clone();
    assert_eq!(kind(), "reported");
    assert!(week.lines(first).is_empty());
    week.stage.clock().show(&due.to_rfc3339());
    assert_eq!(kind(), "confirmed");
    assert_eq!(week.lines(second)[0], ("game".to_owned(), 3));
    let confirm = format!("{}/confirm", week.game());
    second
        .actor
        .post(&confirm, &json!({}))
        .refused(409, "slip-state-changed");
}
