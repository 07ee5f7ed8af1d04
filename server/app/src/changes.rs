//! The versions of seasons, for whoever keeps something that follows from them.

use league::ids::{ClubId, SeasonId};
use league::time::Instant;
use store::changes::{self, Listener, Told};
pub use store::changes::{Change, committing};
pub use store::replication::Replica;

use crate::{Desk, Refusal};

/// What some seasons' versions were at one instant.
#[derive(Clone, Debug)]
pub struct Versions {
    /// The instant, by the league's one clock.
    pub now: Instant,
    /// Of each that everybody may see.
    pub seasons: Vec<Change>,
}

/// What all processes change, as the database tells it.
pub struct Changes(Listener);

impl Desk {
    /// Does what `told` says for every change that this process commits, to its end before whoever
    /// made it is answered. Only the first listener is kept.
    pub fn on_change(&self, told: Told) {
        self.store.on_change(told);
    }

    /// Listens to the changes of all processes, from now on.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] when the database cannot be reached, [`Refusal::Broken`] from a
    /// replica, which tells nothing.
    pub async fn listen(&self) -> Result<Changes, Refusal> {
        Ok(Changes(self.store.listen().await?))
    }

    /// The replica that the database is; nothing of a primary.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] when the database cannot be reached.
    pub async fn find_replica(&self) -> Result<Option<Replica>, Refusal> {
        self.store
            .read(async |conn| Ok(store::replication::find(conn).await?))
            .await
    }

    /// The versions of those of these seasons that everybody may see.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] when the database cannot be reached.
    pub async fn find_versions(&self, wanted: &[(ClubId, SeasonId)]) -> Result<Versions, Refusal> {
        self.store
            .read(async |conn| {
                Ok(Versions {
                    now: store::clock::now(conn).await?,
                    seasons: changes::list_public(conn, wanted).await?,
                })
            })
            .await
    }
}

impl Changes {
    /// The next change. Some may be missed and none is in doubt: a version only rises.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] when the connection broke.
    pub async fn next(&mut self) -> Result<Change, Refusal> {
        Ok(self.0.next().await?)
    }
}
