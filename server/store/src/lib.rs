//! The facts, kept in PostgreSQL. The only crate that knows diesel.
//!
//! One file per subject, with plain functions over a [`Conn`]. Reads see one snapshot; writes are one
//! transaction each. What a broken constraint means is said in [`Taken`], not guessed by callers.

pub mod accounts;
pub mod adjustments;
pub mod bounds;
pub mod brought;
pub mod catalogues;
pub mod changes;
pub mod clock;
pub mod clubs;
pub mod directory;
mod fault;
pub mod frozen_tables;
pub mod games;
pub mod idempotency;
pub mod invitations;
mod json;
pub mod lists;
pub mod moments;
pub mod nudges;
mod of_season;
pub mod painting;
pub mod photos;
pub mod places;
pub mod players;
pub mod records;
pub mod repairs;
pub mod replication;
pub mod rounds;
#[allow(missing_docs, reason = "the columns are documented in the migrations")]
mod schema;
pub mod seasons;
pub mod sessions;
pub mod trail;
pub mod weeks;

use std::sync::Arc;
use std::time::Duration;

use diesel::ConnectionResult;
use diesel::result::ConnectionError;
use diesel_async::pooled_connection::deadpool::{Object, Pool};
use diesel_async::pooled_connection::{
    AsyncDieselConnectionManager, ManagerConfig, RecyclingMethod,
};
use diesel_async::{
    AsyncConnection, AsyncMigrationHarness, AsyncPgConnection, SimpleAsyncConnection,
};
use diesel_migrations::{EmbeddedMigrations, MigrationHarness, embed_migrations};

use futures_util::FutureExt;
use futures_util::future::join;
use scopeguard::{ScopeGuard, guard};
use tokio::time::timeout;

pub use fault::{Fault, Taken};

/// A connection inside a transaction; every query of this crate takes one. Those that only look take it
/// shared: several that are awaited together go to the database in one go, and are done in the order in
/// which they are named.
pub type Conn = AsyncPgConnection;

const MIGRATIONS: EmbeddedMigrations = embed_migrations!("../../migrations");

/// How long a transaction may take, the wait for a connection included. Then the request is refused
/// for the moment instead of kept waiting.
const PATIENCE: Duration = Duration::from_secs(4);

/// A statement that waits for a lock does not outlive the request that gave up on it for long.
const LIMIT: &str = "set statement_timeout = '5s'";

/// The database behind a pool of connections.
#[derive(Clone)]
pub struct Store {
    pool: Pool<AsyncPgConnection>,
    all: Arc<[Pool<AsyncPgConnection>]>,
    ear: changes::Ear,
}

/// The pools' connections at one moment.
#[derive(Clone, Copy, Debug, Default)]
pub struct Connections {
    /// In use.
    pub busy: usize,
    /// Open and free.
    pub idle: usize,
    /// Requests that wait for one.
    pub waiting: usize,
}

impl Store {
    /// One store for each of several threads, with a pool of its own: a connection is served by the
    /// thread that made it, so the others would have to wake that one for every answer. Together they
    /// have `connections`, or one each; these are made when first needed.
    ///
    /// # Errors
    /// [`Fault::Broken`] when a pool cannot be built.
    pub fn connect(url: &str, connections: usize, threads: usize) -> Result<Vec<Self>, Fault> {
        let share = (connections / threads).max(1);
        let pools: Result<Vec<_>, _> = (0..threads).map(|_| pool(url, share)).collect();
        let all: Arc<[_]> = pools?.into();
        let ear = changes::Ear::new();
        let store = |pool: &Pool<_>| Self {
            pool: pool.clone(),
            all: Arc::clone(&all),
            ear: ear.clone(),
        };
        Ok(all.iter().map(store).collect())
    }

    /// How many connections all threads have at this moment, and how many wait for one.
    #[must_use]
    pub fn connections(&self) -> Connections {
        let mut sum = Connections::default();
        for pool in &*self.all {
            let status = pool.status();
            sum.busy += status.size.saturating_sub(status.available);
            sum.idle += status.available;
            sum.waiting += status.waiting;
        }
        sum
    }

    /// Runs `act` against one unchanging snapshot of the facts.
    ///
    /// # Errors
    /// Whatever `act` answers, or a [`Fault`] of the database.
    pub async fn read<R, E, F>(&self, act: F) -> Result<R, E>
    where
        E: From<Fault>,
        F: AsyncFnOnce(&mut Conn) -> Result<R, E>,
    {
        let begin = "begin isolation level repeatable read read only";
        self.transact(begin, async |_| Ok(()), async |conn, ()| act(conn).await)
            .await
    }

    /// Runs `act`, which is a single statement and writes nothing, without a transaction around it.
    ///
    /// # Errors
    /// Whatever `act` answers, or a [`Fault`] of the database.
    pub async fn ask<R>(
        &self,
        act: impl AsyncFn(&mut Conn) -> Result<R, Fault>,
    ) -> Result<R, Fault> {
        within_patience(async {
            let (conn, answer) = self.begun(act).await?;
            give_back(conn);
            Ok(answer)
        })
        .await
    }

    /// Runs `act` in one transaction: all of it happens, or nothing. Whoever listens to this process
    /// by [`Store::on_change`] has been told once this answers.
    ///
    /// # Errors
    /// Whatever `act` answers (then nothing was written), or a [`Fault`] of the database.
    pub async fn write<R, E, F>(&self, act: F) -> Result<R, E>
    where
        E: From<Fault>,
        F: AsyncFnOnce(&mut Conn) -> Result<R, E>,
    {
        self.write_after(async |_| Ok(()), async |conn, ()| act(conn).await)
            .await
    }

    /// As [`Store::write`], for what begins with a look that writes nothing: its statements go to the
    /// database together with the beginning of the transaction. It may be looked twice.
    ///
    /// # Errors
    /// Whatever `look` or `act` answers (then nothing was written), or a [`Fault`] of the database.
    pub async fn write_after<L, R, E>(
        &self,
        look: impl AsyncFn(&Conn) -> Result<L, E>,
        act: impl AsyncFnOnce(&mut Conn, L) -> Result<R, E>,
    ) -> Result<R, E>
    where
        E: From<Fault>,
    {
        let transaction = self.transact("begin read write", look, act);
        let (answer, noted) = self.ear.noting(transaction).await;
        if answer.is_ok() {
            noted.then.into_iter().for_each(|then| then());
            changes::commit(&noted.changes);
            self.ear.tell(noted.changes).await;
        }
        answer
    }

    async fn transact<L, R, E>(
        &self,
        begin: &str,
        look: impl AsyncFn(&Conn) -> Result<L, E>,
        act: impl AsyncFnOnce(&mut Conn, L) -> Result<R, E>,
    ) -> Result<R, E>
    where
        E: From<Fault>,
    {
        within_patience(async {
            let first = async |conn: &mut Conn| {
                let (begun, seen) = join(tell(conn, begin), look(conn)).await;
                begun.map(|()| seen)
            };
            let (mut conn, seen) = self.begun(first).await?;
            let answer = match seen {
                Ok(seen) => act(&mut conn, seen).await,
                Err(refusal) => Err(refusal),
            };
            let end = if answer.is_ok() { "commit" } else { "rollback" };
            tell(&conn, end).await?;
            give_back(conn);
            answer
        })
        .await
    }

    /// A connection with what it answered to its first statements, which may be sent twice. One that the
    /// database ended is found out by that: then those as old as it go too, and a new one is asked.
    async fn begun<R>(
        &self,
        first: impl AsyncFn(&mut Conn) -> Result<R, Fault>,
    ) -> Result<(InUse, R), Fault> {
        let mut conn = self.conn().await?;
        let mut answer = first(&mut conn).await;
        if matches!(answer, Err(Fault::Unavailable(_))) {
            drop(conn);
            self.pool.retain(|_, _| false);
            conn = self.conn().await?;
            answer = first(&mut conn).await;
        }
        Ok((conn, answer?))
    }

    async fn conn(&self) -> Result<InUse, Fault> {
        let conn = self.pool.get().await;
        let conn = conn.map_err(|cause| Fault::Unavailable(cause.to_string()))?;
        Ok(guard(conn, |conn| drop(Object::take(conn))))
    }
}

/// A connection that is closed where it is not given back, and its transaction with it.
type InUse = ScopeGuard<Pooled, fn(Pooled)>;

type Pooled = Object<AsyncPgConnection>;

fn give_back(conn: InUse) {
    drop(ScopeGuard::into_inner(conn));
}

async fn tell(mut conn: &Conn, statement: &str) -> Result<(), Fault> {
    Ok(conn.batch_execute(statement).await?)
}

fn pool(url: &str, connections: usize) -> Result<Pool<AsyncPgConnection>, Fault> {
    let mut config = ManagerConfig::default();
    // Its task hears of the end of a connection at once: no need to ask before each use.
    config.recycling_method = RecyclingMethod::Fast;
    config.custom_setup = Box::new(|url| establish(url).boxed());
    Pool::builder(AsyncDieselConnectionManager::new_with_config(url, config))
        .max_size(connections)
        .build()
        .map_err(|cause| Fault::Broken(cause.to_string()))
}

async fn within_patience<R, E: From<Fault>>(
    act: impl Future<Output = Result<R, E>>,
) -> Result<R, E> {
    let late = |_| Fault::Unavailable(format!("no answer within {PATIENCE:?}"));
    timeout(PATIENCE, act).await.map_err(late)?
}

async fn establish(url: &str) -> ConnectionResult<AsyncPgConnection> {
    let mut conn = AsyncPgConnection::establish(url).await?;
    let limited = conn.batch_execute(LIMIT).await;
    limited.map_err(ConnectionError::CouldntSetupConfiguration)?;
    Ok(conn)
}

/// Brings the database at `url` to the newest schema. Needs a runtime of several threads.
///
/// # Errors
/// [`Fault::Unavailable`] without a connection, [`Fault::Broken`] when a migration fails.
pub async fn migrate(url: &str) -> Result<(), Fault> {
    harness(url)
        .await?
        .run_pending_migrations(MIGRATIONS)
        .map_err(broken)?;
    Ok(())
}

/// Takes every migration back: the way to prove that each can be undone.
///
/// # Errors
/// As [`migrate`].
pub async fn unmigrate(url: &str) -> Result<(), Fault> {
    harness(url)
        .await?
        .revert_all_migrations(MIGRATIONS)
        .map_err(broken)?;
    Ok(())
}

/// Servers that start at once migrate one after the other: the lock is this session's, and the number
/// nobody else's in a database of ours.
const ONE_AT_A_TIME: &str = "select pg_advisory_lock(1)";

async fn harness(url: &str) -> Result<AsyncMigrationHarness<AsyncPgConnection>, Fault> {
    let mut conn = AsyncPgConnection::establish(url)
        .await
        .map_err(|cause| Fault::Unavailable(cause.to_string()))?;
    conn.batch_execute(ONE_AT_A_TIME).await?;
    Ok(AsyncMigrationHarness::new(conn))
}

fn broken(cause: Box<dyn std::error::Error + Send + Sync>) -> Fault {
    Fault::Broken(cause.to_string())
}
