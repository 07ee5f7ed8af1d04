//! The desk: everything a use case needs besides its command.

use std::time::Duration;

use league::ids::{AccountId, SeasonId};
use league::time::Instant;
use store::Store;
use uuid::Uuid;

use crate::accounts::token::TokenKey;
use crate::catalogues::Library;
use crate::freshness::Freshness;
use crate::handed::Handed;
use crate::kept::Kept;
use crate::rounds::{SeasonFairness, Timed};
use crate::seasons::rulebook::Rulebook;
use crate::standings::SeasonForecast;
use crate::turns::Turns;
use crate::{Refusal, Uptime};

/// Passwords hashed at the same moment at most; each takes 19 MiB.
const HASHES_AT_ONCE: usize = 4;

/// People who wait for that at most.
const HASHES_WAITING: usize = 128;

/// Photos decoded at the same moment at most; each may take half a gigabyte.
const PHOTOS_AT_ONCE: usize = 2;

/// Photos that wait for that at most; each holds up to 10 MiB.
const PHOTOS_WAITING: usize = 16;

/// Audits and forecasts reckoned at the same moment at most: each keeps a processor busy for long.
const RECKONINGS_AT_ONCE: usize = 2;

/// People who wait for that at most.
const RECKONINGS_WAITING: usize = 16;

/// The store, the key that signs tokens, the queues for costly work, and what never changes.
#[derive(Clone)]
pub struct Desk {
    pub(crate) store: Store,
    pub(crate) key: TokenKey,
    pub(crate) timed: Timed,
    pub(crate) freshness: Freshness,
    pub(crate) handed: Handed,
    pub(crate) stale_after: Duration,
    pub(crate) hashing: Turns,
    pub(crate) decoding: Turns,
    pub(crate) reckoning: Turns,
    pub(crate) audits: Kept<SeasonId, SeasonFairness>,
    pub(crate) forecasts: Kept<(SeasonId, u64, u32), SeasonForecast>,
    pub(crate) library: Library,
    pub(crate) rulebook: Rulebook,
}

/// Somebody who has signed in.
#[derive(Clone, Copy, Debug)]
pub struct Actor {
    /// Who.
    pub account: AccountId,
    /// In which session.
    pub session: Uuid,
}

/// Whoever asks: signed in or not.
pub type Viewer = Option<Actor>;

impl Desk {
    /// A desk over a store. `secret` signs access tokens; what the database shows is stale once it may
    /// be older than `stale_after`, by the clock of this process.
    ///
    /// # Errors
    /// The reason in words when the secret has fewer than 256 bits (RFC 7518, section 3.2).
    pub fn new(
        store: Store,
        secret: &[u8],
        stale_after: Duration,
        uptime: Uptime,
    ) -> Result<Self, String> {
        let key = TokenKey::new(secret)?;
        Ok(Self {
            store,
            key,
            timed: Timed::default(),
            freshness: Freshness::new(uptime),
            handed: Handed::default(),
            stale_after,
            hashing: Turns::new(HASHES_AT_ONCE, HASHES_WAITING),
            decoding: Turns::new(PHOTOS_AT_ONCE, PHOTOS_WAITING),
            reckoning: Turns::new(RECKONINGS_AT_ONCE, RECKONINGS_WAITING),
            audits: Kept::default(),
            forecasts: Kept::default(),
            library: Library::default(),
            rulebook: Rulebook::default(),
        })
    }

    /// The same desk, its facts fetched over other connections.
    #[must_use]
    pub fn over(&self, store: Store) -> Self {
        Self {
            store,
            ..self.clone()
        }
    }

    /// The instant by the league's one clock.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] when the database cannot be reached.
    pub async fn now(&self) -> Result<Instant, Refusal> {
        self.store
            .read(async |conn| Ok(store::clock::now(conn).await?))
            .await
    }
}
