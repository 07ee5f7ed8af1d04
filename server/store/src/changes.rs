//! Notices of the database (`LISTEN`, `NOTIFY`): how other processes learn of a season's new version.

use std::pin::pin;
use std::time::Duration;

use diesel::prelude::*;
use diesel::sql_types::{Double, Text};
use diesel::{define_sql_function, select};
use diesel_async::pooled_connection::deadpool::Object;
use diesel_async::{AsyncPgConnection, RunQueryDsl, SimpleAsyncConnection};
use futures_util::StreamExt;
use league::keys::SeasonKey;
use scopeguard::ScopeGuard;
use tokio::time::timeout;
use uuid::Uuid;

use crate::keys::season_from_pk;
use crate::schema::seasons;
use crate::{Conn, Store, StoreError};

/// How long a silent connection is trusted before a statement checks that it is still open.
const KEEP_ALIVE_INTERVAL: Duration = Duration::from_secs(1);

/// A season has this version.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Change {
    pub season: SeasonKey,
    pub version: i64,
}

/// A change as the database notifies of it: `club season version process`.
struct Notice {
    change: Change,
    process: ProcessId,
}

impl Notice {
    fn read(payload: &str) -> Option<Self> {
        let mut words = payload.split(' ');
        Some(Self {
            change: Change {
                season: SeasonKey {
                    club: words.next()?.parse().ok()?,
                    season: words.next()?.parse().ok()?,
                },
                version: words.next()?.parse().ok()?,
            },
            // Servers of an older version do not say.
            process: ProcessId(words.next().map_or(Ok(Uuid::nil()), str::parse).ok()?),
        })
    }

    fn write(&self) -> String {
        let Change { season, version } = self.change;
        let SeasonKey { club, season } = season;
        format!("{club} {season} {version} {}", self.process.0)
    }
}

define_sql_function! {
    /// Answers nothing; the type stands for that.
    fn pg_notify(channel: Text, payload: Text) -> Text;
}

/// Which process made a change: it hears no notice of its own changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ProcessId(Uuid);

impl ProcessId {
    pub(crate) fn new() -> Self {
        Self(Uuid::new_v4())
    }
}

/// Notifies every other process that listens, once the running transaction commits.
///
/// # Errors
/// A [`StoreError`] of the database.
pub(crate) async fn notify(
    mut conn: &Conn,
    change: Change,
    process: ProcessId,
) -> Result<(), StoreError> {
    let notice = Notice { change, process }.write();
    select(pg_notify("season_changed", notice))
        .execute(&mut conn)
        .await?;
    Ok(())
}

/// The notices of the database, on a connection of their own.
pub struct Listener {
    conn: AsyncPgConnection,
    process: ProcessId,
}

impl Store {
    /// Listens to what every other process commits, from now on: whoever wrote here knows it already.
    ///
    /// # Errors
    /// [`StoreError::Internal`] from a replica, which sends no notices; an error of the connection.
    pub async fn listen(&self) -> Result<Listener, StoreError> {
        let mut conn = Object::take(ScopeGuard::into_inner(self.acquire().await?));
        conn.batch_execute("listen season_changed").await?;
        Ok(Listener {
            conn,
            process: self.process,
        })
    }
}

impl Listener {
    /// The next notice.
    ///
    /// # Errors
    /// The connection broke; also when nothing but a look at it could tell.
    pub async fn next(&mut self) -> Result<Change, StoreError> {
        loop {
            let heard = timeout(
                KEEP_ALIVE_INTERVAL,
                pin!(self.conn.notifications_stream()).next(),
            )
            .await;
            match heard {
                Ok(Some(notice)) => {
                    if let Some(notice) = Notice::read(&notice?.payload)
                        && notice.process != self.process
                    {
                        return Ok(notice.change);
                    }
                }
                Ok(None) => return Err(StoreError::Unavailable("no more notices".to_owned())),
                Err(_) => self.conn.batch_execute("select 1").await?,
            }
        }
    }
}

#[derive(QueryableByName)]
struct BacklogColumns {
    #[diesel(sql_type = Double)]
    share: f64,
}

const BACKLOG: &str = "select case when pg_is_in_recovery() then 0
    else pg_notification_queue_usage() end as share";

/// How full the queue of notices is that some listener has not heard yet, from 0 to 1.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn find_backlog(conn: &mut Conn) -> Result<f64, StoreError> {
    let row: BacklogColumns = diesel::sql_query(BACKLOG).get_result(conn).await?;
    Ok(row.share)
}

/// The versions of those of these seasons that everybody may see.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list_public(conn: &mut Conn, wanted: &[SeasonKey]) -> Result<Vec<Change>, StoreError> {
    let clubs = wanted.iter().map(|key| key.club.0);
    let ids = wanted.iter().map(|key| key.season.0);
    let rows: Vec<(Uuid, Uuid, i64)> = seasons::table
        .filter(seasons::club_id.eq_any(clubs))
        .filter(seasons::season_id.eq_any(ids))
        .filter(seasons::visibility.eq("public"))
        .filter(seasons::state.ne("draft"))
        .select((seasons::club_id, seasons::season_id, seasons::version))
        .load(conn)
        .await?;
    let change = |(club, season, version)| Change {
        season: season_from_pk((club, season)),
        version,
    };
    Ok(rows.into_iter().map(change).collect())
}
