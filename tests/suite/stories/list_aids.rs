//! What helps a player to write the next list.

use serde_json::json;

use super::lists::{DEADLINE, SECOND_WEEK};
use crate::harness::{Cut, List, ListClient, Player, Stage, Upgrade};

#[test]
fn a_pasted_text_is_read_line_by_line_and_its_units_are_those_of_last_week() {
    let (stage, oskrel) = with_first_list_opened();
    let own = stage.week(2).list_of(&oskrel);
    let text = "Bramblestile Steadings, 400 points\n\
                - Hedge-Reeve (ram mount, thorn crook): 100\n\
                - Orchard Levy, 13 models, scarecrow standard: 80\n\
                - Orchard Levy, 12 models, scarecrow standard: 70\n\
                - Orchard Levi, 10 models\n\
                * Furrow Hares [8] 80\n\
                Swordfish of the deep";
    let reading = own.read(text).expect(200);
    let lines = &reading.lines;
    let certainties: Vec<&str> = lines.iter().map(|line| line.certainty.as_str()).collect();
    let [known, guessed, strange] = ["understood", "guessed", "not_understood"];
    assert_eq!(
        certainties,
        [known, known, known, known, guessed, known, strange]
    );
    let list = reading.list.unwrap();
    let keys: Vec<&str> = list
        .entries
        .iter()
        .map(|entry| entry.key.as_str())
        .collect();
    assert_eq!(
        keys,
        [
            "hedge-reeve-1",
            "orchard-levy-2",
            "orchard-levy-1",
            "orchard-levy-3",
            "furrow-hares-1"
        ]
    );
    assert_eq!(lines[2].parts[0].meaning.entries, ["orchard-levy-2"]);
    let stated = &reading.findings[0];
    assert_eq!(stated.severity, "remark");
    assert_eq!(
        stated.entries,
        ["orchard-levy-2"],
        "13 levies with a standard cost 75 points, not 80"
    );
    let report = own.check(&list).expect(200).report;
    assert_eq!(
        (report.accepted, report.total),
        (true, 100 + 75 + 70 + 50 + 80)
    );
}

#[test]
fn what_would_still_fit_costs_no_more_than_is_left_and_keeps_the_rules() {
    let (stage, oskrel) = started();
    let list = List::demo("Oskrel", 1).without_last_entry();
    let fits = own(&stage, &oskrel).fits(&list).expect(200);
    assert_eq!(
        fits.additions,
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
    let upgrades = &fits.upgrades;
    let lamps = Upgrade {
        entry: "furrow-hares-1".to_owned(),
        step: json!({ "kind": "take", "option": "night-lamps" }),
        points: 12,
    };
    assert!(upgrades.contains(&lamps), "{upgrades:?}");
    for upgrade in upgrades {
        assert!(upgrade.points <= 60, "{upgrade:?}");
    }
}

#[test]
fn a_list_over_the_cap_is_offered_the_single_steps_that_suffice() {
    let (stage, oskrel) = started();
    let own = own(&stage, &oskrel);
    let mut list = List::demo("Oskrel", 1);
    assert_eq!(own.check(&list).expect(200).cuts, []);
    list.entries[2].models = 8;
    let checked = own.check(&list).expect(200);
    let report = checked.report;
    assert_eq!((report.accepted, report.total), (false, 310));
    let cuts = checked.cuts;
    let shrink = Cut {
        entry: "furrow-hares-1".to_owned(),
        step: json!({ "kind": "shrink_to", "models": 7 }),
        saves: 10,
    };
    assert!(cuts.contains(&shrink), "{cuts:?}");
    let saved: Vec<u64> = cuts.iter().map(|cut| cut.saves).collect();
    assert!(saved.is_sorted() && saved[0] == 10, "{saved:?}");
}

#[test]
fn a_first_list_is_all_new_and_the_next_says_what_was_added_and_what_has_grown() {
    let (stage, oskrel) = with_first_list_opened();
    let changes = |week: u8| {
        let list = List::demo("Oskrel", week);
        let own = stage.week(week).list_of(&oskrel);
        own.changes(&list).expect(200)
    };
    let first = changes(1);
    assert_eq!(first.since, None);
    let first = first.told();
    assert!(
        first.iter().all(|(_, became)| *became == "added"),
        "{first:?}"
    );
    let second = changes(2);
    assert_eq!(second.since, Some(1));
    assert_eq!(
        second.told(),
        [
            ("hedge-reeve-1", "unchanged"),
            ("orchard-levy-1", "grown"),
            ("furrow-hares-1", "grown"),
            ("orchard-levy-2", "grown"),
            ("orchard-levy-3", "added"),
        ]
    );
}

#[test]
fn a_collection_grows_from_week_to_week_and_belongs_to_its_owner() {
    let (stage, oskrel) = with_first_list_opened();
    let second = List::demo("Oskrel", 2);
    stage.week(2).list_of(&oskrel).seal(&second).expect(201);
    let units = stage.season.by(&oskrel).collection().expect(200);
    let units: Vec<_> = units
        .iter()
        .map(|unit| {
            let weeks = (unit.first_week.unwrap(), unit.last_week.unwrap());
            (unit.entry.as_str(), unit.models, weeks)
        })
        .collect();
    assert_eq!(
        units,
        [
            ("hedge-reeve-1", 1, (1, 2)),
            ("orchard-levy-1", 13, (1, 2)),
            ("furrow-hares-1", 8, (1, 2)),
            ("orchard-levy-2", 12, (1, 2)),
            ("orchard-levy-3", 13, (2, 2)),
        ]
    );
    let seen = stage.season.by(stage.visitor());
    seen.collection().refused(401, "sign-in-needed");
    stage.season.collection().refused(404, "not-found");
}

#[test]
fn the_rules_of_a_season_read_back_as_plain_sentences_with_their_weeks() {
    let stage = Stage::draft();
    stage.start();
    let visitor = stage.visitor();
    let rules = stage.season.by(&visitor).state().expect(200).rules;
    let page = visitor.get(&stage.season.page("")).with_status(200).text();
    for sentence in [
        "All of last week's points return; units may grow, not shrink; options may be added, not \
         dropped (weeks 2-4 and 6-8).",
        "At most 20 % of last week's points leave the list (week 5).",
        "No single unit costs more than 40 % of the cap (weeks 1-2).",
    ] {
        assert!(
            rules.iter().any(|rule| rule == sentence),
            "{sentence}: {rules:#?}"
        );
        let shown = sentence.replace('\'', "&#39;");
        assert!(page.contains(&shown), "{sentence}");
    }
}

/// Oskrel plays, and week 1 is announced.
fn started() -> (Stage, Player) {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.start();
    (stage, oskrel)
}

fn own(stage: &Stage, player: &Player) -> ListClient {
    stage.week(1).list_of(player)
}

/// Oskrel's list of week 1 is opened, and week 2 is announced.
fn with_first_list_opened() -> (Stage, Player) {
    let (stage, oskrel) = started();
    let sealed = own(&stage, &oskrel).seal(&List::demo("Oskrel", 1));
    sealed.expect(201);
    stage.clock().show(DEADLINE);
    stage.week(1).open_lists().expect(204);
    stage.clock().show(SECOND_WEEK);
    (stage, oskrel)
}
