//! Slips are read back as they were written, and a table says in JSON what the league says.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use document::results::SlipDocument;
use document::season::scoring::ScoringDocument;
use document::season::tie_breaks::TieBreaksDocument;
use document::table::standings::StandingsDocument;
use league::ids::{GameId, PlayerId};
use league::painting::Painting;
use league::result::{GameScore, Outcome, Slip, Verdict};
use league::scoring::Scoring;
use league::side::PerSide;
use league::standings::{Fixture, GameFact, PlayerFact, SeasonFacts, TieBreaks, table};
use league::week::WeekNo;
use serde_json::{Value, json};
use uuid::Uuid;

fn id(number: u128) -> Uuid {
    Uuid::from_u128(number)
}

fn report(by: &str, first: u32, second: u32) -> Value {
    let total = json!({"first": first, "second": second});
    let items = json!([{
        "item": "ford-marker",
        "counts": {"first": first / 2, "second": null},
        "points": total,
    }]);
    let score = json!({
        "legs": [{"items": items, "total": total}],
        "total": total,
        "verdict": "first",
    });
    json!({
        "by": by,
        "outcome": {"kind": "played", "score": score},
        "at": "2026-03-05T19:40:00Z",
    })
}

#[test]
fn every_state_of_a_slip_is_read_back_as_it_was_written() {
    let ruling = json!({
        "id": id(1),
        "referee": id(2),
        "outcome": {"kind": "no_show", "absent": "second", "notice": "not_given"},
        "reason": "nobody came by half past eight",
        "at": "2026-03-07T10:00:00Z",
    });
    let states = [
        json!({"kind": "awaited"}),
        json!({
            "kind": "reported",
            "report": report("first", 14, 9),
            "confirm_due": "2026-03-07T19:40:00Z",
        }),
        json!({
            "kind": "disputed",
            "report": report("first", 14, 9),
            "by": "second",
            "reason": "the last turn was not played",
            "counter": report("second", 13, 10),
            "at": "2026-03-06T08:00:00Z",
        }),
        json!({
            "kind": "confirmed",
            "report": report("second", 14, 9),
            "how": "by_silence",
            "at": "2026-03-07T19:40:00Z",
        }),
        json!({"kind": "ruled", "ruling": ruling}),
    ];
    for state in states {
        let document: SlipDocument = serde_json::from_value(state.clone()).unwrap();
        let slip = Slip::try_from(document).unwrap();
        assert_eq!(
            serde_json::to_value(SlipDocument::from(&slip)).unwrap(),
            state
        );
    }
}

fn facts() -> SeasonFacts {
    let scoring: ScoringDocument =
        serde_json::from_str(include_str!("../../../demo/scoring.json")).unwrap();
    let tie_breaks: TieBreaksDocument =
        serde_json::from_str(include_str!("../../../demo/tie_breaks.json")).unwrap();
    let total = PerSide::new(14, 9);
    let outcome = Outcome::Played(GameScore {
        legs: Vec::new(),
        total,
        verdict: Verdict::from_totals(total, 0),
    });
    SeasonFacts {
        scoring: Scoring::try_from(scoring).unwrap(),
        painting: Painting::without_bonus(),
        tie_breaks: TieBreaks::try_from(tie_breaks).unwrap(),
        caps: [].into(),
        players: [1, 2]
            .map(|number| PlayerFact {
                player: PlayerId(id(number)),
                joined: WeekNo::FIRST,
                left: None,
            })
            .into(),
        games: vec![GameFact {
            game: GameId(id(7)),
            week: WeekNo::FIRST,
            fixture: Fixture::Game {
                players: PerSide::new(PlayerId(id(1)), PlayerId(id(2))),
                harder: None,
                outcome: Some(outcome),
                ruling: None,
            },
            version: 1,
        }],
        absences: Vec::new(),
        late_lists: Vec::new(),
        painted: Vec::new(),
        adjustments: Vec::new(),
    }
}

#[test]
fn a_row_and_its_lines_say_the_same() {
    let standings = StandingsDocument::from(&table(&facts(), WeekNo::FIRST));
    let first = standings.rows.first().unwrap();
    assert_eq!((first.rank, first.total, first.movement), (1, 8, None));
    assert_eq!(
        serde_json::to_value(&first.sums).unwrap(),
        json!({"game": 7, "attendance": 1})
    );
    assert_eq!(
        serde_json::to_value(first.tie_breaks.get(1)).unwrap(),
        json!({"tie_break": "opponents_score", "value": {"numerator": 4, "denominator": 1}})
    );
    assert_eq!(
        serde_json::to_value(standings.ledger.first()).unwrap(),
        json!({
            "player": id(1),
            "week": 1,
            "kind": "game",
            "amount": 7,
            "reason": {"kind": "won", "own": 14, "other": 9},
            "sentence": "won 14 to 9",
            "source": {"kind": "game", "id": id(7)},
            "version": 1,
        })
    );
}
