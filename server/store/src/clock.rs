//! The league's one clock.

use diesel::dsl::sql;
use diesel::select;
use diesel::sql_types::Timestamptz;
use diesel_async::RunQueryDsl;
use league::time::Instant;

use crate::{Conn, Fault};

/// The instant of this very call. To judge a deadline, ask **after** the lock on its week is held.
///
/// # Errors
/// [`Fault`] of the database.
pub async fn now(conn: &mut Conn) -> Result<Instant, Fault> {
    Ok(select(sql::<Timestamptz>("league_clock()"))
        .get_result(conn)
        .await?)
}
