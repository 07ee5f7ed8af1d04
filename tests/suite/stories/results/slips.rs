//! Slips: who may say what, and what becomes of two things said at once.

use std::collections::BTreeSet;
use std::sync::Barrier;
use std::thread;

use chrono::{DateTime, Duration, FixedOffset};
use serde_json::{Value, json};

use super::week::{FirstWeek, played};
use crate::harness::GameClient;

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
    let week = FirstWeek::paired(&PAIR);
    let [first, second] = week.sides();
    let (one, other) = at_once(
        || week.report(first, "one", &twelve_to_seven()).expect(200),
        || week.report(second, "other", &twelve_to_eight()).expect(200),
    );
    let kinds = BTreeSet::from([one.kind.as_str(), other.kind.as_str()]);
    assert_eq!(kinds, BTreeSet::from(["reported", "disputed"]));
    let slip = week.game().slip();
    assert_eq!(slip.kind, "disputed");
    let said = [&slip.report, &slip.counter].map(|said| said.as_ref().unwrap().total());
    for total in [
        json!({ "first": 12, "second": 7 }),
        json!({ "first": 12, "second": 8 }),
    ] {
        assert!(said.contains(&Some(&total)), "{total} in {slip:?}");
    }
    assert!(
        week.lines(first).is_empty(),
        "nothing counts until a referee has ruled"
    );
}

#[test]
fn two_reports_at_once_that_agree_are_a_result() {
    let week = FirstWeek::paired(&PAIR);
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
    let week = FirstWeek::paired(&PAIR);
    let [first, _] = week.sides();
    let send = || week.report(first, "once", &twelve_to_seven()).expect(200);
    let (one, other) = at_once(send, send);
    assert_eq!(one, other);
    let acts = week.acts();
    let reports = acts.iter().filter(|act| *act == "report_result");
    assert_eq!(reports.count(), 1);

    week.report(first, "once", &twelve_to_eight())
        .refused(422, "idempotency-key-reused");
    let game = week.game().by(first);
    game.report_without_key(&twelve_to_seven())
        .refused(400, "idempotency-key-required");

    let another = week.stage.owner.found_club("Another circle", "another");
    let another = first.actor.club_at(another.location(201));
    let elsewhere = another.season(week.season().id()).game(game.id());
    elsewhere
        .report("once", &twelve_to_seven())
        .refused(404, "not-found");
}

#[test]
fn the_same_penalty_sent_twice_is_one_ruling() {
    let week = FirstWeek::paired(&PAIR);
    let [first, _] = week.sides();
    let take = |amount: i32| {
        let points = (first.id.as_str(), 1, amount);
        week.season().adjust_once("late", points, "Came late")
    };
    let ruling = take(-1).expect(200);
    assert_eq!(take(-1).expect(200), ruling);
    take(-2).refused(422, "idempotency-key-reused");
    let lines = week.lines(first);
    let penalties = lines.iter().filter(|(_, amount)| *amount == -1);
    assert_eq!(penalties.count(), 1);
}

#[test]
fn of_a_confirmation_and_a_dispute_at_once_one_is_done() {
    let week = FirstWeek::paired(&PAIR);
    let [first, second] = week.sides();
    week.report(first, "one", &twelve_to_seven()).expect(200);
    let game = week.game().by(second);
    let (confirmed, disputed) =
        at_once(|| game.confirm(), || game.dispute("The ford was contested"));
    let statuses = BTreeSet::from([confirmed.status, disputed.status]);
    assert_eq!(statuses, BTreeSet::from([200, 409]));
    let (stands, too_late) = if confirmed.status == 200 {
        ("confirmed", disputed)
    } else {
        ("disputed", confirmed)
    };
    too_late.refused(409, "slip-state-changed");
    assert_eq!(week.game().slip().kind, stands);
}

#[test]
fn nobody_answers_their_own_report_or_that_of_others() {
    const REASON: &str = "The ford was contested";
    let week = FirstWeek::paired(&PAIR);
    let [first, second] = week.sides();
    let [by_first, by_second] = [first, second].map(|player| week.game().by(player));
    by_second.confirm().refused(409, "slip-state-changed");
    week.report(first, "one", &twelve_to_seven()).expect(200);
    by_first.confirm().refused(403, "self-confirmation");
    by_first.dispute(REASON).refused(403, "self-confirmation");
    let by_spectator = week.game().by(week.stage.welcome("Tamselle"));
    by_spectator.confirm().refused(403, "not-a-participant");
    by_spectator
        .dispute(REASON)
        .refused(403, "not-a-participant");
    by_second.confirm().expect(200);
    by_second.dispute(REASON).refused(409, "slip-state-changed");
    by_second.confirm().refused(409, "slip-state-changed");
    week.report(first, "two", &twelve_to_eight())
        .refused(409, "result-final");
}

#[test]
fn nobody_rules_on_a_game_of_their_own() {
    let week = FirstWeek::paired(&["Oskrel", "Wennable"]);
    let rule = |game: GameClient| game.rule(&twelve_to_seven(), "As both said");
    rule(week.game()).refused(403, "conflict-of-interest");
    let referee = week.stage.appoint("Ilkamar", "referee");
    assert_eq!(rule(week.game().by(&referee)).expect(200).kind, "ruled");
}

#[test]
fn no_result_is_reported_before_the_night_begins() {
    let week = FirstWeek::sealed(&PAIR);
    week.pair();
    let [first, _] = week.sides();
    week.stage.clock().show("2026-01-13T18:59:59.999999+01:00");
    let early = week
        .report(first, "one", &twelve_to_seven())
        .refused(409, "round-not-open");
    assert_eq!(early.member("begins_at"), "2026-01-13T18:00:00+00:00");
    week.stage.clock().show(FIRST_NIGHT);
    week.report(first, "one", &twelve_to_seven()).expect(200);
}

#[test]
fn silence_confirms_at_the_very_microsecond() {
    let week = FirstWeek::paired(&PAIR);
    let [first, second] = week.sides();
    let slip = week.report(first, "one", &twelve_to_seven()).expect(200);
    let due: DateTime<FixedOffset> = slip.confirm_due.unwrap().parse().unwrap();
    let before = due - Duration::microseconds(1);
    week.stage.clock().show(&before.to_rfc3339());
    assert_eq!(week.game().slip().kind, "reported");
    assert!(week.lines(first).is_empty());
    week.stage.clock().show(&due.to_rfc3339());
    assert_eq!(week.game().slip().kind, "confirmed");
    assert_eq!(week.lines(second)[0], ("game".to_owned(), 3));
    let game = week.game().by(second);
    game.confirm().refused(409, "slip-state-changed");
}
