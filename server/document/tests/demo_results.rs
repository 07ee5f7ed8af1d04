//! The demo season's sheets and scoring are data, and its games score as its rules say.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use document::painting::rules::PaintingDocument;
use document::results::{BothDocument, SideDocument};
use document::results::{
    CountsDocument, GameScoreDocument, ImpossibleDocument, NoticeDocument, SideCountsDocument,
    TypedResultDocument,
};
use document::season::scenario::ScenarioSheetDocument;
use document::season::scoring::ScoringDocument;
use document::season::tie_breaks::TieBreaksDocument;
use league::painting::Painting;
use league::points::Points;
use league::result::{ArmyPoints, Outcome, TypedResult};
use league::scenario::ScenarioSheet;
use league::scoring::Scoring;
use league::side::PerSide;
use league::standings::TieBreaks;

fn documents() -> Vec<ScenarioSheetDocument> {
    serde_json::from_str(include_str!("../../../demo/scenarios.json")).unwrap()
}

fn sheet(week: usize) -> ScenarioSheet {
    let document = documents().into_iter().nth(week - 1).unwrap();
    ScenarioSheet::try_from(document).unwrap()
}

fn scoring() -> Scoring {
    let text = include_str!("../../../demo/scoring.json");
    let document: ScoringDocument = serde_json::from_str(text).unwrap();
    Scoring::try_from(document).unwrap()
}

fn side(items: &[(&str, u32)]) -> SideCountsDocument {
    let items = items.iter().map(|&(key, count)| (key.to_owned(), count));
    SideCountsDocument {
        items: items.collect(),
        started: None,
    }
}

type Leg<'a> = (&'a [(&'a str, u32)], &'a [(&'a str, u32)]);

fn report(legs: &[Leg<'_>]) -> TypedResultDocument {
    let legs = legs.iter().map(|(first, second)| BothDocument {
        first: side(first),
        second: side(second),
    });
    TypedResultDocument::Played {
        counts: CountsDocument {
            legs: legs.collect(),
        },
    }
}

fn armies(first: u32, second: u32, cap: u32) -> ArmyPoints {
    ArmyPoints {
        lists: PerSide::new(Points::new(first), Points::new(second)),
        cap: Points::new(cap),
    }
}

fn outcome(
    week: usize,
    report: TypedResultDocument,
    armies: ArmyPoints,
) -> Result<Outcome, Vec<ImpossibleDocument>> {
    let typed = TypedResult::try_from(report).unwrap();
    let outcome = typed.outcome(&sheet(week), &armies);
    outcome.map_err(|all| all.iter().map(Into::into).collect())
}

fn total(week: usize, legs: &[Leg<'_>], armies: ArmyPoints) -> (u32, u32) {
    let outcome = outcome(week, report(legs), armies).unwrap();
    let total = outcome.score().unwrap().total;
    (total.first, total.second)
}

#[test]
fn every_demo_sheet_is_sound_and_reads_back_as_it_was_written() {
    let documents = documents();
    assert_eq!(documents.len(), 8);
    for document in documents {
        let sheet = ScenarioSheet::try_from(document.clone()).unwrap();
        assert_eq!(ScenarioSheetDocument::from(&sheet), document);
        assert!(sheet.messages().len() > sheet.terms().items.len());
    }
}

#[test]
fn the_demo_rules_are_sound_and_read_back_as_they_were_written() {
    let text = include_str!("../../../demo/scoring.json");
    let written: ScoringDocument = serde_json::from_str(text).unwrap();
    assert_eq!(ScoringDocument::from(&scoring()), written);
    let text = include_str!("../../../demo/painting.json");
    let written: PaintingDocument = serde_json::from_str(text).unwrap();
    let painting = Painting::try_from(written.clone()).unwrap();
    assert_eq!(PaintingDocument::from(&painting), written);
    let text = include_str!("../../../demo/tie_breaks.json");
    let written: TieBreaksDocument = serde_json::from_str(text).unwrap();
    let tie_breaks = TieBreaks::try_from(written.clone()).unwrap();
    assert_eq!(TieBreaksDocument::from(&tie_breaks), written);
}

#[test]
fn the_ford_gives_two_a_turn_and_one_for_every_full_12_percent_of_the_cap() {
    let legs: [Leg<'_>; 1] = [(
        &[("ford-marker", 4), ("destroyed", 107)],
        &[("ford-marker", 2), ("destroyed", 108)],
    )];
    assert_eq!(total(1, &legs, armies(300, 295, 300)), (8 + 2, 4 + 3));
}

#[test]
fn two_legs_add_up_and_each_attacker_is_measured_by_its_own_list() {
    let legs: [Leg<'_>; 2] = [(&[("exited", 417)], &[]), (&[], &[("exited", 420)])];
    assert_eq!(total(4, &legs, armies(596, 600, 600)), (6, 7));
}

#[test]
fn units_worth_35_percent_through_the_east_edge_win_the_run_and_one_point_less_does_not() {
    let run = |points| {
        let legs: [Leg<'_>; 1] = [(&[("run", points)], &[])];
        total(6, &legs, armies(749, 750, 750))
    };
    assert_eq!(run(263), (12, 0), "35 % of 749 is 262.15");
    assert_eq!(run(262), (6, 6));
    assert_eq!(run(0), (0, 12));
}

#[test]
fn a_joint_cap_takes_from_the_item_listed_last() {
    let legs: [Leg<'_>; 1] = [(
        &[("bridges", 4), ("last-bridge", 4)],
        &[("first-across", 1)],
    )];
    let outcome = outcome(7, report(&legs), armies(900, 900, 900)).unwrap();
    let score = GameScoreDocument::from(outcome.score().unwrap());
    let points: Vec<_> = score.legs[0]
        .items
        .iter()
        .map(|item| item.points.first)
        .collect();
    assert_eq!(points, [8, 8, 0]);
    assert_eq!((score.total.first, score.total.second), (16, 4));
}

#[test]
fn a_margin_of_one_is_a_draw_where_the_sheet_says_so() {
    let legs: [Leg<'_>; 1] = [(&[("middle-lamp", 1)], &[("left-lamp", 1)])];
    let played = outcome(2, report(&legs), armies(400, 400, 400)).unwrap();
    let awards = scoring().award(&played, Points::new(400)).unwrap();
    assert_eq!(
        (awards.first.amount.get(), awards.second.amount.get()),
        (5, 5)
    );
}

#[test]
fn impossible_counts_are_all_refused_with_their_limits() {
    let legs: [Leg<'_>; 1] = [(
        &[("ford-marker", 4), ("destroyed", 296), ("lamp", 1)],
        &[("ford-marker", 3)],
    )];
    let refused = outcome(1, report(&legs), armies(300, 295, 300)).unwrap_err();
    let found: Vec<_> = refused
        .iter()
        .map(|one| {
            (
                one.pointer.as_str(),
                one.code.as_str(),
                one.limit,
                one.actual,
            )
        })
        .collect();
    let expected = [
        (
            "/legs/0/first/items/destroyed",
            "result.over-army",
            Some(295),
            Some(296),
        ),
        (
            "/legs/0/first/items/lamp",
            "result.unknown-item",
            None,
            None,
        ),
        ("/legs/0", "result.over-most", Some(6), Some(7)),
    ];
    assert_eq!(found, expected);
}

#[test]
fn roles_legs_and_computed_items_are_watched() {
    let one_leg: [Leg<'_>; 1] = [(&[], &[("exited", 60)])];
    let refused = outcome(4, report(&one_leg), armies(600, 600, 600)).unwrap_err();
    let codes: Vec<_> = refused.iter().map(|one| one.code.as_str()).collect();
    assert_eq!(codes, ["result.legs", "result.other-role"]);
    let computed: [Leg<'_>; 1] = [(&[], &[("held", 3)])];
    let refused = outcome(6, report(&computed), armies(750, 750, 750)).unwrap_err();
    assert_eq!(refused[0].code, "result.computed-item");
}

#[test]
fn a_defender_may_start_with_less_than_its_part_of_the_list_but_not_with_more() {
    let started = |points| {
        let mut report = report(&[(&[], &[]), (&[], &[])]);
        if let TypedResultDocument::Played { counts } = &mut report {
            counts.legs[0].second.started = Some(points);
        }
        outcome(4, report, armies(600, 597, 600))
    };
    assert!(started(477).is_ok(), "80 % of 597 is 477.6");
    let refused = started(478).unwrap_err();
    assert_eq!(refused[0].pointer, "/legs/0/second/started");
    assert_eq!(
        (refused[0].limit, refused[0].actual),
        (Some(477), Some(478))
    );
}

#[test]
fn the_dispute_of_week_6_is_worth_one_league_point_each() {
    let thirteen_eight: [Leg<'_>; 1] =
        [(&[("run", 225), ("destroyed", 630)], &[("destroyed", 180)])];
    let twelve_nine: [Leg<'_>; 1] = [(&[("run", 225), ("destroyed", 540)], &[("destroyed", 270)])];
    let awarded = |legs: &[Leg<'_>]| {
        let played = outcome(6, report(legs), armies(750, 750, 750)).unwrap();
        let total = played.score().unwrap().total;
        let awards = scoring().award(&played, Points::new(750)).unwrap();
        let points = (awards.first.amount.get(), awards.second.amount.get());
        ((total.first, total.second), points)
    };
    assert_eq!(awarded(&thirteen_eight), ((13, 8), (7, 3)));
    assert_eq!(awarded(&twelve_nine), ((12, 9), (6, 4)));
}

#[test]
fn absent_without_notice_is_0_against_7_and_giving_up_late_keeps_the_limits() {
    let awarded = |report| {
        let ended = outcome(4, report, armies(600, 600, 600)).unwrap();
        let awards = scoring().award(&ended, Points::new(600)).unwrap();
        (awards.first.amount.get(), awards.second.amount.get())
    };
    let absent = TypedResultDocument::NoShow {
        absent: SideDocument::First,
        notice: NoticeDocument::NotGiven,
    };
    assert_eq!(awarded(absent), (0, 7));
    let conceded = TypedResultDocument::Conceded {
        by: SideDocument::Second,
        counts: None,
    };
    assert_eq!(awarded(conceded), (8, 2));
}

#[test]
fn members_that_do_not_exist_are_refused() {
    let text = r#"{"legs": [], "legz": []}"#;
    assert!(serde_json::from_str::<CountsDocument>(text).is_err());
    let text = r#"{"kind": "played", "counts": {"legs": []}, "winner": "first"}"#;
    assert!(serde_json::from_str::<TypedResultDocument>(text).is_err());
}

#[test]
fn faults_of_a_sheet_are_told_together_and_where_they_are() {
    let mut document = documents().remove(0);
    document.turns = 0;
    document.items[1].key = "ford-marker".into();
    document.table.markers[0].left = 130;
    let faults = ScenarioSheet::try_from(document).unwrap_err();
    let found: Vec<_> = faults
        .iter()
        .map(|fault| (fault.pointer.as_str(), fault.code.as_str()))
        .collect();
    let expected = [
        ("/turns", "scenario.turns"),
        ("/items/1/key", "scenario.key-twice"),
        ("/table", "scenario.off-table"),
    ];
    assert_eq!(found, expected);
}
