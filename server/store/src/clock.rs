//! The clock of the league: an SQL function, so that all processes share it and tests can move it.

use diesel::{define_sql_function, select};
use diesel_async::RunQueryDsl;
use league::time::Instant;

use crate::{Conn, StoreError};

define_sql_function! {
    /// A function by this name rather than text: the database prepares it once, and every request asks.
    fn league_clock() -> Timestamptz;
}

/// The instant of this very call. To judge a deadline, ask **after** the lock on its week is held.
///
/// # Errors
/// [`StoreError`] of the database.
pub async fn now(mut conn: &Conn) -> Result<Instant, StoreError> {
    Ok(select(league_clock()).get_result(&mut conn).await?)
}
