//! What holds for every season whatsoever.

use std::collections::BTreeMap;

use proptest::prelude::*;
use proptest::sample::select;
use uuid::Uuid;

use crate::ids::RulingId;
use crate::ledger::{LineKind, LineSource};
use crate::name::Text;
use crate::painting::{
    Checker, PaintCounting, PaintedBonus, PaintedWeek, Painting, PaintingTerms, Stage, Tier,
};
use crate::points::{LeaguePoints, Points};
use crate::result::Outcome;
use crate::scoring::{Bye, LateJoiner, LateStep, ScoringTerms};
use crate::share::Share;
use crate::side::Side;
use crate::standings::{
    Adjustment, Basis, Exact, LateList, SeasonFacts, TieBreak, TieBreaks, TieBreaksTerms,
    UnplayedRounds, table,
};

use super::seasons::{no_show, plain_scoring, played, player, points, season, week};

const PLAYERS: u128 = 7;
const WEEKS: u8 = 5;

fn outcome() -> impl Strategy<Value = Option<Outcome>> {
    prop_oneof![
        6 => (0..20_u32, 0..20_u32).prop_map(|(a, b)| Some(played(a, b))),
        1 => select(vec![Side::First, Side::Second]).prop_map(|side| Some(no_show(side))),
        1 => select(vec![Some(Outcome::DoubleLoss), Some(Outcome::Void), None]),
    ]
}

fn scoring() -> impl Strategy<Value = ScoringTerms> {
    let bye = select(vec![
        Bye::Win,
        Bye::Fixed(points(1)),
        Bye::OwnAverage { floor: points(1) },
    ]);
    let joiner = select(vec![
        LateJoiner::Nothing,
        LateJoiner::Fixed(points(2)),
        LateJoiner::MedianLess(points(1)),
    ]);
    let caps = (prop::option::of(1..60_u32), prop::option::of(1..60_u32));
    (
        bye,
        joiner,
        caps,
        prop::option::of(1..6_u8),
        0..3_i32,
        1..4_u8,
    )
        .prop_map(
            |(bye, late_joiner, caps, best_weeks, attendance, weight)| ScoringTerms {
                bye,
                late_joiner,
                painting_cap: caps.0.map(Share::percent),
                bonus_cap: caps.1.map(Share::percent),
                best_weeks,
                attendance: points(attendance),
                late_list: vec![LateStep {
                    from_minutes: 60,
                    penalty: points(1),
                }],
                weights: BTreeMap::from([(week(WEEKS), weight)]),
                ..plain_scoring()
            },
        )
}

fn tie_breaks() -> impl Strategy<Value = TieBreaks> {
    let every = vec![
        TieBreak::OpponentsScore,
        TieBreak::OpponentsScoreCut,
        TieBreak::OpponentsScoreMedian,
        TieBreak::SonnebornBerger,
        TieBreak::DirectEncounter,
        TieBreak::Wins,
        TieBreak::WinsInHarderRole,
        TieBreak::ScoreMargin,
        TieBreak::AdjustedMargin,
        TieBreak::PaintingPoints,
        TieBreak::PaintedShare,
        TieBreak::FewestByes,
        TieBreak::FewestLateLists,
    ];
    let basis = select(vec![Basis::StandardPoints, Basis::GamePoints, Basis::Total]);
    let unplayed = select(vec![
        UnplayedRounds::LeftOut,
        UnplayedRounds::VirtualOpponent,
        UnplayedRounds::OwnScore,
    ]);
    (Just(every).prop_shuffle(), 0..13_usize, basis, unplayed).prop_map(
        |(mut order, length, basis, unplayed)| {
            order.truncate(length);
            TieBreaks::build(TieBreaksTerms {
                basis,
                unplayed,
                order,
            })
            .unwrap()
        },
    )
}

fn painted(week_number: u8, part: u64, new_units: u32, of: u128) -> PaintedWeek {
    PaintedWeek {
        player: player(of),
        week: week(week_number),
        share: Share::new(part, 12).unwrap(),
        new_units,
        new_points: Points::new(60),
        source: LineSource::Rule,
        version: 1,
    }
}

fn painting() -> Painting {
    let tier = |percent, amount| Tier {
        from: Share::percent(percent),
        points: points(amount),
    };
    Painting::build(PaintingTerms {
        painted_from: Stage::Finished,
        counting: PaintCounting::ByModel,
        bonuses: vec![PaintedBonus::Tiers(vec![tier(50, 1), tier(100, 2)])],
        checked_by: vec![Checker::Opponent],
    })
    .unwrap()
}

fn seasons() -> impl Strategy<Value = SeasonFacts> {
    let round = (
        Just((1..=PLAYERS).collect::<Vec<_>>()).prop_shuffle(),
        prop::array::uniform3(outcome()),
    );
    let rounds = prop::collection::vec(round, usize::from(WEEKS));
    let joined = prop::collection::vec(1..=WEEKS, usize::try_from(PLAYERS).unwrap());
    let shares = prop::collection::vec((0..=12_u64, 0..3_u32), 8);
    (scoring(), tie_breaks(), rounds, joined, shares, -3..3_i32).prop_map(
        |(scoring, tie_breaks, rounds, joined, shares, ruled)| {
            let mut facts = season(PLAYERS, scoring);
            facts.tie_breaks = tie_breaks;
            facts.painting = painting();
            for (number, (order, outcomes)) in (1..).zip(rounds) {
                for (pair, outcome) in order
                    .chunks(2)
                    .zip(outcomes.into_iter().map(Some).chain([None]))
                {
                    facts = match (pair, outcome) {
                        ([a, ..], None) if number % 2 == 0 => facts.with_absence(number, *a),
                        ([a, b], Some(outcome)) => facts.with_game(number, *a, *b, outcome),
                        ([a, ..], _) => facts.with_bye(number, *a),
                        ([], _) => facts,
                    };
                }
            }
            for (fact, joined) in facts.players.iter_mut().zip(joined) {
                fact.joined = week(joined.saturating_sub(2).max(1));
            }
            for (at, (part, new_units)) in (0..).zip(shares) {
                let (number, of) = (at % WEEKS + 1, u128::from(at) % PLAYERS + 1);
                facts.painted.push(painted(number, part, new_units, of));
            }
            facts.late_lists.push(LateList {
                player: player(2),
                week: week(2),
                seconds: 7_200,
            });
            facts.adjustments.push(Adjustment {
                ruling: RulingId(Uuid::from_u128(1)),
                player: player(3),
                week: week(3),
                amount: points(ruled),
                reason: Text::new("terrain brought for the whole hall").unwrap(),
                version: 1,
            });
            facts
        },
    )
}

proptest! {
    #[test]
    fn every_row_is_the_sum_of_its_lines(facts in seasons(), number in 1..=WEEKS) {
        let standings = table(&facts, week(number));
        for row in &standings.rows {
            let lines: Vec<_> = standings.lines_of(row.player).collect();
            prop_assert_eq!(row.total, lines.iter().map(|line| line.amount).sum());
            prop_assert_eq!(row.sums.total(), row.total);
            for kind in LineKind::ALL {
                let of_kind = lines.iter().filter(|line| line.kind == kind);
                prop_assert_eq!(row.sums.sum_of(kind), of_kind.map(|line| line.amount).sum());
            }
            let counted = row.weeks.iter().filter(|week| week.counts);
            prop_assert_eq!(row.total, counted.map(|week| week.points).sum());
        }
        let rows: usize = standings.rows.iter().map(|row| standings.lines_of(row.player).count()).sum();
        prop_assert_eq!(rows, standings.ledger.len());
    }

    #[test]
    fn bonuses_of_a_week_never_exceed_their_cap(facts in seasons()) {
        let standings = table(&facts, week(WEEKS));
        let Some(share) = facts.scoring.terms().bonus_cap else {
            return Ok(());
        };
        let limit = facts.scoring.cap_in_points(share);
        let bonus = |kind| matches!(kind, LineKind::Attendance | LineKind::Painting | LineKind::BonusCap);
        for row in &standings.rows {
            for number in 1..=WEEKS {
                let lines = standings.lines_of(row.player);
                let lines = lines.filter(|line| line.week == week(number) && bonus(line.kind));
                let sum: LeaguePoints = lines.map(|line| line.amount).sum();
                prop_assert!(sum <= limit, "{sum} above {limit}");
            }
        }
    }

    #[test]
    fn the_order_in_which_facts_are_told_changes_nothing(facts in seasons()) {
        let mut backwards = facts.clone();
        backwards.games.reverse();
        backwards.players.reverse();
        backwards.painted.reverse();
        prop_assert_eq!(table(&facts, week(WEEKS)), table(&backwards, week(WEEKS)));
    }

    #[test]
    fn ranks_follow_totals_and_tie_breaks_and_are_shared_only_when_all_are_equal(facts in seasons()) {
        let rows = table(&facts, week(WEEKS)).rows;
        for (position, row) in (1_u32..).zip(&rows) {
            prop_assert!(row.rank <= position);
            prop_assert_eq!(row.shared, rows.iter().filter(|other| other.rank == row.rank).count() > 1);
        }
        for (above, below) in rows.iter().zip(rows.iter().skip(1)) {
            prop_assert!(above.total >= below.total);
            if above.rank == below.rank {
                prop_assert_eq!(above.total, below.total);
                prop_assert_eq!(&above.tie_breaks, &below.tie_breaks);
                prop_assert_eq!(below.decided_by, None);
            } else {
                prop_assert_eq!(above.total == below.total, below.decided_by.is_some());
            }
        }
    }

    #[test]
    fn later_weeks_never_change_the_table_of_an_earlier_one(facts in seasons(), number in 1..WEEKS) {
        let mut cut = facts.clone();
        cut.games.retain(|game| game.week <= week(number));
        cut.painted.retain(|painted| painted.week <= week(number));
        cut.absences.retain(|absence| absence.week <= week(number));
        cut.late_lists.retain(|late| late.week <= week(number));
        cut.adjustments.retain(|ruled| ruled.week <= week(number));
        prop_assert_eq!(table(&facts, week(number)), table(&cut, week(number)));
    }

    /// In fully played rounds the opponents' sums add up to rounds times all scores (each score is
    /// met once a round).
    #[test]
    fn opponents_sums_of_full_rounds_add_up_to_rounds_times_scores(
        rounds in prop::collection::vec(
            (Just([1_u128, 2, 3, 4, 5, 6]).prop_shuffle(), prop::array::uniform3(0..3_u32)),
            1..5,
        )
    ) {
        let held = i64::try_from(rounds.len()).unwrap();
        let mut facts = season(6, plain_scoring());
        for (number, (order, results)) in (1..).zip(rounds) {
            for (pair, result) in order.chunks(2).zip(results) {
                facts = facts.with_game(number, pair[0], pair[1], played(result, 1));
            }
        }
        let facts = facts.ordered_by(UnplayedRounds::LeftOut, &[TieBreak::OpponentsScore]);
        let rows = table(&facts, week(u8::try_from(held).unwrap())).rows;
        let sums = rows.iter().filter_map(|row| row.tie_breaks.first()?.value);
        let sum: Exact = sums.sum();
        prop_assert_eq!(sum, Exact::from_integer(held * 3 * held));
    }
}
