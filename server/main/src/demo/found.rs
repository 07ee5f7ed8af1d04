//! What a database holds before the demo is loaded.

use tokio_postgres::Error;

use super::clock::{MARK, connect};

/// What was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Found {
    /// Nothing: load.
    Nothing,
    /// The demo: serve.
    Demo,
    /// A demo whose loading was cut short: begin anew.
    Half,
    /// Somebody else's facts: keep away.
    Others,
}

/// Those that begin with two underscores only tell which migrations were applied.
const TABLES: &str = "select count(*) from information_schema.tables
    where table_schema = 'public' and table_name !~ '^__'";
const OURS: &str = "select to_regclass('public.accounts') is not null
    and to_regprocedure('public.league_clock()') is not null";
const ACCOUNTS: &str = "select count(*) from accounts";
const IS_DEMO: &str = "select exists (select from clubs where slug = 'lamplit-ford')";
const CLOCK: &str = "select pg_get_functiondef('league_clock()'::regprocedure)";

/// Looks, and changes nothing.
///
/// # Errors
/// Those of the database.
pub async fn look(url: &str) -> Result<Found, Error> {
    let client = connect(url).await?;
    let count = async |query| client.query_one(query, &[]).await?.try_get::<_, i64>(0);
    let is = async |query| client.query_one(query, &[]).await?.try_get::<_, bool>(0);
    if count(TABLES).await? == 0 {
        return Ok(Found::Nothing);
    }
    if !is(OURS).await? {
        return Ok(Found::Others);
    }
    let clock: String = client.query_one(CLOCK, &[]).await?.try_get(0)?;
    if clock.contains(MARK) {
        return Ok(Found::Half);
    }
    if count(ACCOUNTS).await? == 0 {
        return Ok(Found::Nothing);
    }
    Ok(if is(IS_DEMO).await? {
        Found::Demo
    } else {
        Found::Others
    })
}
