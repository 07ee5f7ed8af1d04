//! What helps a player to write the next list.

use serde_json::{Value, json};

use super::lists::{DEADLINE, SECOND_WEEK, open, seal, without_last_entry};
use crate::harness::{Player, Stage, demo_list};

#[test]
fn a_pasted_text_is_read_line_by_line_and_its_units_are_those_of_last_week() {
    let (stage, oskrel) = with_first_list_opened();
    let text = "Bramblestile Steadings, 400 points\n\
                - Hedge-Reeve (ram mount, thorn crook): 100\n\
                - Orchard Levy, 13 models, scarecrow standard: 80\n\
                - Orchard Levy, 12 models, scarecrow standard: 70\n\
                - Orchard Levi, 10 models\n\
                * Furrow Hares [8] 80\n\
                Swordfish of the deep";
    let reading = ask(&stage, &oskrel, 2, "read", &json!({ "text": text }));
    let lines = reading["lines"].as_array().unwrap();
    let certainties: Vec<_> = lines.iter().map(|line| &line["certainty"]).collect();
    let [known, guessed, strange] = ["understood", "guessed", "not_understood"];
    assert_eq!(
        certainties,
        [known, known, known, known, guessed, known, strange]
    );
    let keys = |entries: &Value| -> Vec<String> {
        let entries = entries.as_array().unwrap().iter();
        entries
            .map(|entry| entry["key"].as_str().unwrap().to_owned())
            .collect()
    };
    assert_eq!(
        keys(&reading["list"]["entries"]),
        [
            "hedge-reeve-1",
            "orchard-levy-2",
            "orchard-levy-1",
            "orchard-levy-3",
            "furrow-hares-1"
        ]
    );
    assert_eq!(
        lines[2]["parts"][0]["meaning"]["entries"],
        json!(["orchard-levy-2"])
    );
    let stated = &reading["findings"][0];
    assert_eq!(
        (&stated["severity"], &stated["entries"]),
        (&json!("remark"), &json!(["orchard-levy-2"])),
        "13 levies with a standard cost 75 points, not 80"
    );
    let checked = ask(&stage, &oskrel, 2, "check", &reading["list"]);
    assert_eq!(
        (&checked["accepted"], &checked["total"]),
        (&json!(true), &json!(100 + 75 + 70 + 50 + 80))
    );
}

#[test]
fn what_would_still_fit_costs_no_more_than_is_left_and_keeps_the_rules() {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.start();
    let list = without_last_entry(demo_list("Oskrel", 1));
    let fits = ask(&stage, &oskrel, 1, "fits", &list);
    assert_eq!(
        fits["additions"],
        json!([
            { "unit": "orchard-levy", "sizes": [
                { "models": 10, "points": 50 },
                { "models": 11, "points": 55 },
                { "models": 12, "points": 60 },
            ]},
            { "unit": "stile-keepers", "sizes": [
                { "models": 5, "points": 50 },
                { "models": 6, "points": 60 },
            ]},
        ]),
        "60 points are left, there is a leader, and hares come once in week 1"
    );
    let upgrades = fits["upgrades"].as_array().unwrap();
    let lamps = json!({ "kind": "take", "option": "night-lamps" });
    let lamps = json!({ "entry": "furrow-hares-1", "step": lamps, "points": 12 });
    assert!(upgrades.contains(&lamps), "{upgrades:?}");
    for upgrade in upgrades {
        assert!(upgrade["points"].as_u64().unwrap() <= 60, "{upgrade}");
    }
}

#[test]
fn a_list_over_the_cap_is_offered_the_single_steps_that_suffice() {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.start();
    let mut list = demo_list("Oskrel", 1);
    assert_eq!(ask(&stage, &oskrel, 1, "check", &list)["cuts"], json!([]));
    list["entries"][2]["models"] = json!(8);
    let checked = ask(&stage, &oskrel, 1, "check", &list);
    assert_eq!(
        (&checked["accepted"], &checked["total"]),
        (&json!(false), &json!(310))
    );
    let cuts = checked["cuts"].as_array().unwrap();
    let shrink = json!({ "kind": "shrink_to", "models": 7 });
    let shrink = json!({ "entry": "furrow-hares-1", "step": shrink, "saves": 10 });
    assert!(cuts.contains(&shrink), "{cuts:?}");
    let saved: Vec<_> = cuts
        .iter()
        .map(|cut| cut["saves"].as_u64().unwrap())
        .collect();
    assert!(saved.is_sorted() && saved[0] == 10, "{saved:?}");
}

#[test]
fn a_first_list_is_all_new_and_the_next_says_what_was_added_and_what_has_grown() {
    let (stage, oskrel) = with_first_list_opened();
    let became = |week: u8, list: &Value| {
        let found = ask(&stage, &oskrel, week, "changes", list);
        let changes = found["changes"].as_array().unwrap().clone();
        let told = changes.into_iter().map(|change| {
            let [entry, became] = ["entry", "became"].map(|name| change[name].as_str().unwrap());
            format!("{entry} {became}")
        });
        (found["since"].clone(), told.collect::<Vec<_>>())
    };
    let (since, first) = became(1, &demo_list("Oskrel", 1));
    assert_eq!(since, Value::Null);
    assert!(
        first.iter().all(|told| told.ends_with(" added")),
        "{first:?}"
    );
    let (since, second) = became(2, &demo_list("Oskrel", 2));
    assert_eq!(since, 1);
    assert_eq!(
        second,
        [
            "hedge-reeve-1 unchanged",
            "orchard-levy-1 grown",
            "furrow-hares-1 grown",
            "orchard-levy-2 grown",
            "orchard-levy-3 added"
        ]
    );
}

#[test]
fn a_collection_grows_from_week_to_week_and_belongs_to_its_owner() {
    let (stage, oskrel) = with_first_list_opened();
    let collection = format!("{}/collection", stage.season);
    seal(&stage, &oskrel, 2, &demo_list("Oskrel", 2)).expect(201);
    let units = oskrel.actor.get(&collection).expect(200);
    let told: Vec<_> = units.as_array().unwrap().iter().map(told).collect();
    assert_eq!(
        told,
        [
            ("hedge-reeve-1", 1, 1, 2),
            ("orchard-levy-1", 13, 1, 2),
            ("furrow-hares-1", 8, 1, 2),
            ("orchard-levy-2", 12, 1, 2),
            ("orchard-levy-3", 13, 2, 2),
        ]
    );
    let visitor = stage.server.visitor();
    visitor.get(&collection).refused(401, "sign-in-needed");
    stage.wennable.get(&collection).refused(404, "not-found");
}

#[test]
fn the_rules_of_a_season_read_back_as_plain_sentences_with_their_weeks() {
    let stage = Stage::draft();
    stage.start();
    let season = stage.server.visitor().get(&stage.season).expect(200);
    let rules = season["rules"].as_array().unwrap();
    let page = stage.season.replacen("/api/v1", "", 1);
    let page = stage.server.visitor().get(&page).with_status(200).text();
    for sentence in [
        "All of last week's points return; units may grow, not shrink; options may be added, not \
         dropped (weeks 2-4 and 6-8).",
        "At most 20 % of last week's points leave the list (week 5).",
        "No single unit costs more than 40 % of the cap (weeks 1-2).",
    ] {
        assert!(rules.contains(&json!(sentence)), "{sentence}: {rules:#?}");
        let shown = sentence.replace('\'', "&#39;");
        assert!(page.contains(&shown), "{sentence}");
    }
}

fn told(unit: &Value) -> (&str, u64, u64, u64) {
    let [models, first, last] =
        ["models", "first_week", "last_week"].map(|name| unit[name].as_u64().unwrap());
    (unit["entry"].as_str().unwrap(), models, first, last)
}

/// Oskrel's list of week 1 is opened, and week 2 is announced.
fn with_first_list_opened() -> (Stage, Player) {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.start();
    seal(&stage, &oskrel, 1, &demo_list("Oskrel", 1)).expect(201);
    stage.clock().show(DEADLINE);
    open(&stage, 1).expect(204);
    stage.clock().show(SECOND_WEEK);
    (stage, oskrel)
}

fn ask(stage: &Stage, player: &Player, week: u8, what: &str, body: &Value) -> Value {
    let path = format!("{}/list/{what}", stage.week(week));
    player.actor.post(&path, body).expect(200)
}
