//! Tables as they were at every version, and those of closed weeks with what changed them later.

use crate::harness::{Answer, PublicSeason, PublicTable};
use crate::stories::results::week::{FirstWeek, LAST_NIGHT, played};

/// A week of two that is closed, and where everybody reads of it.
struct ClosedWeek {
    week: FirstWeek,
    public: PublicSeason,
}

impl ClosedWeek {
    fn new() -> Self {
        let week = FirstWeek::paired(&["Oskrel", "Corvanel"]);
        let [first, second] = week.sides();
        week.report(first, "first", &played((3, 90), (1, 40)))
            .expect(200);
        week.game().by(second).confirm().expect(200);
        week.week().close().expect(204);
        week.stage.until_reveals_are_published();
        let public = week.season().by(week.stage.visitor()).for_everybody();
        Self { week, public }
    }

    /// Version and act of each table that is kept.
    fn tables(&self) -> Vec<(i64, String)> {
        let tables = self.public.tables().expect(200).tables.into_iter();
        tables
            .map(|table| {
                assert_eq!(table.week, 1);
                (table.version, table.act)
            })
            .collect()
    }

    /// The table as it was at a version.
    fn at(&self, version: i64) -> Answer<PublicTable> {
        self.public.standings_at(1, version)
    }

    /// The table as it is.
    fn now(&self) -> PublicTable {
        self.public.standings_after(1).expect(200)
    }

    fn oskrel(&self) -> &str {
        &self.week.players[0].id
    }

    /// A point more for Oskrel in a week.
    fn give_a_point(&self, week: u8) {
        let season = self.week.season();
        let point = season.adjust(self.oskrel(), week, 1, "Swept the hall");
        point.expect(200);
    }
}

#[test]
fn a_closed_weeks_table_is_kept_and_a_ruling_makes_another_beside_it() {
    let closed = ClosedWeek::new();
    let tables = closed.tables();
    assert_eq!(tables.len(), 1, "{tables:?}");
    let (frozen, act) = &tables[0];
    assert_eq!(act, "close_week");
    let then = closed.at(*frozen).expect(200);
    assert_eq!(then.version, *frozen);
    assert_eq!(then.rows, closed.now().rows);
    let before = closed.at(frozen - 1).expect(200);
    assert_eq!(before.rows, then.rows, "the close itself changes no row");

    closed.give_a_point(1);
    let tables = closed.tables();
    assert_eq!(tables.len(), 2, "{tables:?}");
    assert_eq!(tables[1].1, "adjust_points");
    assert_eq!(
        closed.at(*frozen).expect(200),
        then,
        "what was stays as it was"
    );
    let after = closed.at(tables[1].0).expect(200);
    assert_eq!(after.rows, closed.now().rows);
    assert_ne!(after.rows, then.rows);

    let lines = |version: i64| {
        let query = format!("?week=1&version={version}");
        let ledger = closed.public.ledger(closed.oskrel(), &query);
        ledger.expect(200).lines.len()
    };
    assert_eq!(lines(tables[1].0), lines(*frozen) + 1);
}

#[test]
fn every_version_of_a_table_is_read_again_as_everybody_saw_it() {
    let week = FirstWeek::sealed(&["Oskrel", "Corvanel"]);
    let public = week.season().by(week.stage.visitor()).for_everybody();
    let mut seen = Vec::new();
    let mut look = || seen.push(public.standings().expect(200));
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
    week.game().by(second).confirm().expect(200);
    look();
    let reward = || {
        let points = week.season().adjust(&second.id, 1, 9, "Swept the hall");
        points.expect(200);
    };
    reward();
    look();
    week.week().close().expect(204);
    reward();
    look();

    let totals = |table: &PublicTable| table.rows.iter().map(|row| row.total).sum::<i64>();
    let points: Vec<i64> = seen.iter().map(totals).collect();
    assert!(
        points.is_sorted() && points[0] < points[5] && points[5] < points[6],
        "{points:?}"
    );
    for then in &seen {
        let version = then.version;
        for again in [
            public.standings_of_version(version),
            public.standings_at(1, version),
        ] {
            let again = again.expect(200);
            assert_eq!(again.rows, then.rows, "version {version}");
            assert!(again.version <= version);
        }
    }
}

#[test]
fn a_version_that_never_was_is_refused_with_those_that_are() {
    let closed = ClosedWeek::new();
    let newest = closed.public.standings().expect(200).version;
    let problem = closed.at(newest + 1).refused(404, "unknown-version");
    let oldest = problem.member("oldest").as_i64().unwrap();
    assert_eq!(problem.member("newest"), newest, "{problem}");
    closed.at(oldest).expect(200);
    closed.at(oldest - 1).refused(404, "unknown-version");
    closed.at(newest).expect(200);

    let lines = |version: i64| {
        let query = format!("?week=1&version={version}");
        closed.public.ledger(closed.oskrel(), &query)
    };
    let kept = closed.tables()[0].0;
    lines(kept).expect(200);
    let problem = lines(kept - 1).refused(404, "unknown-version");
    assert_eq!(
        problem.member("oldest"),
        kept,
        "lines are kept from the close on: {problem}"
    );
    closed
        .public
        .standings_at(2, newest)
        .refused(404, "not-found");
}

#[test]
fn an_act_that_changes_no_table_freezes_none() {
    let closed = ClosedWeek::new();
    closed.give_a_point(2);
    assert_eq!(closed.tables().len(), 1);
}

#[test]
fn a_frozen_table_is_read_in_every_form_and_never_changes_below_us() {
    let closed = ClosedWeek::new();
    let (version, _) = closed.tables()[0];
    let json = closed.at(version).with_status(200);
    assert_eq!(json.header("content-type"), Some("application/json"));
    for (ending, kind) in [(".csv", "text/csv"), (".html", "text/html")] {
        let of = format!("standings{ending}?week=1&version={version}");
        let answer = closed.public.read(&of).with_status(200);
        assert!(answer.header("content-type").unwrap().starts_with(kind));
        assert!(answer.text().contains("Oskrel"));
        assert_ne!(answer.etag(), json.etag());
    }
    let change = "DO $$ BEGIN
            UPDATE frozen_tables SET act = 'another';
        EXCEPTION WHEN restrict_violation THEN RETURN; END $$";
    closed.week.stage.database.run(change);
    assert_eq!(closed.tables()[0].1, "close_week");
}
