//! Replication status: whether the database is a replica, and its lag behind the primary.

use std::time::Duration;

use diesel::prelude::*;
use diesel::sql_types::{Bool, Double, Nullable};
use diesel_async::RunQueryDsl;

use crate::{Conn, StoreError};

/// A replica of the database.
#[derive(Clone, Copy, Debug)]
pub struct ReplicaStatus {
    /// Whether it hears from its primary.
    pub connected: bool,
    /// How old what it shows may be: nothing once it has replayed all that it received and hears from
    /// its primary, else the time since the last commit that it replayed. By the clocks of both
    /// machines. `None` before the first commit.
    pub lag: Option<Duration>,
}

#[derive(QueryableByName)]
struct ReplicaStatusColumns {
    #[diesel(sql_type = Bool)]
    in_recovery: bool,
    #[diesel(sql_type = Bool)]
    connected: bool,
    #[diesel(sql_type = Bool)]
    replayed: bool,
    #[diesel(sql_type = Nullable<Double>)]
    seconds: Option<f64>,
}

/// The process that receives is shown to everybody by its number, all else about it to few.
const REPLICA_STATUS: &str = "
    select pg_is_in_recovery() as in_recovery,
        exists (select from pg_stat_wal_receiver where pid is not null) as connected,
        coalesce(pg_last_wal_receive_lsn() = pg_last_wal_replay_lsn(), false) as replayed,
        extract(epoch from clock_timestamp() - pg_last_xact_replay_timestamp())::float8 as seconds";

/// The replica that this database is; nothing of a primary.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn find_replica_status(conn: &mut Conn) -> Result<Option<ReplicaStatus>, StoreError> {
    let row: ReplicaStatusColumns = diesel::sql_query(REPLICA_STATUS).get_result(conn).await?;
    if !row.in_recovery {
        return Ok(None);
    }
    let since = row.seconds.map(|seconds| seconds.max(0.0));
    // Longer than a duration can be is as good as unknown.
    let since = since.and_then(|seconds| Duration::try_from_secs_f64(seconds).ok());
    let lag = match row.connected && row.replayed {
        true => Some(Duration::ZERO),
        false => since,
    };
    Ok(Some(ReplicaStatus {
        connected: row.connected,
        lag,
    }))
}
