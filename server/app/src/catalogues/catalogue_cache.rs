//! Cache of parsed catalogue versions: a version never changes.

use std::sync::Arc;

use league::catalogue::Catalogue;
use league::ids::{CatalogueId, ClubId};
use quick_cache::Weighter;
use quick_cache::sync::Cache;
use store::Conn;

use super::load_catalogue::load_catalogue;
use crate::Refusal;

/// Units of all cached versions together; a unit takes about a kilobyte.
const MAX_UNITS: u64 = 100_000;
/// Versions that are expected; so few that the library keeps them in one shard, whose capacity any
/// catalogue fits into.
const EXPECTED_VERSIONS: usize = 32;

type Key = (ClubId, CatalogueId, i32);

/// Clones share the versions.
///
/// Two who load the same at once both load it, as with [`crate::access::RulesCache`].
#[derive(Clone, Debug)]
pub(crate) struct CatalogueCache(Arc<Cache<Key, Arc<Catalogue>, Units>>);

/// Weighs a version by its units.
#[derive(Clone, Debug)]
struct Units;

impl Weighter<Key, Arc<Catalogue>> for Units {
    /// At least 1: what weighs nothing would never be evicted.
    fn weight(&self, _: &Key, catalogue: &Arc<Catalogue>) -> u64 {
        let factions = catalogue.factions().iter();
        let units: usize = factions.map(|faction| faction.units().len()).sum();
        units.max(1) as u64
    }
}

impl Default for CatalogueCache {
    fn default() -> Self {
        let cache = Cache::with_weighter(EXPECTED_VERSIONS, MAX_UNITS, Units);
        Self(Arc::new(cache))
    }
}

impl CatalogueCache {
    /// A version that is committed: whoever writes one must not ask for it in the same transaction.
    ///
    /// # Errors
    /// As [`load_catalogue`].
    pub async fn get_or_load(
        &self,
        conn: &Conn,
        club: ClubId,
        id: CatalogueId,
        number: i32,
    ) -> Result<Arc<Catalogue>, Refusal> {
        let key = (club, id, number);
        if let Some(cached) = self.0.get(&key) {
            return Ok(cached);
        }
        let catalogue = Arc::new(load_catalogue(conn, club, id, number).await?);
        self.0.insert(key, Arc::clone(&catalogue));
        Ok(catalogue)
    }
}
