//! The next season, started from one that is over.

use serde::Serialize;
use serde_json::{Value, json};
use tallyhost::demo::data;

use super::over::a_season_that_is_over;
use crate::harness::{Answer, CollectedUnit, List, NextSeason, Player, Season, Stage, WeekTimes};

/// What a next season is made with.
#[derive(Clone, Serialize)]
struct Next {
    name: &'static str,
    first_day: &'static str,
    scenarios: bool,
    #[serde(skip_serializing_if = "Option::is_none")]
    carry: Option<&'static str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    other_weekdays: Option<bool>,
}

/// Thursday, 10 September 2026; the clocks of Berlin go back in its seventh week.
const IN_AUTUMN: Next = Next {
    name: "Autumn at the ford",
    first_day: "2026-09-10",
    scenarios: true,
    carry: None,
    other_weekdays: None,
};

impl Next {
    fn after(&self, stage: &Stage) -> Answer<NextSeason> {
        stage.season.next(&json!(self))
    }
}

#[test]
fn the_next_season_keeps_rules_rhythm_and_scenarios_on_new_days_and_can_still_be_edited() {
    let stage = Stage::draft();
    let [scenario, ..] = &data::scenarios().unwrap()[..] else {
        panic!("the demo has scenarios");
    };
    stage.week(1).set_scenario(scenario).expect(204);
    for handle in ["Oskrel", "Corvanel"] {
        stage.join(handle);
    }
    stage.start();
    let old = stage.season.state().expect(200);

    let alone = IN_AUTUMN.after(&stage).expect(201);
    assert!(alone.players.is_empty());
    let with_players = Next {
        carry: Some("players"),
        ..IN_AUTUMN
    };
    let answer = with_players.after(&stage).with_status(201);
    let made = answer.view();
    let new = stage.club.season_at(answer.location(201));
    assert_eq!(made.players.len(), 2);
    let season = made.season;
    assert_eq!(season.visibility, old.visibility);
    assert_eq!(season.zone, old.zone);
    assert_eq!(season.catalogue, old.catalogue);
    assert_eq!(season.places, old.places);
    assert_eq!(season.policy, old.policy);
    assert_eq!(season.rules, old.rules);
    assert_eq!(
        (season.state.as_str(), season.seed_commitment),
        ("draft", None)
    );
    new.by(stage.visitor()).state().refused(404, "not-found");
    it_has_the_same_rhythm(&stage.season, &new);
    let scenario_of = |season: &Season| season.week(1).scenario().expect(200);
    assert_eq!(scenario_of(&new), scenario_of(&stage.season));

    new.week(1).update(&json!({ "cap": 250 })).expect(204);
    let started = new.start().expect(200);
    assert_ne!(started.seed_commitment, old.seed_commitment);
    let trail = new.trail().expect(200);
    let made = trail
        .iter()
        .filter(|entry| entry.act == "create_season_from");
    let from: Vec<&Value> = made.map(|entry| entry.fact("from")).collect();
    assert_eq!(from, [&old.id]);
}

/// On other days, over the end of summer time.
fn it_has_the_same_rhythm(old: &Season, new: &Season) {
    let weeks = |season: &Season| season.weeks().expect(200);
    let caps = |weeks: &[WeekTimes]| -> Vec<u64> { weeks.iter().map(|week| week.cap).collect() };
    let new_weeks = weeks(new);
    assert_eq!(caps(&weeks(old)), caps(&new_weeks));
    let [sixth, seventh] = &new_weeks[5..7] else {
        panic!("there are seven weeks");
    };
    assert_eq!(
        [&sixth.lists_due, &seventh.lists_due],
        ["2026-10-19T20:00:00", "2026-10-26T20:00:00"]
    );
    assert_eq!(
        [&sixth.lists_due_at, &seventh.lists_due_at],
        ["2026-10-19T18:00:00Z", "2026-10-26T19:00:00Z"]
    );
    let night = &seventh.nights[0];
    assert_eq!(
        (night.begins.as_str(), night.tables),
        ("2026-10-27T19:00:00", 6)
    );
}

#[test]
fn the_next_season_does_not_begin_years_ago() {
    let stage = Stage::draft();
    let long_ago = Next {
        first_day: "1999-09-09",
        ..IN_AUTUMN
    };
    let refused = long_ago.after(&stage).refused(422, "validation");
    let fault = &refused.faults[0];
    assert_eq!(
        (fault.pointer.as_str(), &fault.limit, &fault.actual),
        ("/first_day", &json!("2025-01-04"), &json!("1999-09-09"))
    );
}

#[test]
fn a_first_day_of_another_weekday_or_in_the_hour_that_the_clocks_skip_is_refused() {
    let stage = Stage::with(|season| {
        season.caps(&[300]);
        season.set(
            "/calendar/announce",
            json!({ "day": 0, "time": "02:30:00" }),
        );
    });
    let mut body = Next {
        first_day: "2026-09-12",
        ..IN_AUTUMN
    };
    let refused = body.after(&stage).refused(422, "validation");
    let fault = &refused.faults[0];
    assert_eq!(
        (fault.code.as_str(), fault.pointer.as_str(), &fault.limit),
        ("season.weekday", "/first_day", &json!("2026-09-10"))
    );
    body.other_weekdays = Some(true);
    body.after(&stage).expect(201);
    body.first_day = "2027-03-28";
    let refused = body.after(&stage).refused(422, "invalid-local-time");
    assert!(
        refused.faults[0].detail.contains("announce of week 1"),
        "{refused}"
    );
}

#[test]
fn who_played_to_the_end_comes_along_and_a_painted_unit_stays_painted() {
    let week = a_season_that_is_over("public");
    let body = Next {
        carry: Some("players_with_collections"),
        ..IN_AUTUMN
    };
    body.after(&week.stage).refused(409, "season-state");
    week.season().end().expect(200);
    let answer = body.after(&week.stage).with_status(201);
    let next = answer.view();
    let new = week.stage.club.season_at(answer.location(201));
    let handles: Vec<&str> = next.players.iter().map(|it| it.handle.as_str()).collect();
    assert_eq!(handles, ["Corvanel", "Oskrel"]);
    let left_out = next.left_out.iter();
    let left_out: Vec<_> = left_out
        .map(|one| (one.handle.as_str(), one.why.as_str()))
        .collect();
    assert_eq!(
        left_out,
        [("Lumeth", "left_the_club"), ("Pellamoor", "withdrew")]
    );
    let oskrel = &week.players[0];
    new.start().expect(200);
    let collection = new.by(oskrel).collection().expect(200);
    let reeve = unit(&collection, "hedge-reeve-1");
    assert_eq!((reeve.models, reeve.painted), (1, 1));
    assert!(reeve.first_week.is_none(), "{reeve:?}");
    assert_eq!(unit(&collection, "orchard-levy-1").painted, 0);

    week.stage.clock().show("2026-09-10T18:00:00+02:00");
    keeps_its_paint(&new, oskrel);
    only_what_is_fielded_is_told(&week.stage, &new, oskrel);
}

fn unit<'c>(collection: &'c [CollectedUnit], entry: &str) -> &'c CollectedUnit {
    let mut units = collection.iter();
    units.find(|unit| unit.entry == entry).unwrap()
}

/// The reeve cannot be claimed as new, and a pasted list knows it again by its name.
fn keeps_its_paint(new: &Season, oskrel: &Player) {
    let week = new.week(1);
    let refused = week.by(oskrel).claim("hedge-reeve-1", 1);
    let refused = refused.refused(422, "validation");
    assert_eq!(refused.faults[0].code, "painting.nothing-new");
    let read = week.list_of(oskrel).read("Hedge-Reeve").expect(200);
    assert_eq!(read.list.unwrap().entries[0].key, "hedge-reeve-1");
}

/// Oskrel fields the brought units again; Corvanel hands in nothing.
fn only_what_is_fielded_is_told(stage: &Stage, new: &Season, oskrel: &Player) {
    let own = new.week(1).list_of(oskrel);
    own.seal(&List::demo("Oskrel", 1)).expect(201);
    let brought_by = |player: usize| {
        let export = new.by(stage.visitor()).export().expect(200);
        let brought = export.pointer(&format!("/players/{player}/brought"));
        brought.cloned()
    };
    let [corvanel, oskrel] = [0, 1];
    for player in [corvanel, oskrel] {
        assert_eq!(brought_by(player), None, "the lists are sealed");
    }
    stage.clock().show("2026-09-14T21:00:00+02:00");
    new.week(1).open_lists().expect(204);
    assert_eq!(brought_by(corvanel), None);
    let told = brought_by(oskrel).unwrap();
    let stages = |entry: &str| {
        let mut units = told.as_array().unwrap().iter();
        let unit = units.find(|unit| unit.get("entry") == Some(&json!(entry)));
        unit.unwrap().get("stages").cloned().unwrap_or_default()
    };
    let reeve = stages("hedge-reeve-1");
    assert_eq!(reeve.get("finished"), Some(&json!(1)));
    assert!(stages("orchard-levy-1").is_null());
}
