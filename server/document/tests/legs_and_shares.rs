//! A sheet that the demo does not have: legs won one by one, a share that a boundary decides, and
//! markers that only one side can hold when the last turn ends.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use document::results::TypedResultDocument;
use document::season::scenario::ScenarioSheetDocument;
use league::points::Points;
use league::result::{ArmyPoints, CountFault, CountFaultKind, GameScore, TypedResult, Verdict};
use league::scenario::ScenarioSheet;
use league::side::{PerSide, Side};
use serde_json::{Value, json};

/// The demo's sheet of two legs, counted otherwise: the attacker has 12 game points once units worth
/// 40 % of its list have left by the far edge; each side has 3 for each of two markers.
fn sheet() -> ScenarioSheet {
    let sheets = include_str!("../../../demo/scenarios.json");
    let mut sheet = serde_json::from_str::<Value>(sheets).unwrap()[3].take();
    let grade =
        json!({ "kind": "bands", "bands": [{ "from": { "part": 2, "whole": 5 }, "points": 12 }] });
    sheet["legs"] = json!("two_won_separately");
    sheet["draw_margin"] = json!(2);
    sheet["items"] = json!([
        {
            "key": "left", "label": "Points of units that left", "who": "attacker",
            "when": "during_play",
            "measure": {
                "kind": "army_share", "army": "own", "against": "starting_points", "grade": grade,
            },
        },
        {
            "key": "markers", "label": "Markers held", "when": "last_turn",
            "measure": { "kind": "count", "points_each": 3, "most": 2, "exclusive": true },
        },
    ]);
    let document: ScenarioSheetDocument = serde_json::from_value(sheet).unwrap();
    ScenarioSheet::try_from(document).unwrap()
}

/// Two armies of 613 points; the first attacks in the first leg.
fn score(legs: Value) -> Result<GameScore, Vec<CountFault>> {
    let typed = json!({ "kind": "played", "counts": { "legs": legs } });
    let typed: TypedResultDocument = serde_json::from_value(typed).unwrap();
    let armies = ArmyPoints {
        lists: PerSide::new(Points::new(613), Points::new(613)),
        cap: Points::new(750),
    };
    let outcome = TypedResult::try_from(typed)
        .unwrap()
        .outcome(&sheet(), &armies)?;
    Ok(outcome.score().unwrap().clone())
}

fn leg(first: Value, second: Value) -> Value {
    json!({ "first": { "items": first }, "second": { "items": second } })
}

#[test]
fn forty_percent_of_613_points_have_left_with_246_and_not_with_245() {
    let first_leg = |points: u32| {
        let legs = json!([
            leg(json!({ "left": points }), json!({})),
            leg(json!({}), json!({}))
        ]);
        score(legs).unwrap().legs[0].total
    };
    assert_eq!(first_leg(246), PerSide::new(12, 0));
    assert_eq!(first_leg(245), PerSide::new(0, 0));
}

#[test]
fn legs_that_are_won_separately_count_as_one_each_however_high() {
    let won_once_each = score(json!([
        leg(json!({ "left": 613, "markers": 2 }), json!({})),
        leg(json!({}), json!({ "markers": 1 })),
    ]))
    .unwrap();
    assert_eq!(won_once_each.total, PerSide::new(1, 1));
    assert_eq!(won_once_each.verdict, Verdict::Drawn);

    let roles_swap = score(json!([
        leg(json!({ "left": 246 }), json!({})),
        leg(json!({}), json!({ "left": 245, "markers": 0 })),
    ]))
    .unwrap();
    assert_eq!(
        roles_swap.legs[1].total,
        PerSide::new(0, 0),
        "drawn, won by nobody"
    );
    assert_eq!(roles_swap.total, PerSide::new(1, 0));
    assert_eq!(roles_swap.verdict, Verdict::Won(Side::First));
}

#[test]
fn a_marker_has_one_holder_and_an_army_no_more_points_than_it_has() {
    let found = score(json!([
        leg(
            json!({ "left": 614, "markers": 2 }),
            json!({ "markers": 1 })
        ),
        leg(json!({ "left": 1 }), json!({})),
    ]))
    .unwrap_err();
    let limits = found.iter().map(|impossible| match &impossible.kind {
        CountFaultKind::OverArmy { limit, actual, .. } => ("army", limit.get(), actual.get()),
        CountFaultKind::OverMost { limit, actual, .. } => ("most", *limit, *actual),
        CountFaultKind::OtherRole(_) => ("role", 0, 0),
        other => panic!("{other:?}"),
    });
    let mut limits: Vec<_> = limits.collect();
    limits.sort_unstable();
    assert_eq!(limits, [("army", 613, 614), ("most", 2, 3), ("role", 0, 0)]);
}
