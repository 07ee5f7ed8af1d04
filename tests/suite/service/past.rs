//! Tables as they were at every version, and those of closed weeks with what changed them later.

use serde_json::{Value, json};

use super::tag;
use crate::harness::Answer;
use crate::stories::results::week::{LAST_NIGHT, Week, played};

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
        week.stage.until_moments_are_told();
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
    let before = closed.at(frozen - 1).expect(200);
    assert_eq!(
        before["rows"], then["rows"],
        "the close itself changes no row"
    );

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
fn every_version_of_a_table_is_read_again_as_everybody_saw_it() {
    let week = Week::sealed(&["Oskrel", "Corvanel"]);
    let public = week.stage.season.replacen("/api/v1", "/public", 1);
    let read = |of: &str| {
        let path = format!("{public}/{of}");
        week.stage.server.visitor().get(&path)
    };
    let mut seen = Vec::new();
    let mut look = || seen.push(read("standings").expect(200));
    look();
    let round = week.propose();
    look();
    week.publish(&round);
    look();
    week.stage.clock().show(LAST_NIGHT);
    let [first, second] = week.sides();
    week.report(first, "first", &played((3, 90), (1, 40)))
        .expect(200);
    look();
    let confirm = format!("{}/confirm", week.game());
    second.actor.post(&confirm, &json!({})).expect(200);
    look();
    let point = json!({ "player": second.id, "week": 1, "amount": 9, "reason": "Swept the hall" });
    week.act("adjustments", &point).expect(200);
    look();
    week.act("weeks/1/close", &json!({})).expect(204);
    week.act("adjustments", &point).expect(200);
    look();

    let totals = |table: &Value| {
        table["rows"]
            .as_array()
            .unwrap()
            .iter()
            .map(total)
            .sum::<i64>()
    };
    let points: Vec<i64> = seen.iter().map(totals).collect();
    assert!(
        points.is_sorted() && points[0] < points[5] && points[5] < points[6],
        "{points:?}"
    );
    for then in &seen {
        let version = then["version"].as_i64().unwrap();
        for of in ["standings?", "standings?week=1&"] {
            let again = read(&format!("{of}version={version}")).expect(200);
            assert_eq!(again["rows"], then["rows"], "version {version}");
            assert!(again["version"].as_i64().unwrap() <= version);
        }
    }
}

#[test]
fn a_version_that_never_was_is_refused_with_those_that_are() {
    let closed = Closed::close();
    let newest = closed.read("standings").expect(200)["version"]
        .as_i64()
        .unwrap();
    let problem = closed.at(newest + 1).refused(404, "unknown-version");
    let oldest = problem["oldest"].as_i64().unwrap();
    assert_eq!(problem["newest"], newest, "{problem}");
    closed.at(oldest).expect(200);
    closed.at(oldest - 1).refused(404, "unknown-version");
    closed.at(newest).expect(200);

    let oskrel = &closed.week.players[0].id;
    let lines =
        |version: i64| closed.read(&format!("players/{oskrel}/ledger?week=1&version={version}"));
    let kept = closed.tables()[0].0;
    lines(kept).expect(200);
    let problem = lines(kept - 1).refused(404, "unknown-version");
    assert_eq!(
        problem["oldest"], kept,
        "lines are kept from the close on: {problem}"
    );
    closed
        .read(&format!("standings?week=2&version={newest}"))
        .refused(404, "not-found");
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

fn total(row: &Value) -> i64 {
    row["total"].as_i64().unwrap()
}
