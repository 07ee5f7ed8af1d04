//! The application state that every use case takes: the store, the key of the access tokens, the queues
//! for costly work, and the caches.

use std::time::Duration;

use league::time::Instant;
use store::Store;

use crate::access::RulesCache;
use crate::accounts::token::TokenKey;
use crate::catalogues::CatalogueCache;
use crate::change_bus::{ChangeBus, RequestVersion};
use crate::freshness::Freshness;
use crate::rounds::{FairnessCache, PairingTimer, Stopwatch};
use crate::standings::ForecastCache;
use crate::work_queue::WorkQueue;
use crate::{Refusal, Uptime};

/// Password hashes at the same moment; each takes 19 MiB.
const MAX_CONCURRENT_HASHES: usize = 4;
const MAX_QUEUED_HASHES: usize = 128;

/// Photos decoded at the same moment; each may take half a gigabyte.
const MAX_CONCURRENT_PHOTOS: usize = 2;
/// Photos that wait; each holds up to 10 MiB.
const MAX_QUEUED_PHOTOS: usize = 16;

/// Audits and forecasts computed at the same moment: each keeps a processor busy for long.
const MAX_CONCURRENT_ANALYSES: usize = 2;
const MAX_QUEUED_ANALYSES: usize = 16;

/// Everything a use case needs besides its command. Clones share queues and caches.
#[derive(Clone)]
pub struct App {
    pub(crate) store: Store,
    pub(crate) token_key: TokenKey,
    pub(crate) pairing_timer: PairingTimer,
    pub(crate) freshness: Freshness,
    pub(crate) change_bus: ChangeBus,
    pub(crate) request_version: RequestVersion,
    pub(crate) stale_after: Duration,
    pub(crate) password_queue: WorkQueue,
    pub(crate) image_queue: WorkQueue,
    pub(crate) analysis_queue: WorkQueue,
    pub(crate) fairness_cache: FairnessCache,
    pub(crate) forecast_cache: ForecastCache,
    pub(crate) catalogue_cache: CatalogueCache,
    pub(crate) rules_cache: RulesCache,
}

impl App {
    /// `secret` signs access tokens; what the database shows is stale once it may be older than
    /// `stale_after`, by the clock of this process.
    ///
    /// # Errors
    /// The reason in words when the secret has fewer than 256 bits (RFC 7518, section 3.2).
    pub fn new(
        store: Store,
        secret: &[u8],
        stale_after: Duration,
        uptime: Uptime,
    ) -> Result<Self, String> {
        let token_key = TokenKey::new(secret)?;
        Ok(Self {
            store,
            token_key,
            pairing_timer: PairingTimer::default(),
            freshness: Freshness::new(uptime),
            change_bus: ChangeBus::default(),
            request_version: RequestVersion::default(),
            stale_after,
            password_queue: WorkQueue::new(MAX_CONCURRENT_HASHES, MAX_QUEUED_HASHES),
            image_queue: WorkQueue::new(MAX_CONCURRENT_PHOTOS, MAX_QUEUED_PHOTOS),
            analysis_queue: WorkQueue::new(MAX_CONCURRENT_ANALYSES, MAX_QUEUED_ANALYSES),
            fairness_cache: FairnessCache::default(),
            forecast_cache: ForecastCache::default(),
            catalogue_cache: CatalogueCache::default(),
            rules_cache: RulesCache::default(),
        })
    }

    /// The same application over another pool of connections: each worker thread has its own.
    #[must_use]
    pub fn with_store(&self, store: Store) -> Self {
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

    /// Has the steps of every pairing timed. Only the first stopwatch is kept.
    pub fn set_pairing_stopwatch(&self, stopwatch: Stopwatch) {
        self.pairing_timer.set(stopwatch);
    }
}
