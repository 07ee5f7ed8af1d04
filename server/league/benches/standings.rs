//! Recomputing a whole season after one result: table, movement, tie-breaks and ledger.
//!
//! Goals: under 200 microseconds for 64 players and 8 weeks, under 10 ms for 1,000 players and
//! 20 weeks, growing no faster than games times log games. With the server's allocator: glibc's gives
//! tables of 500 players back to the system and asks for them again each time, which takes as long as
//! the computation.

#![allow(clippy::unwrap_used, reason = "a benchmark fails by panicking")]

use std::collections::BTreeMap;

use league::ids::{GameId, PlayerId};
use league::ledger::LineSource;
use league::painting::{
    Checker, FinishedMeasure, PaintCounting, PaintedBonus, PaintedWeek, Painting, PaintingTerms,
    Stage, Tier,
};
use league::points::{LeaguePoints, Points};
use league::result::{GameScore, Outcome, Verdict};
use league::scoring::{
    Band, Bye, Concession, GamePoints, LateJoiner, LateStep, MarginUnit, NoShow, Scoring,
    ScoringTerms,
};
use league::share::Share;
use league::side::{PerSide, Side};
use league::standings::{
    Basis, Fixture, GameFact, LateList, PlayerFact, SeasonFacts, TieBreak, TieBreaks,
    TieBreaksTerms, UnplayedRounds, table,
};
use league::week::WeekNo;
use uuid::Uuid;

#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() {
    divan::main();
}

#[divan::bench(args = [(64, 8), (250, 20), (500, 20), (1000, 20)])]
fn recompute(bencher: divan::Bencher<'_, '_>, (players, weeks): (u32, u8)) {
    let facts = season(players, weeks);
    let last = WeekNo::new(weeks).unwrap();
    bencher
        .counter(divan::counter::ItemsCount::new(facts.games.len()))
        .bench(|| table(divan::black_box(&facts), last));
}

/// A season in which everyone plays every week, against somebody else each time, with every bonus
/// and every tie-break in use.
fn season(players: u32, weeks: u8) -> SeasonFacts {
    let all_weeks: Vec<WeekNo> = (1..=weeks).filter_map(WeekNo::new).collect();
    SeasonFacts {
        scoring: Scoring::build(scoring(weeks)).unwrap(),
        painting: Painting::build(painting()).unwrap(),
        tie_breaks: TieBreaks::build(tie_breaks()).unwrap(),
        caps: all_weeks
            .iter()
            .map(|&week| (week, Points::new(600)))
            .collect(),
        players: (0..players)
            .map(|number| PlayerFact {
                player: player(number),
                joined: WeekNo::FIRST,
                left: None,
            })
            .collect(),
        games: all_weeks
            .iter()
            .flat_map(|&week| round(players, week))
            .collect(),
        absences: Vec::new(),
        late_lists: all_weeks
            .iter()
            .map(|&week| LateList {
                player: player(u32::from(week.number()) % players),
                week,
                seconds: 7_200,
            })
            .collect(),
        painted: all_weeks
            .iter()
            .flat_map(|&week| painted(players, week))
            .collect(),
        adjustments: Vec::new(),
    }
}

/// Identities as scattered as real ones.
fn player(number: u32) -> PlayerId {
    PlayerId(Uuid::from_u128(
        u128::from(number).wrapping_mul(0x9E37_79B9_7F4A_7C15_F39C_C060),
    ))
}

fn round(players: u32, week: WeekNo) -> Vec<GameFact> {
    let shift = u32::from(week.number());
    let half = players / 2;
    let games = (0..half).map(|table| {
        let (first, second) = (table, half + (table + shift) % half);
        let score = |number: u32| (number * 7 + shift * 13 + number * shift) % 21;
        let total = PerSide::new(score(first), score(second));
        GameFact {
            game: GameId(Uuid::from_u128(u128::from(shift * players + table))),
            week,
            fixture: Fixture::Game {
                players: PerSide::new(player(first), player(second)),
                harder: Some(if table.is_multiple_of(2) {
                    Side::First
                } else {
                    Side::Second
                }),
                outcome: Some(Outcome::Played(GameScore {
                    legs: Vec::new(),
                    total,
                    verdict: Verdict::from_totals(total, 0),
                })),
                ruling: None,
            },
            version: 1,
        }
    });
    games.collect()
}

fn painted(players: u32, week: WeekNo) -> Vec<PaintedWeek> {
    let weeks = (0..players).map(|number| PaintedWeek {
        player: player(number),
        week,
        share: Share::new(u64::from(number % 100 + 1), 101).unwrap(),
        new_units: number % 3,
        new_points: Points::new(60),
        source: LineSource::Rule,
        version: 1,
    });
    weeks.collect()
}

fn scoring(weeks: u8) -> ScoringTerms {
    let points = LeaguePoints::new;
    let band = |from, to, winner, loser| Band {
        from,
        to,
        winner: points(winner),
        loser: points(loser),
    };
    ScoringTerms {
        games: GamePoints::Bands {
            unit: MarginUnit::GamePoints,
            sum: Some(points(10)),
            bands: vec![
                band(0, Some(1), 5, 5),
                band(2, Some(4), 6, 4),
                band(5, Some(8), 7, 3),
                band(9, Some(13), 8, 2),
                band(14, None, 9, 1),
            ],
        },
        concession: Concession {
            winner_at_least: points(8),
            loser_at_most: points(2),
        },
        no_show: NoShow {
            present: points(7),
            absent_with_notice: points(2),
            absent_without_notice: points(0),
        },
        double_loss: points(0),
        bye: Bye::Fixed(points(7)),
        late_list: vec![LateStep {
            from_minutes: 60,
            penalty: points(1),
        }],
        attendance: points(1),
        painting_cap: Some(Share::percent(25)),
        bonus_cap: Some(Share::percent(30)),
        best_weeks: Some(weeks - 1),
        late_joiner: LateJoiner::MedianLess(points(1)),
        weights: BTreeMap::new(),
    }
}

fn painting() -> PaintingTerms {
    let tier = |percent, points| Tier {
        from: Share::percent(percent),
        points: LeaguePoints::new(points),
    };
    PaintingTerms {
        painted_from: Stage::Finished,
        counting: PaintCounting::ByModel,
        bonuses: vec![
            PaintedBonus::Tiers(vec![tier(50, 1), tier(100, 2)]),
            PaintedBonus::NewlyFinished {
                counted: FinishedMeasure::Units,
                each: LeaguePoints::new(1),
                most: LeaguePoints::new(1),
            },
        ],
        checked_by: vec![Checker::Opponent],
    }
}

fn tie_breaks() -> TieBreaksTerms {
    TieBreaksTerms {
        basis: Basis::Total,
        unplayed: UnplayedRounds::OwnScore,
        order: vec![
            TieBreak::DirectEncounter,
            TieBreak::OpponentsScore,
            TieBreak::OpponentsScoreCut,
            TieBreak::SonnebornBerger,
            TieBreak::Wins,
            TieBreak::WinsInHarderRole,
            TieBreak::ScoreMargin,
            TieBreak::PaintingPoints,
            TieBreak::PaintedShare,
            TieBreak::FewestByes,
        ],
    }
}
