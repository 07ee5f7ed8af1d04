//! Who learns of a season's new version, and how: this process before the writer is answered, other
//! processes by a notice of the database.

use std::cell::RefCell;
use std::fmt;
use std::pin::pin;
use std::sync::{Arc, OnceLock};
use std::time::Duration;

use diesel::prelude::*;
use diesel::sql_types::Double;
use diesel_async::pooled_connection::deadpool::Object;
use diesel_async::{AsyncPgConnection, RunQueryDsl, SimpleAsyncConnection};
use futures_util::StreamExt;
use futures_util::future::BoxFuture;
use league::ids::{ClubId, SeasonId};
use scopeguard::ScopeGuard;
use tokio::task::LocalKey;
use tokio::time::timeout;
use uuid::Uuid;

use crate::schema::seasons;
use crate::{Conn, Fault, Store};

/// How long a silent connection is trusted before it is asked whether it still lives.
const SILENCE: Duration = Duration::from_secs(1);

/// A season has this version.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Change {
    /// Whose.
    pub club: ClubId,
    /// Which.
    pub season: SeasonId,
    /// Its version.
    pub version: i64,
}

impl Change {
    /// As the notice says it: `club season version`.
    fn read(notice: &str) -> Option<Self> {
        let mut words = notice.split(' ');
        Some(Self {
            club: ClubId(words.next()?.parse().ok()?),
            season: SeasonId(words.next()?.parse().ok()?),
            version: words.next()?.parse().ok()?,
        })
    }
}

tokio::task_local! {
    /// What the running transaction has changed.
    static NOTED: RefCell<Vec<Change>>;
    /// What the running request has committed.
    static COMMITTED: RefCell<Vec<Change>>;
}

/// Remembers a change until its transaction is over.
pub(crate) fn note(change: Change) {
    // Outside of a write there is nobody to tell: then only the notice remains.
    let _ = NOTED.try_with(|noted| noted.borrow_mut().push(change));
}

/// Runs a transaction and says what it noted.
pub(crate) async fn noting<R>(transaction: impl Future<Output = R>) -> (R, Vec<Change>) {
    collecting(&NOTED, transaction).await
}

/// Remembers what was committed until its request is over.
pub(crate) fn commit(changes: &[Change]) {
    // The clock's own acts are no requests.
    let _ = COMMITTED.try_with(|committed| committed.borrow_mut().extend(changes));
}

/// Runs a request and says what it committed.
pub async fn committing<R>(request: impl Future<Output = R>) -> (R, Vec<Change>) {
    collecting(&COMMITTED, request).await
}

async fn collecting<R>(
    into: &'static LocalKey<RefCell<Vec<Change>>>,
    act: impl Future<Output = R>,
) -> (R, Vec<Change>) {
    let run = async {
        let answer = act.await;
        (answer, into.with(RefCell::take))
    };
    into.scope(RefCell::default(), run).await
}

/// Does what a change asks for.
pub type Told = Box<dyn Fn(Change) -> BoxFuture<'static, ()> + Send + Sync>;

/// The one listener of this process, shared by all clones of a store.
#[derive(Clone, Default)]
pub(crate) struct Ear(Arc<OnceLock<Told>>);

impl Ear {
    pub async fn tell(&self, changes: Vec<Change>) {
        if let Some(told) = self.0.get() {
            for change in changes {
                told(change).await;
            }
        }
    }
}

impl fmt::Debug for Ear {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Ear")
    }
}

/// The notices of the database, on a connection of their own.
pub struct Listener(AsyncPgConnection);

impl Store {
    /// Does what `told` says after every commit of this process that changed a season, to its end
    /// before whoever asked for it is answered. Only the first listener is kept.
    pub fn on_change(&self, told: Told) {
        let _ = self.ear.0.set(told);
    }

    /// Listens to what every process commits, from now on.
    ///
    /// # Errors
    /// [`Fault::Broken`] from a replica, which sends no notices; a fault of the connection.
    pub async fn listen(&self) -> Result<Listener, Fault> {
        let mut conn = Object::take(ScopeGuard::into_inner(self.conn().await?));
        conn.batch_execute("listen season_changed").await?;
        Ok(Listener(conn))
    }
}

impl Listener {
    /// The next notice.
    ///
    /// # Errors
    /// The connection broke; also when nothing but a look at it could tell.
    pub async fn next(&mut self) -> Result<Change, Fault> {
        loop {
            let heard = timeout(SILENCE, pin!(self.0.notifications_stream()).next()).await;
            match heard {
                Ok(Some(notice)) => {
                    if let Some(change) = Change::read(&notice?.payload) {
                        return Ok(change);
                    }
                }
                Ok(None) => return Err(Fault::Unavailable("no more notices".to_owned())),
                Err(_) => self.0.batch_execute("select 1").await?,
            }
        }
    }
}

#[derive(QueryableByName)]
struct BacklogRow {
    #[diesel(sql_type = Double)]
    share: f64,
}

const BACKLOG: &str = "select case when pg_is_in_recovery() then 0
    else pg_notification_queue_usage() end as share";

/// How full the queue of notices is that some listener has not heard yet, from 0 to 1.
///
/// # Errors
/// A [`Fault`] of the database.
pub async fn find_backlog(conn: &mut Conn) -> Result<f64, Fault> {
    let row: BacklogRow = diesel::sql_query(BACKLOG).get_result(conn).await?;
    Ok(row.share)
}

/// The versions of those of these seasons that everybody may see.
///
/// # Errors
/// A [`Fault`] of the database.
pub async fn list_public(
    conn: &mut Conn,
    wanted: &[(ClubId, SeasonId)],
) -> Result<Vec<Change>, Fault> {
    let clubs = wanted.iter().map(|(club, _)| club.0);
    let ids = wanted.iter().map(|(_, season)| season.0);
    let rows: Vec<(Uuid, Uuid, i64)> = seasons::table
        .filter(seasons::club_id.eq_any(clubs))
        .filter(seasons::season_id.eq_any(ids))
        .filter(seasons::visibility.eq("public"))
        .filter(seasons::state.ne("draft"))
        .select((seasons::club_id, seasons::season_id, seasons::version))
        .load(conn)
        .await?;
    let change = |(club, season, version)| Change {
        club: ClubId(club),
        season: SeasonId(season),
        version,
    };
    Ok(rows.into_iter().map(change).collect())
}
