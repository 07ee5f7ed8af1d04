//! Painted models count for a list once somebody has checked them.

use serde_json::json;

use super::lists::{DEADLINE, SECOND_WEEK};
use crate::harness::{List, Player, Stage};

#[test]
fn a_list_must_be_painted_in_part_and_only_verified_paint_counts() {
    let half = json!({ "part": 1, "whole": 2 });
    let rule = json!({ "rule": { "kind": "painted_share", "least": half }, "weeks": [2] });
    let stage = Stage::with(|season| season.push("/policy/list_rules", rule));
    let oskrel = stage.join("Oskrel");
    let ilkamar = stage.appoint("Ilkamar", "referee");
    stage.start();
    let list = List::demo("Oskrel", 1);
    stage.week(1).list_of(&oskrel).seal(&list).expect(201);
    let units = [
        ("orchard-levy-1", 12),
        ("furrow-hares-1", 7),
        ("orchard-levy-2", 10),
    ];
    let claims = units.map(|(unit, models)| {
        let claim = stage.week(1).by(&oskrel).claim(unit, models);
        claim.expect(201).id
    });
    stage.clock().show(DEADLINE);
    stage.week(1).open_lists().expect(204);
    stage.clock().show(SECOND_WEEK);
    assert_eq!(painted_points(&stage, &oskrel), 0);

    let verify = |claim: &str| {
        let verified = stage.season.by(&ilkamar).verify_claim(claim);
        verified.expect(200);
    };
    verify(&claims[0]);
    verify(&claims[1]);
    assert_eq!(painted_points(&stage, &oskrel), 70 + 70);
    verify(&claims[2]);
    stage.week(2).list_of(&oskrel).seal(&list).expect(201);

    let units = stage.season.by(&oskrel).collection().expect(200);
    let painted: Vec<u64> = units.iter().map(|unit| unit.painted).collect();
    assert_eq!(painted, [0, 12, 7, 10]);
}

/// The painted points of the list that is refused for them; at least 150 of its 300 must be.
fn painted_points(stage: &Stage, player: &Player) -> u64 {
    let sealed = stage.week(2).list_of(player).seal(&List::demo("Oskrel", 1));
    let refused = sealed.refused(422, "list-breaks-rules");
    let fault = refused.fault();
    assert_eq!(
        (fault.code.as_str(), &fault.limit),
        ("list.painted-share", &json!(150))
    );
    fault.actual.as_u64().unwrap()
}
