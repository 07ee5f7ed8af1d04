//! Tables as they were: frozen with their week, and again by what changed them later.

use serde_json::{Value, json};

use super::tag;
use crate::harness::Answer;
use crate::stories::results::week::{Week, played};

/// A week of two that is closed, and where everybody reads of it.
struct Closed {
    week: Week,
    public: String,
}

impl Closed {
    fn close() -> Self {
        let week = Week::paired(&["Oskrel", "Corvanel"]);
        let first = week.sides()[0].clone();
        week.report(&first, "first", &played((3, 90), (1, 40)))
            .expect(200);
        let second = week.sides()[1].clone();
        second
            .actor
            .post(&format!("{}/confirm", week.game()), &json!({}))
            .expect(200);
        week.act("weeks/1/close", &json!({})).expect(204);
        let public = week.stage.season.replacen("/api/v1", "/public", 1);
        Self { week, public }
    }

    fn read(&self, of: &str) -> Answer {
        let path = format!("{}/{of}", self.public);
        self.week.stage.server.visitor().get(&path)
    }

    fn tables(&self) -> Vec<(i64, String)> {
        let body = self.read("tables").expect(200);
        let tables = body["tables"].as_array().unwrap().iter();
        let table = |table: &Value| {
            assert_eq!(table["week"], 1);
            (
                table["version"].as_i64().unwrap(),
                table["act"].as_str().unwrap().to_owned(),
            )
        };
        tables.map(table).collect()
    }

    fn at(&self, version: i64) -> Answer {
        self.read(&format!("standings?week=1&version={version}"))
    }
}

#[test]
fn a_closed_weeks_table_is_kept_and_a_ruling_makes_another_beside_it() {
    let closed = Closed::close();
    let tables = closed.tables();
    assert_eq!(tables.len(), 1, "{tables:?}");
    let (frozen, act) = &tables[0];
    assert_eq!(act, "close_week");
    let then = closed.at(*frozen).expect(200);
    let now = closed.read("standings?week=1").expect(200);
    assert_eq!(
        (&then["version"], &then["rows"]),
        (&json!(frozen), &now["rows"])
    );
    closed.at(frozen - 1).refused(404, "not-found");

    let oskrel = &closed.week.players[0];
    let point = json!({ "player": oskrel.id, "week": 1, "amount": 1, "reason": "Swept the hall" });
    closed.week.act("adjustments", &point).expect(200);
    let tables = closed.tables();
    assert_eq!(tables.len(), 2, "{tables:?}");
    assert_eq!(tables[1].1, "adjust_points");
    assert_eq!(
        closed.at(*frozen).expect(200),
        then,
        "what was stays as it was"
    );
    let after = closed.at(tables[1].0).expect(200);
    let now = closed.read("standings?week=1").expect(200);
    assert_eq!(after["rows"], now["rows"]);
    assert_ne!(after["rows"], then["rows"]);

    let ledger = format!("players/{}/ledger?week=1", oskrel.id);
    let lines = |version: i64| {
        let ledger = closed
            .read(&format!("{ledger}&version={version}"))
            .expect(200);
        ledger["lines"].as_array().unwrap().len()
    };
    assert_eq!(lines(tables[1].0), lines(*frozen) + 1);
}

#[test]
fn an_act_that_changes_no_table_freezes_none() {
    let closed = Closed::close();
    let point = json!({
        "player": closed.week.players[0].id, "week": 2, "amount": 1, "reason": "Swept the hall",
    });
    closed.week.act("adjustments", &point).expect(200);
    assert_eq!(closed.tables().len(), 1);
}

#[test]
fn a_frozen_table_is_read_in_every_form_and_never_changes_below_us() {
    let closed = Closed::close();
    let (version, _) = closed.tables()[0];
    let json = closed.at(version).with_status(200);
    assert_eq!(json.header("content-type"), Some("application/json"));
    for (ending, kind) in [(".csv", "text/csv"), (".html", "text/html")] {
        let answer = closed.read(&format!("standings{ending}?week=1&version={version}"));
        let answer = answer.with_status(200);
        assert!(answer.header("content-type").unwrap().starts_with(kind));
        assert!(answer.text().contains("Oskrel"));
        assert_ne!(tag(&answer), tag(&json));
    }
    let change = "DO $$ BEGIN
            UPDATE frozen_tables SET act = 'another';
        EXCEPTION WHEN restrict_violation THEN RETURN; END $$";
    closed.week.stage.database.run(change);
    assert_eq!(closed.tables()[0].1, "close_week");
}
