//! What a database holds before the demo is loaded.

use super::held_clock::MARK;
use crate::cli::CommandError;

/// What a database holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DatabaseContents {
    /// Nothing: the demo can be loaded.
    Nothing,
    Demo,
    /// A demo whose loading was cut short: start over.
    PartOfDemo,
    /// Something else: not to be touched.
    Other,
}

/// Those that begin with two underscores only tell which migrations were applied.
const TABLES_PER_NIGHT: &str = "select count(*) from information_schema.tables
    where table_schema = 'public' and table_name !~ '^__'";
const OURS: &str = "select to_regclass('public.accounts') is not null
    and to_regprocedure('public.league_clock()') is not null";
const ACCOUNTS: &str = "select count(*) from accounts";
const IS_DEMO: &str = "select exists (select from clubs where slug = 'lamplit-ford')";
const CLOCK: &str = "select pg_get_functiondef('league_clock()'::regprocedure)";

/// Finds out, and changes nothing.
///
/// # Errors
/// Those of the database.
pub async fn inspect(url: &str) -> Result<DatabaseContents, CommandError> {
    let client = store::connect_client(url).await?;
    let count = async |query| client.query_one(query, &[]).await?.try_get::<_, i64>(0);
    let is = async |query| client.query_one(query, &[]).await?.try_get::<_, bool>(0);
    if count(TABLES_PER_NIGHT).await? == 0 {
        return Ok(DatabaseContents::Nothing);
    }
    if !is(OURS).await? {
        return Ok(DatabaseContents::Other);
    }
    let clock: String = client.query_one(CLOCK, &[]).await?.try_get(0)?;
    if clock.contains(MARK) {
        return Ok(DatabaseContents::PartOfDemo);
    }
    if count(ACCOUNTS).await? == 0 {
        return Ok(DatabaseContents::Nothing);
    }
    Ok(if is(IS_DEMO).await? {
        DatabaseContents::Demo
    } else {
        DatabaseContents::Other
    })
}
