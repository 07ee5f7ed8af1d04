//! Rules from week to week where the catalogue has changed in between: last week's list keeps its
//! version, this week's is held against its own, and nobody is bound by what is no longer offered.

use reqwest::Method;
use serde_json::{Value, json};
use tallyhost::demo::data;

use super::lists::{DEADLINE, SECOND_WEEK, open, opened, seal};
use crate::harness::{Player, Stage, demo_list};

#[test]
fn a_sealed_list_keeps_its_points_and_the_next_draft_says_what_has_changed() {
    let (stage, oskrel) = second_week_pinned_to_another_version();
    let mut first = opened(&stage, 1).into_iter();
    let first = first.find(|list| list["player"] == oskrel.id).unwrap();
    let sealed = &first["sealed"];
    assert_eq!(
        (&sealed["points"], &sealed["catalogue_number"]),
        (&json!(300), &json!(1))
    );
    let found = ask(&stage, &oskrel, "changes", &demo_list("Oskrel", 1));
    assert_eq!(found["since"], 1);
    assert_eq!(
        found["catalogue"],
        json!({ "before": 1, "now": 2, "touched": [
            { "entry": "hedge-reeve-1", "name": "Hedge-Reeve", "before": 100, "now": 105 },
            { "entry": "orchard-levy-1", "name": "Orchard Levy", "before": 70 },
            { "entry": "furrow-hares-1", "name": "Furrow Hares", "before": 70 },
            { "entry": "orchard-levy-2", "name": "Orchard Levy", "before": 60 },
        ]})
    );
    let became: Vec<_> = found["changes"]
        .as_array()
        .unwrap()
        .iter()
        .map(|change| (&change["entry"], &change["became"]))
        .collect();
    assert_eq!(became[0], (&json!("hedge-reeve-1"), &json!("repriced")));
    assert_eq!(became[2], (&json!("furrow-hares-1"), &json!("gone")));

    let page = stage
        .server
        .browser("Oskrel")
        .get(&format!("{}/list", page_of(&stage)));
    let text = page.with_status(200).text();
    for told in [
        "Hedge-Reeve: 100 → 105",
        "Furrow Hares: no longer offered as it was",
    ] {
        assert!(text.contains(told), "{told} is not in {text}");
    }
}

#[test]
fn what_is_no_longer_offered_need_not_return_and_all_the_rest_must() {
    let (stage, oskrel) = second_week_pinned_to_another_version();
    let unchanged = ask(&stage, &oskrel, "check", &demo_list("Oskrel", 1));
    assert_eq!(
        codes(&unchanged),
        [
            "list.unit-size",
            "list.unknown-option",
            "list.unknown-unit",
            "list.unknown-option"
        ],
        "last week's list as it was is not offered, but nothing of it is missing"
    );
    let rest = json!({ "faction": "bramblestile-steadings", "entries": [
        { "key": "hedge-reeve-1", "unit": "hedge-reeve", "models": 1,
          "options": { "ram-mount": 1, "thorn-crook": 1 } },
        { "key": "orchard-levy-1", "unit": "orchard-levy", "models": 11 },
        { "key": "orchard-levy-2", "unit": "orchard-levy", "models": 10 },
    ]});
    let accepted = ask(&stage, &oskrel, "check", &rest);
    assert_eq!(
        (&accepted["accepted"], &accepted["total"]),
        (&json!(true), &json!(105 + 55 + 50))
    );

    let mut without = rest.clone();
    without["entries"].as_array_mut().unwrap().pop();
    let refused = seal(&stage, &oskrel, 2, &without).refused(422, "list-breaks-rules");
    let [fault] = &refused["errors"].as_array().unwrap()[..] else {
        panic!("one rule is broken: {refused}");
    };
    assert_eq!(
        (&fault["code"], &fault["limit"], &fault["actual"]),
        (&json!("list.carry-over"), &json!(205), &json!(155)),
        "at last week's points: 100 for the reeve, 55 and 50 for what is offered of the levies"
    );
    let receipt = seal(&stage, &oskrel, 2, &rest).expect(201);
    assert_eq!(receipt["report"]["total"], 210);
}

/// Oskrel's list of week 1 is opened; week 2 is announced, with a version in which the Hedge-Reeve's
/// mount is dearer, the Orchard Levy has no standard and no size above 11, and there are no hares.
fn second_week_pinned_to_another_version() -> (Stage, Player) {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.start();
    seal(&stage, &oskrel, 1, &demo_list("Oskrel", 1)).expect(201);
    let versions = format!("{}/catalogues/{}/versions", stage.club, stage.catalogue);
    let catalogue = next_version();
    let import = |request: reqwest::blocking::RequestBuilder| request.json(&catalogue);
    let wennable = &stage.wennable;
    wennable.ask(Method::POST, &versions, import).expect(201);
    let pin = json!({ "catalogue_number": 2 });
    let pin = |request: reqwest::blocking::RequestBuilder| request.json(&pin);
    wennable
        .ask(Method::PATCH, &stage.week(1), pin)
        .refused(409, "season-fixed");
    wennable.ask(Method::PATCH, &stage.week(2), pin).expect(204);
    stage.clock().show(DEADLINE);
    open(&stage, 1).expect(204);
    stage.clock().show(SECOND_WEEK);
    (stage, oskrel)
}

fn next_version() -> Value {
    let mut catalogue = data::catalogue().unwrap();
    let factions = catalogue["factions"].as_array_mut().unwrap();
    let steadings = factions
        .iter_mut()
        .find(|faction| faction["key"] == "bramblestile-steadings")
        .unwrap();
    let units = steadings["units"].as_array_mut().unwrap();
    units.retain(|unit| unit["key"] != "furrow-hares");
    for unit in units {
        if unit["key"] == "orchard-levy" {
            unit["options"] = json!([]);
            let sizes = unit["sizes"].as_array_mut().unwrap();
            sizes.retain(|size| size["models"].as_u64().unwrap() <= 11);
        }
        for option in unit["options"].as_array_mut().into_iter().flatten() {
            if option["key"] == "ram-mount" {
                option["points"] = json!(30);
            }
        }
    }
    catalogue
}

fn page_of(stage: &Stage) -> String {
    stage.week(2).replacen("/api/v1", "", 1)
}

fn codes(report: &Value) -> Vec<&str> {
    let findings = report["findings"].as_array().unwrap().iter();
    findings
        .map(|finding| finding["code"].as_str().unwrap())
        .collect()
}

fn ask(stage: &Stage, player: &Player, what: &str, body: &Value) -> Value {
    let path = format!("{}/list/{what}", stage.week(2));
    player.actor.post(&path, body).expect(200)
}
