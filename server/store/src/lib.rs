//! Persistence in PostgreSQL. The only crate that knows diesel.
//!
//! One file for each table or subject, with plain functions over a [`Conn`]. Reads see one snapshot;
//! writes are one transaction each. What a broken constraint means is said in [`UniqueConstraint`], not
//! guessed by callers.

pub mod accounts;
mod address;
pub mod adjustments;
pub mod brought_units;
pub mod catalogues;
pub mod changes;
pub mod clock;
pub mod clubs;
pub mod directory;
mod error;
pub mod frozen_tables;
pub mod games;
pub mod idempotency;
pub mod invitations;
mod json;
mod keys;
pub mod lists;
mod number;
pub mod painting;
pub mod photos;
pub mod players;
pub mod record_consents;
pub mod reminders;
pub mod repairs;
pub mod replication;
mod room;
pub mod rounds;
pub mod scheduled_reveals;
mod schema;
pub mod season_access;
pub mod seasons;
pub mod sessions;
mod tls;
pub mod trail;
pub mod week_limits;
mod week_no;
pub mod weeks;

use std::sync::Arc;
use std::time::Duration;

use diesel::result::{ConnectionError, ConnectionResult};
use diesel_async::pooled_connection::deadpool::{Object, Pool};
use diesel_async::pooled_connection::{
    AsyncDieselConnectionManager, ManagerConfig, RecyclingMethod,
};
use diesel_async::{AsyncMigrationHarness, AsyncPgConnection, SimpleAsyncConnection};
use diesel_migrations::{EmbeddedMigrations, MigrationHarness, embed_migrations};

use futures_util::FutureExt;
use futures_util::future::join;
use scopeguard::{ScopeGuard, guard};
use tokio::time::timeout;

use address::DatabaseAddress;
pub use address::{ClientAddress, connect_client, transport_warning};
use changes::ProcessId;
pub use error::{StoreError, TransactionError, UniqueConstraint};
use room::Room;

/// A connection inside a transaction; every query of this crate takes one. Those that only read take it
/// shared: several that are awaited together are pipelined, so they cost one round trip, and run in the
/// order in which they are named.
pub type Conn = AsyncPgConnection;

const MIGRATIONS: EmbeddedMigrations = embed_migrations!("../../migrations");

/// How long a transaction may take, the wait for a connection included. Then the request is refused as
/// unavailable instead of kept waiting.
const TRANSACTION_TIMEOUT: Duration = Duration::from_secs(4);

/// How often a write is begun at most: again at once when it collided with another, which is over by then.
const MAX_WRITE_ATTEMPTS: u32 = 5;

/// Sent once for each connection: a statement that waits for a lock must not outlive its request for long.
const SET_STATEMENT_TIMEOUT: &str = "set statement_timeout = '5s'";

/// The database behind a pool of connections.
#[derive(Clone)]
pub struct Store {
    pool: Pool<AsyncPgConnection>,
    /// Those of all threads, to be counted together.
    all_pools: Arc<[Pool<AsyncPgConnection>]>,
    process: ProcessId,
    room: Room,
}

/// How many connections of the pools are in use at one moment.
#[derive(Clone, Copy, Debug, Default)]
pub struct PoolStatus {
    /// Taken out of a pool.
    pub in_use: usize,
    /// Open and free.
    pub idle: usize,
    /// Requests that wait for one.
    pub waiting: usize,
}

impl Store {
    /// One store for each of several threads, with a pool of its own: a connection is driven by the thread
    /// that opened it, so any other thread would have to wake that one for every answer. Together they have
    /// `connections`, or one each; these are opened when first needed.
    ///
    /// # Errors
    /// [`StoreError::Internal`] when the address cannot be read or a pool cannot be built.
    pub fn connect(url: &str, connections: usize, threads: usize) -> Result<Vec<Self>, StoreError> {
        let share = (connections / threads).max(1);
        let address = DatabaseAddress::read(url)?;
        let pools: Result<Vec<_>, _> = (0..threads).map(|_| pool(&address, share)).collect();
        let all_pools: Arc<[_]> = pools?.into();
        let process = ProcessId::new();
        let room = Room::default();
        let store = |pool: &Pool<_>| Self {
            pool: pool.clone(),
            all_pools: Arc::clone(&all_pools),
            process,
            room: room.clone(),
        };
        Ok(all_pools.iter().map(store).collect())
    }

    /// How many connections all threads have at this moment, and how many wait for one.
    #[must_use]
    pub fn pool_status(&self) -> PoolStatus {
        let mut sum = PoolStatus::default();
        for pool in &*self.all_pools {
            let status = pool.status();
            sum.in_use += status.size.saturating_sub(status.available);
            sum.idle += status.available;
            sum.waiting += status.waiting;
        }
        sum
    }

    /// Runs `act` against one unchanging snapshot of the facts.
    ///
    /// # Errors
    /// Whatever `act` answers, or a [`StoreError`] of the database.
    pub async fn read<R, E, F>(&self, act: F) -> Result<R, E>
    where
        E: From<StoreError>,
        F: AsyncFnOnce(&mut Conn) -> Result<R, E>,
    {
        let begin = "begin isolation level repeatable read read only";
        let act = async |conn: &mut Conn, ()| act(conn).await;
        with_timeout(self.transact(begin, async |_| Ok(()), act)).await
    }

    /// Runs `act`, a single statement that writes nothing, without a transaction around it.
    ///
    /// # Errors
    /// Whatever `act` answers, or a [`StoreError`] of the database.
    pub async fn query<R>(
        &self,
        act: impl AsyncFn(&mut Conn) -> Result<R, StoreError>,
    ) -> Result<R, StoreError> {
        with_timeout(async {
            let (conn, answer) = self.acquire_and_run(act).await?;
            release(conn);
            Ok(answer)
        })
        .await
    }

    /// Runs `look` and then `act` in one transaction: all of it happens, or nothing. `look` is pipelined with
    /// `begin`, which saves a round trip; it must write nothing. Both may run several times: a transaction
    /// that collides with another is begun again, which nobody sees, since nobody is answered before the
    /// commit.
    ///
    /// # Errors
    /// Whatever `look` or `act` answers (then nothing was written), or a [`StoreError`] of the database.
    pub async fn write<L, R, E>(
        &self,
        look: impl AsyncFn(&Conn) -> Result<L, E>,
        act: impl AsyncFn(&mut Conn, L) -> Result<R, E>,
    ) -> Result<R, E>
    where
        E: TransactionError,
    {
        let answer = with_timeout(async {
            let mut attempts = 1;
            loop {
                let answer = self.transact("begin read write", &look, &act).await;
                let error = answer.as_ref().err().and_then(E::store_error);
                if matches!(error, Some(StoreError::SerializationConflict))
                    && attempts < MAX_WRITE_ATTEMPTS
                {
                    attempts += 1;
                } else {
                    break answer;
                }
            }
        })
        .await;
        self.room
            .note(answer.as_ref().err().and_then(E::store_error));
        answer
    }

    /// What marks the notices of this process.
    #[must_use]
    pub fn process(&self) -> ProcessId {
        self.process
    }

    async fn transact<L, R, E>(
        &self,
        begin: &str,
        look: impl AsyncFn(&Conn) -> Result<L, E>,
        act: impl AsyncFnOnce(&mut Conn, L) -> Result<R, E>,
    ) -> Result<R, E>
    where
        E: From<StoreError>,
    {
        let first = async |conn: &mut Conn| {
            let (begun, seen) = join(execute(conn, begin), look(conn)).await;
            begun.map(|()| seen)
        };
        let (mut conn, seen) = self.acquire_and_run(first).await?;
        let answer = match seen {
            Ok(seen) => act(&mut conn, seen).await,
            Err(refusal) => Err(refusal),
        };
        let end = if answer.is_ok() { "commit" } else { "rollback" };
        execute(&conn, end).await?;
        release(conn);
        answer
    }

    /// A connection with the result of its first statements, which may be sent twice. A connection that
    /// the database has closed is noticed by them: then all idle ones are dropped, too, and a new one is
    /// tried.
    async fn acquire_and_run<R>(
        &self,
        first: impl AsyncFn(&mut Conn) -> Result<R, StoreError>,
    ) -> Result<(CheckedOut, R), StoreError> {
        let mut conn = self.acquire().await?;
        let mut answer = first(&mut conn).await;
        if matches!(answer, Err(StoreError::Unavailable(_))) {
            drop(conn);
            self.pool.retain(|_, _| false);
            conn = self.acquire().await?;
            answer = first(&mut conn).await;
        }
        Ok((conn, answer?))
    }

    async fn acquire(&self) -> Result<CheckedOut, StoreError> {
        let conn = self.pool.get().await;
        let conn = conn.map_err(|cause| StoreError::Unavailable(cause.to_string()))?;
        Ok(guard(conn, |conn| drop(Object::take(conn))))
    }
}

/// A connection taken out of its pool. Dropped without [`release`] it is closed: a transaction that was
/// cut off by the timeout must not go back into the pool.
type CheckedOut = ScopeGuard<PooledConn, fn(PooledConn)>;

type PooledConn = Object<AsyncPgConnection>;

fn release(conn: CheckedOut) {
    drop(ScopeGuard::into_inner(conn));
}

async fn execute(mut conn: &Conn, statement: &str) -> Result<(), StoreError> {
    Ok(conn.batch_execute(statement).await?)
}

fn pool(
    address: &DatabaseAddress,
    connections: usize,
) -> Result<Pool<AsyncPgConnection>, StoreError> {
    let mut config = ManagerConfig::default();
    // The task that drives a connection notices its end at once: no need for a test query before each use.
    config.recycling_method = RecyclingMethod::Fast;
    let address = address.clone();
    config.custom_setup = Box::new(move |_| establish(address.clone()).boxed());
    Pool::builder(AsyncDieselConnectionManager::new_with_config("", config))
        .max_size(connections)
        .build()
        .map_err(|cause| StoreError::Internal(cause.to_string()))
}

async fn with_timeout<R, E: From<StoreError>>(
    act: impl Future<Output = Result<R, E>>,
) -> Result<R, E> {
    let late = |_| StoreError::Unavailable(format!("no answer within {TRANSACTION_TIMEOUT:?}"));
    timeout(TRANSACTION_TIMEOUT, act).await.map_err(late)?
}

async fn establish(address: DatabaseAddress) -> ConnectionResult<AsyncPgConnection> {
    let mut conn = address.connect().await?;
    let limited = conn.batch_execute(SET_STATEMENT_TIMEOUT).await;
    limited.map_err(ConnectionError::CouldntSetupConfiguration)?;
    Ok(conn)
}

/// Brings the database at `url` to the newest schema. Needs a runtime of several threads.
///
/// # Errors
/// [`StoreError::Unavailable`] without a connection, [`StoreError::Internal`] when a migration fails.
pub async fn migrate(url: &str) -> Result<(), StoreError> {
    migration_harness(url)
        .await?
        .run_pending_migrations(MIGRATIONS)
        .map_err(internal)?;
    Ok(())
}

/// Takes every migration back: the way to prove that each can be undone.
///
/// # Errors
/// As [`migrate`].
pub async fn revert_migrations(url: &str) -> Result<(), StoreError> {
    migration_harness(url)
        .await?
        .revert_all_migrations(MIGRATIONS)
        .map_err(internal)?;
    Ok(())
}

/// Servers that start at once migrate one after the other: an advisory lock of the session, with a number
/// that nobody else uses in this database.
const MIGRATION_LOCK: &str = "select pg_advisory_lock(1)";

async fn migration_harness(
    url: &str,
) -> Result<AsyncMigrationHarness<AsyncPgConnection>, StoreError> {
    let mut conn = DatabaseAddress::read(url)?
        .connect()
        .await
        .map_err(|cause| StoreError::Unavailable(cause.to_string()))?;
    conn.batch_execute(MIGRATION_LOCK).await?;
    Ok(AsyncMigrationHarness::new(conn))
}

fn internal(cause: Box<dyn std::error::Error + Send + Sync>) -> StoreError {
    StoreError::Internal(cause.to_string())
}
