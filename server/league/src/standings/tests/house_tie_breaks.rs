//! The league's own tie-breaks, on a season small enough to be counted by hand.

use crate::ledger::LineSource;
use crate::painting::{
    Checker, PaintCounting, PaintedBonus, PaintedWeek, Painting, PaintingTerms, Stage,
};
use crate::points::Points;
use crate::result::Outcome;
use crate::share::Share;
use crate::side::{PerSide, Side};
use crate::standings::TieBreak::{
    self, FewestByes, FewestLateLists, PaintedShare, PaintingPoints, ScoreMargin, Wins,
    WinsInHarderRole,
};
use crate::standings::{Exact, Fixture, LateList, SeasonFacts, UnplayedRounds, table};

use super::seasons::{no_show, plain_scoring, played, player, points, season, week};

fn game(first: u128, second: u128, harder: Side, outcome: Outcome) -> Fixture {
    Fixture::Game {
        players: PerSide::new(player(first), player(second)),
        harder: Some(harder),
        outcome: Some(outcome),
        ruling: None,
    }
}

fn painted(of: u128, number: u8, percent: u32) -> PaintedWeek {
    PaintedWeek {
        player: player(of),
        week: week(number),
        share: Share::percent(percent),
        new_units: 0,
        new_points: Points::ZERO,
        source: LineSource::Rule,
        version: 1,
    }
}

fn four_players() -> SeasonFacts {
    let mut facts = season(4, plain_scoring())
        .with_fixture(1, game(1, 2, Side::First, played(12, 7)))
        .with_fixture(1, game(3, 4, Side::Second, played(5, 5)))
        .with_fixture(2, game(1, 3, Side::First, played(3, 9)))
        .with_fixture(2, game(2, 4, Side::First, no_show(Side::Second)))
        .with_fixture(3, game(4, 2, Side::First, played(8, 2)))
        .with_bye(3, 1);
    facts.painting = Painting::build(PaintingTerms {
        painted_from: Stage::Finished,
        counting: PaintCounting::ByModel,
        bonuses: vec![PaintedBonus::AtThreshold {
            share: Share::percent(50),
            points: points(2),
        }],
        checked_by: vec![Checker::Referee],
    })
    .unwrap();
    facts.painted = vec![painted(2, 1, 60), painted(2, 3, 40), painted(3, 1, 50)];
    facts
}

fn values(tie_break: TieBreak) -> Vec<Exact> {
    let facts = four_players().ordered_by(UnplayedRounds::LeftOut, &[tie_break]);
    let standings = table(&facts, week(3));
    let value = |number| standings.row_of(player(number)).unwrap().tie_breaks[0].value;
    (1..=4).map(|number| value(number).unwrap()).collect()
}

fn whole<const N: usize>(numbers: [i64; N]) -> Vec<Exact> {
    numbers.map(Exact::from_integer).to_vec()
}

#[test]
fn a_win_is_won_on_the_table_and_not_by_an_absence_or_a_bye() {
    assert_eq!(values(Wins), whole([1, 0, 1, 1]));
}

#[test]
fn a_win_with_the_harder_role_is_one_of_the_side_that_had_it() {
    assert_eq!(values(WinsInHarderRole), whole([1, 0, 0, 1]));
}

#[test]
fn the_score_margin_adds_up_what_games_were_won_and_lost_by() {
    assert_eq!(values(ScoreMargin), whole([5 - 6, -5 - 6, 6, 6]));
}

#[test]
fn painting_counts_by_the_points_it_gave_or_by_the_latest_list() {
    assert_eq!(values(PaintingPoints), whole([0, 2, 2, 0]));
    let half = Exact::new(1, 2);
    let expected = [whole([0]), vec![Exact::new(2, 5), half], whole([0])].concat();
    assert_eq!(values(PaintedShare), expected);
}

#[test]
fn who_had_fewer_byes_is_ahead() {
    assert_eq!(values(FewestByes), whole([1, 0, 0, 0]));
    let facts = season(4, plain_scoring())
        .with_bye(1, 1)
        .with_game(1, 2, 3, played(1, 0))
        .ordered_by(UnplayedRounds::LeftOut, &[FewestByes]);
    let rows = table(&facts, week(1)).rows;
    let first: Vec<_> = rows.iter().take(2).map(|row| row.player).collect();
    assert_eq!(first, [player(2), player(1)], "both have 2 points");
}

#[test]
fn who_handed_in_fewer_late_lists_is_ahead_and_later_weeks_do_not_count_yet() {
    let late = |of, number| LateList {
        player: player(of),
        week: week(number),
        seconds: 60,
    };
    let mut facts = season(3, plain_scoring())
        .with_game(1, 1, 2, played(5, 5))
        .ordered_by(UnplayedRounds::LeftOut, &[FewestLateLists]);
    facts.late_lists = vec![late(1, 1), late(2, 2)];
    let standings = table(&facts, week(1));
    let first: Vec<_> = standings
        .rows
        .iter()
        .take(2)
        .map(|row| row.player)
        .collect();
    assert_eq!(first, [player(2), player(1)], "both drew");
}
