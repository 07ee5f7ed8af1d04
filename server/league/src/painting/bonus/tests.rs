//! The four kinds of painted bonus, one test each.

use uuid::Uuid;

use super::super::{
    Checker, FinishedMeasure, PaintCounting, PaintedBonus, PaintedWeek, Painting, PaintingFault,
    PaintingTerms, Stage, Tier,
};
use crate::ids::PlayerId;
use crate::ledger::LineSource;
use crate::points::{LeaguePoints, Points};
use crate::share::Share;
use crate::week::WeekNo;

fn week(part: u64, whole: u64, new_units: u32, new_points: u32) -> PaintedWeek {
    PaintedWeek {
        player: PlayerId(Uuid::nil()),
        week: WeekNo::FIRST,
        share: Share::new(part, whole).unwrap(),
        new_units,
        new_points: Points::new(new_points),
        source: LineSource::Rule,
        version: 1,
    }
}

fn earned(bonus: &PaintedBonus, week: &PaintedWeek) -> i32 {
    bonus.earned(week).map_or(0, |(points, _)| points.get())
}

fn tier(percent: u32, points: i32) -> Tier {
    Tier {
        from: Share::percent(percent),
        points: LeaguePoints::new(points),
    }
}

#[test]
fn a_threshold_is_all_or_nothing() {
    let bonus = PaintedBonus::AtThreshold {
        share: Share::percent(80),
        points: LeaguePoints::new(3),
    };
    assert_eq!(earned(&bonus, &week(4, 5, 0, 0)), 3);
    assert_eq!(earned(&bonus, &week(479, 600, 0, 0)), 0);
}

#[test]
fn the_highest_tier_reached_counts_alone() {
    let bonus = PaintedBonus::Tiers(vec![tier(50, 1), tier(100, 2)]);
    let points = [(299, 600), (300, 600), (599, 600), (600, 600)]
        .map(|(part, whole)| earned(&bonus, &week(part, whole, 0, 0)));
    assert_eq!(points, [0, 1, 1, 2]);
}

#[test]
fn a_proportional_bonus_is_rounded_down() {
    let bonus = PaintedBonus::Proportional {
        for_all: LeaguePoints::new(3),
    };
    let points = [(1, 3), (199, 600), (2, 3), (599, 600), (1, 1)]
        .map(|(part, whole)| earned(&bonus, &week(part, whole, 0, 0)));
    assert_eq!(points, [1, 0, 2, 2, 3]);
}

#[test]
fn newly_finished_things_count_by_unit_or_by_army_points_up_to_the_most_of_a_week() {
    let bonus = |counted| PaintedBonus::NewlyFinished {
        counted,
        each: LeaguePoints::new(1),
        most: LeaguePoints::new(2),
    };
    let units = bonus(FinishedMeasure::Units);
    assert_eq!(
        [0, 1, 2, 5].map(|n| earned(&units, &week(0, 1, n, 0))),
        [0, 1, 2, 2]
    );
    let step = Points::new(50);
    let points = bonus(FinishedMeasure::Points { step });
    assert_eq!(
        [49, 50, 99, 400].map(|n| earned(&points, &week(0, 1, 1, n))),
        [0, 1, 1, 2]
    );
}

#[test]
fn faults_of_painting_rules_are_told_together() {
    let terms = PaintingTerms {
        painted_from: Stage::Primed,
        counting: PaintCounting::ByModel,
        bonuses: vec![
            PaintedBonus::Tiers(vec![tier(100, 2), tier(50, 1)]),
            PaintedBonus::NewlyFinished {
                counted: FinishedMeasure::Points { step: Points::ZERO },
                each: LeaguePoints::ZERO,
                most: LeaguePoints::new(1),
            },
        ],
        checked_by: Vec::<Checker>::new(),
    };
    let faults = Painting::build(terms).unwrap_err();
    let codes: Vec<_> = faults.iter().map(PaintingFault::code).collect();
    let expected = [
        "painting.tiers",
        "painting.amount",
        "painting.step",
        "painting.painted-from",
        "painting.nobody-checks",
    ];
    assert_eq!(codes, expected);
}
