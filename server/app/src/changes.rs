//! Notifications of changed seasons, their versions, and the freshness of the database: for whoever
//! caches what follows from them.

use std::time::Duration;

use league::keys::SeasonKey;
use league::time::Instant;
use store::Conn;
pub use store::changes::Change;
use store::changes::{self, Listener};
pub use store::replication::ReplicaStatus;

use crate::{App, Refusal};

/// The versions of some seasons at one instant.
#[derive(Clone, Debug)]
pub struct SeasonVersions {
    /// The instant, by the league's one clock.
    pub now: Instant,
    /// Of each that everybody may see.
    pub seasons: Vec<Change>,
}

/// The changes that other processes commit, as the database notifies of them.
pub struct ChangeStream(Listener);

impl App {
    /// Listens to the changes of all other processes, from now on.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] when the database cannot be reached, [`Refusal::Internal`] from a
    /// replica, which sends no notices.
    pub async fn listen(&self) -> Result<ChangeStream, Refusal> {
        Ok(ChangeStream(self.store.listen().await?))
    }

    /// The state of the replica that the database is; `None` of a primary.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] when the database cannot be reached.
    pub async fn find_replica_status(&self) -> Result<Option<ReplicaStatus>, Refusal> {
        let find = async |conn: &mut Conn| {
            Ok::<_, Refusal>(store::replication::find_replica_status(conn).await?)
        };
        let replica = self.store.read(find).await?;
        self.freshness.update(replica);
        Ok(replica)
    }

    /// How old what the database shows may be, as far as is known without asking it: zero of a primary,
    /// `None` of a replica that never was known to be complete.
    #[must_use]
    pub fn data_age(&self) -> Option<Duration> {
        self.freshness.age()
    }

    /// Whether the database is known to be a primary: what it does not show does not exist.
    #[must_use]
    pub fn reads_primary(&self) -> bool {
        self.freshness.is_primary()
    }

    /// Whether what the database shows is no older than this process was told to serve. Asks it
    /// where that is in doubt.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] when the database cannot be reached.
    pub async fn is_current(&self) -> Result<bool, Refusal> {
        let is_known = || self.data_age().is_some_and(|age| age <= self.stale_after);
        if is_known() {
            return Ok(true);
        }
        self.find_replica_status().await?;
        Ok(is_known())
    }

    /// Whether writes find room in the database, as far as is known: not after one that found none, until the
    /// database proves to have some.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] when the database cannot be reached.
    pub async fn has_room(&self) -> Result<bool, Refusal> {
        Ok(self.store.has_room().await?)
    }

    /// How full the database's queue of notices is, from 0 to 1: it fills when somebody who listens no
    /// longer hears. A replica has none.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] when the database cannot be reached.
    pub async fn find_notice_backlog(&self) -> Result<f64, Refusal> {
        self.store
            .read(async |conn| Ok(changes::find_backlog(conn).await?))
            .await
    }

    /// The versions of those of these seasons that everybody may see.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] when the database cannot be reached.
    pub async fn find_versions(&self, wanted: &[SeasonKey]) -> Result<SeasonVersions, Refusal> {
        self.store
            .read(async |conn| {
                Ok(SeasonVersions {
                    now: store::clock::now(conn).await?,
                    seasons: changes::list_public(conn, wanted).await?,
                })
            })
            .await
    }
}

impl ChangeStream {
    /// The next change. Some may be missed and none is in doubt: a version only rises.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] when the connection broke.
    pub async fn next(&mut self) -> Result<Change, Refusal> {
        Ok(self.0.next().await?)
    }
}
