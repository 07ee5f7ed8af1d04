//! The league's clock, as a test sets it.

use chrono::Duration;

use super::database::Database;

/// In the database of a test the league's clock shows what a table says. A production server has
/// no such table and no way to be told another time.
pub(super) const TAKE_OVER: &str = "
    CREATE TABLE test_clock (now timestamptz NOT NULL);
    INSERT INTO test_clock VALUES ('2026-01-05T12:00:00Z');
    CREATE OR REPLACE FUNCTION league_clock() RETURNS timestamptz
        LANGUAGE sql VOLATILE AS 'SELECT now FROM test_clock';
";

/// The hands of the league's clock. It stands still between two moves, unless told to run.
pub struct Clock<'d>(pub(super) &'d Database);

impl Clock<'_> {
    /// Shows this time (RFC 3339).
    pub fn show(&self, time: &str) {
        self.0.run(&format!("UPDATE test_clock SET now = '{time}'"));
    }

    /// Goes on by itself from now on.
    pub fn run(&self) {
        self.0.run(
            "ALTER TABLE test_clock ADD running_since timestamptz;
            UPDATE test_clock SET running_since = clock_timestamp();
            CREATE OR REPLACE FUNCTION league_clock() RETURNS timestamptz LANGUAGE sql VOLATILE
                AS 'SELECT now + (clock_timestamp() - running_since) FROM test_clock'",
        );
    }

    /// Moves on.
    pub fn advance(&self, by: Duration) {
        let micros = by.num_microseconds().unwrap();
        self.0.run(&format!(
            "UPDATE test_clock SET now = now + interval '{micros} microseconds'"
        ));
    }
}
