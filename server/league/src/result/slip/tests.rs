//! Tests of the slip: one for each rule.

use chrono::TimeDelta;
use uuid::Uuid;

use super::super::{Confirmation, Outcome, ResultReport, Ruling, Slip, SlipRefusal};
use crate::ids::{AccountId, RulingId};
use crate::name::Text;
use crate::side::{PerSide, Side};
use crate::standings::tests::seasons::played;
use crate::time::Instant;

const WITHIN: TimeDelta = TimeDelta::hours(48);

fn hour(hours: i64) -> Instant {
    Instant::UNIX_EPOCH + TimeDelta::hours(hours)
}

fn report_by(by: Side, outcome: Outcome, at: i64) -> ResultReport {
    let at = hour(at);
    ResultReport { by, outcome, at }
}

fn reported(by: Side) -> Slip {
    Slip::Awaited
        .report(report_by(by, played(14, 9), 0), WITHIN)
        .unwrap()
}

fn words(text: &str) -> Text {
    Text::new(text).unwrap()
}

fn ruling(referee: u128, outcome: Outcome) -> Ruling {
    Ruling {
        id: RulingId(Uuid::from_u128(referee)),
        referee: AccountId(Uuid::from_u128(referee)),
        outcome,
        reason: words("the sheet of the table shows it"),
        at: hour(5),
    }
}

fn players() -> PerSide<AccountId> {
    PerSide::new(AccountId(Uuid::from_u128(1)), AccountId(Uuid::from_u128(2)))
}

#[test]
fn the_same_from_the_other_side_confirms() {
    let slip = reported(Side::First);
    let slip = slip
        .report(report_by(Side::Second, played(14, 9), 3), WITHIN)
        .unwrap();
    let confirmed = |slip: &Slip| match slip {
        Slip::Confirmed { how, at, .. } => Some((*how, *at)),
        _ => None,
    };
    assert_eq!(confirmed(&slip), Some((Confirmation::ByOpponent, hour(3))));
    assert_eq!(slip.settled().unwrap().outcome, &played(14, 9));
}

#[test]
fn two_different_reports_become_a_dispute_that_keeps_both_and_counts_for_nobody() {
    let slip = reported(Side::First);
    let slip = slip
        .report(report_by(Side::Second, played(13, 10), 3), WITHIN)
        .unwrap();
    assert_eq!(slip.settled(), None);
    let Slip::Disputed { report, dispute } = &slip else {
        panic!("{slip:?}");
    };
    assert_eq!(report.outcome, played(14, 9));
    assert_eq!(dispute.counter.as_ref().unwrap().outcome, played(13, 10));
    let again = slip.report(report_by(Side::First, played(14, 9), 4), WITHIN);
    assert_eq!(again, Err(SlipRefusal::Disputed));
}

#[test]
fn a_side_may_correct_its_own_report_and_the_time_starts_anew() {
    let slip = reported(Side::First);
    let slip = slip
        .report(report_by(Side::First, played(15, 9), 10), WITHIN)
        .unwrap();
    assert!(slip.awaits_answer_to(hour(10)));
    assert!(!slip.awaits_answer_to(hour(0)), "what was said first");
    assert_eq!(slip.clone().settle(hour(57)), slip);
    assert_eq!(
        slip.settle(hour(58)).settled().unwrap().outcome,
        &played(15, 9)
    );
}

#[test]
fn silence_confirms_at_the_due_instant_and_not_before() {
    let slip = reported(Side::Second);
    assert_eq!(
        slip.clone()
            .settle(hour(48) - TimeDelta::nanoseconds(1))
            .settled(),
        None
    );
    let settled = slip.settle(hour(70));
    let by_silence = matches!(
        settled,
        Slip::Confirmed { how: Confirmation::BySilence, at, .. } if at == hour(48)
    );
    assert!(by_silence, "{settled:?}");
}

#[test]
fn nobody_answers_their_own_report() {
    let refused = reported(Side::First).confirm(Side::First, hour(1));
    assert_eq!(refused, Err(SlipRefusal::OwnReport));
    let refused = reported(Side::First).dispute(Side::First, words("no"), None, hour(1));
    assert_eq!(refused, Err(SlipRefusal::OwnReport));
    let refused = Slip::Awaited.confirm(Side::First, hour(1));
    assert_eq!(refused, Err(SlipRefusal::NotReported));
}

#[test]
fn what_stands_is_changed_by_a_ruling_alone() {
    let slip = reported(Side::First)
        .confirm(Side::Second, hour(1))
        .unwrap();
    let late = slip
        .clone()
        .report(report_by(Side::Second, played(1, 2), 2), WITHIN);
    assert_eq!(late, Err(SlipRefusal::Final));
    let late = slip
        .clone()
        .dispute(Side::Second, words("miscounted"), None, hour(2));
    assert_eq!(late, Err(SlipRefusal::Answered));
    let ruled = slip.rule(ruling(3, played(12, 9)), players()).unwrap();
    let settled = ruled.settled().unwrap();
    assert_eq!(settled.outcome, &played(12, 9));
    assert_eq!(settled.ruling, Some(RulingId(Uuid::from_u128(3))));
    let again = ruled
        .clone()
        .rule(ruling(4, played(11, 9)), players())
        .unwrap();
    assert_eq!(again.settled().unwrap().outcome, &played(11, 9));
}

#[test]
fn nobody_rules_on_a_game_of_their_own() {
    for own in [1, 2] {
        let refused = reported(Side::First).rule(ruling(own, Outcome::DoubleLoss), players());
        assert_eq!(refused, Err(SlipRefusal::OwnGame));
    }
}
