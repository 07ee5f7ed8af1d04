//! Who learns of a season's new version, and how: this process before the writer is answered, other
//! processes by a notice of the database.

use std::cell::RefCell;
use std::fmt;
use std::pin::pin;
use std::sync::{Arc, OnceLock};
use std::time::Duration;

use diesel::prelude::*;
use diesel::sql_types::{Double, Text};
use diesel::{define_sql_function, select};
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
use crate::{Conn, Store, StoreError};

/// How long a silent connection is trusted before a statement checks that it is still open.
const KEEP_ALIVE_INTERVAL: Duration = Duration::from_secs(1);

/// A season has this version.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Change {
    pub club: ClubId,
    pub season: SeasonId,
    pub version: i64,
}

/// A change as the database tells it: `club season version store`.
struct Notice {
    change: Change,
    /// Which store made it; nil of what is made outside of [`Store::write`].
    store: Uuid,
}

impl Notice {
    fn read(payload: &str) -> Option<Self> {
        let mut words = payload.split(' ');
        Some(Self {
            change: Change {
                club: ClubId(words.next()?.parse().ok()?),
                season: SeasonId(words.next()?.parse().ok()?),
                version: words.next()?.parse().ok()?,
            },
            // Servers of an older version do not say.
            store: words.next().map_or(Ok(Uuid::nil()), str::parse).ok()?,
        })
    }

    fn write(&self) -> String {
        let Change {
            club,
            season,
            version,
        } = self.change;
        format!("{club} {season} {version} {}", self.store)
    }
}

define_sql_function! {
    /// Answers nothing; the type stands for that.
    fn pg_notify(channel: Text, payload: Text) -> Text;
}

/// What a transaction leaves to be done once it is over.
#[derive(Default)]
pub(crate) struct Noted {
    /// Of which store it is.
    store: Uuid,
    /// What it has changed.
    pub changes: Vec<Change>,
    /// What follows from its commit.
    pub then: Vec<Then>,
}

/// Done once a transaction has committed, and dropped where it did not.
pub type Then = Box<dyn FnOnce() + Send>;

tokio::task_local! {
    /// Of the running transaction.
    static NOTED: RefCell<Noted>;
    /// What the running request has committed.
    static COMMITTED: RefCell<Vec<Change>>;
}

/// Tells of a change once the running transaction commits: this process first, and every process that
/// listens.
///
/// # Errors
/// A [`StoreError`] of the database.
pub(crate) async fn tell(mut conn: &Conn, change: Change) -> Result<(), StoreError> {
    let noted = |noted: &RefCell<Noted>| {
        let mut noted = noted.borrow_mut();
        noted.changes.push(change);
        noted.store
    };
    // Outside of a write nobody is told first: then only the notice remains.
    let store = NOTED.try_with(noted).unwrap_or_default();
    let notice = Notice { change, store }.write();
    select(pg_notify("season_changed", notice))
        .execute(&mut conn)
        .await?;
    Ok(())
}

/// Has something done once the running transaction has committed, before anybody is told of its
/// changes.
pub fn once_committed(then: Then) {
    // Outside of a write there is no commit to wait for.
    let _ = NOTED.try_with(|noted| noted.borrow_mut().then.push(then));
}

/// Remembers what was committed until its request is over.
pub(crate) fn commit(changes: &[Change]) {
    // The clock's own acts are no requests.
    let _ = COMMITTED.try_with(|committed| committed.borrow_mut().extend(changes));
}

/// Runs a request and says what it committed.
pub async fn committing<R>(request: impl Future<Output = R>) -> (R, Vec<Change>) {
    collecting(&COMMITTED, Vec::new(), request).await
}

async fn collecting<R, N: Default>(
    into: &'static LocalKey<RefCell<N>>,
    empty: N,
    act: impl Future<Output = R>,
) -> (R, N) {
    let run = async {
        let answer = act.await;
        (answer, into.with(RefCell::take))
    };
    into.scope(RefCell::new(empty), run).await
}

/// Does what a change asks for.
pub type Told = Box<dyn Fn(Change) -> BoxFuture<'static, ()> + Send + Sync>;

/// The one listener of this process, shared by all clones of a store.
#[derive(Clone)]
pub(crate) struct Ear {
    store: Uuid,
    told: Arc<OnceLock<Told>>,
}

impl Ear {
    pub fn new() -> Self {
        Self {
            store: Uuid::new_v4(),
            told: Arc::default(),
        }
    }

    /// Runs a transaction and says what it noted.
    pub async fn noting<R>(&self, transaction: impl Future<Output = R>) -> (R, Noted) {
        let empty = Noted {
            store: self.store,
            ..Noted::default()
        };
        collecting(&NOTED, empty, transaction).await
    }

    pub async fn tell(&self, changes: Vec<Change>) {
        if let Some(told) = self.told.get() {
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
pub struct Listener {
    conn: AsyncPgConnection,
    store: Uuid,
}

impl Store {
    /// Does what `told` says after every commit of this process that changed a season, to its end
    /// before whoever asked for it is answered. Only the first listener is kept.
    pub fn on_change(&self, told: Told) {
        let _ = self.ear.told.set(told);
    }

    /// Listens to what every other process commits, from now on. What this one commits is told by
    /// [`Store::on_change`].
    ///
    /// # Errors
    /// [`StoreError::Internal`] from a replica, which sends no notices; an error of the connection.
    pub async fn listen(&self) -> Result<Listener, StoreError> {
        let mut conn = Object::take(ScopeGuard::into_inner(self.acquire().await?));
        conn.batch_execute("listen season_changed").await?;
        Ok(Listener {
            conn,
            store: self.ear.store,
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
                        && notice.store != self.store
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
pub async fn list_public(
    conn: &mut Conn,
    wanted: &[(ClubId, SeasonId)],
) -> Result<Vec<Change>, StoreError> {
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
