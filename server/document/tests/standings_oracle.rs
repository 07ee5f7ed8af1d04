//! Standings against an independent computation: `tests/oracles/standings.py` wrote the values.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use std::collections::BTreeMap;

use document::season::scoring::ScoringDocument;
use document::season::tie_breaks::{
    BasisDocument, TieBreakDocument, TieBreaksDocument, UnplayedRoundsDocument,
};
use league::ids::{GameId, PlayerId};
use league::painting::Painting;
use league::result::{AbsenceNotice, GameScore, Outcome, Verdict};
use league::scoring::Scoring;
use league::side::{PerSide, Side};
use league::standings::{
    Exact, Fixture, GameFact, PlayerFact, SeasonFacts, TieBreaks, WilsonInterval, kendall_tau_b,
    table,
};
use league::week::WeekNo;
use serde::Deserialize;
use uuid::Uuid;

#[derive(Deserialize)]
struct Computed {
    seasons: Vec<Season>,
    intervals: Vec<ComputedInterval>,
    taus: Vec<Tau>,
}

#[derive(Deserialize)]
struct Season {
    players: u128,
    rounds: Vec<Round>,
    unplayed: UnplayedRoundsDocument,
    values: BTreeMap<TieBreakDocument, Vec<Option<String>>>,
}

#[derive(Deserialize)]
struct Round {
    games: Vec<Game>,
    byes: Vec<u128>,
}

#[derive(Deserialize)]
struct Game {
    first: u128,
    second: u128,
    ending: String,
}

#[derive(Deserialize)]
struct ComputedInterval {
    successes: u32,
    trials: u32,
    low: f64,
    high: f64,
}

#[derive(Deserialize)]
struct Tau {
    ranks: Vec<(u32, u32)>,
    tau: f64,
}

fn computed() -> Computed {
    serde_json::from_str(include_str!("../../../tests/oracles/standings.json")).unwrap()
}

fn player(number: u128) -> PlayerId {
    PlayerId(Uuid::from_u128(number))
}

fn scoring() -> Scoring {
    let text = r#"{
        "games": {"kind": "win_draw_loss", "win": 2, "draw": 1, "loss": 0},
        "concession": {"winner_at_least": 2, "loser_at_most": 0},
        "no_show": {"present": 2, "absent_with_notice": 0, "absent_without_notice": 0},
        "bye": {"kind": "win"},
        "late_joiner": {"kind": "nothing"}
    }"#;
    let document: ScoringDocument = serde_json::from_str(text).unwrap();
    Scoring::try_from(document).unwrap()
}

fn outcome(ending: &str) -> Outcome {
    let played = |first, second| {
        let total = PerSide::new(first, second);
        let verdict = Verdict::from_totals(total, 0);
        let legs = Vec::new();
        Outcome::Played(GameScore {
            legs,
            total,
            verdict,
        })
    };
    match ending {
        "first" => played(1, 0),
        "drawn" => played(0, 0),
        "second" => played(0, 1),
        _ => Outcome::NoShow {
            absent: Side::Second,
            notice: AbsenceNotice::Given,
        },
    }
}

fn facts(season: &Season) -> SeasonFacts {
    // Direct encounter looks at who is equal so far, so it is asked first.
    let mut order: Vec<_> = season.values.keys().copied().collect();
    order.sort_by_key(|tie_break| *tie_break != TieBreakDocument::DirectEncounter);
    let tie_breaks = TieBreaksDocument {
        basis: BasisDocument::StandardPoints,
        unplayed: season.unplayed,
        order,
    };
    let mut games = Vec::new();
    for (round, number) in season.rounds.iter().zip(1..) {
        let played = round.games.iter().map(|game| Fixture::Game {
            players: PerSide::new(player(game.first), player(game.second)),
            harder: None,
            outcome: Some(outcome(&game.ending)),
            ruling: None,
        });
        let byes = round.byes.iter().map(|bye| Fixture::Bye(player(*bye)));
        for fixture in played.chain(byes) {
            games.push(GameFact {
                game: GameId(Uuid::from_u128(games.len() as u128)),
                week: WeekNo::new(number).unwrap(),
                fixture,
                version: 1,
            });
        }
    }
    SeasonFacts {
        scoring: scoring(),
        painting: Painting::without_bonus(),
        tie_breaks: TieBreaks::try_from(tie_breaks).unwrap(),
        caps: BTreeMap::new(),
        players: (0..season.players)
            .map(|number| PlayerFact {
                player: player(number),
                joined: WeekNo::FIRST,
                left: None,
            })
            .collect(),
        games,
        absences: Vec::new(),
        late_lists: Vec::new(),
        painted: Vec::new(),
        adjustments: Vec::new(),
    }
}

#[test]
fn tie_breaks_agree_with_exact_fractions_in_python() {
    let seasons = computed().seasons;
    assert!(seasons.len() >= 60);
    for (at, season) in seasons.iter().enumerate() {
        let last = WeekNo::new(u8::try_from(season.rounds.len()).unwrap()).unwrap();
        let standings = table(&facts(season), last);
        for (&tie_break, values) in &season.values {
            for (number, value) in (0..).zip(values) {
                let row = standings.row_of(player(number)).unwrap();
                let found = row
                    .tie_breaks
                    .iter()
                    .find(|v| v.tie_break == tie_break.into());
                let expected = value.as_ref().map(|text| text.parse::<Exact>().unwrap());
                assert_eq!(
                    found.unwrap().value,
                    expected,
                    "{tie_break:?} of player {number} in season {at}"
                );
            }
        }
    }
}

#[test]
fn intervals_agree_with_statsmodels() {
    for expected in computed().intervals {
        let found = WilsonInterval::new(expected.successes, expected.trials).unwrap();
        assert!((found.low - expected.low).abs() < 1e-12, "{found:?}");
        assert!((found.high - expected.high).abs() < 1e-12, "{found:?}");
    }
}

#[test]
fn rank_agreement_agrees_with_scipy() {
    let taus = computed().taus;
    assert!(taus.len() >= 8);
    for expected in taus {
        let found = kendall_tau_b(&expected.ranks).unwrap();
        assert!(
            (found - expected.tau).abs() < 1e-12,
            "{found} {}",
            expected.tau
        );
    }
    assert_eq!(
        kendall_tau_b(&[(1, 1), (1, 2)]),
        None,
        "one side ranks all the same"
    );
}
