//! Cache of parsed catalogue versions: a version never changes.

use std::sync::Arc;

use league::catalogue::Catalogue;
use league::ids::{CatalogueId, ClubId};
use store::Conn;

use super::load_catalogue::load_catalogue;
use crate::Refusal;
use crate::cache::Cache;

/// Units of all cached versions together; a unit takes about a kilobyte.
const MAX_UNITS: usize = 100_000;

type Key = (ClubId, CatalogueId, i32);

#[derive(Clone, Debug)]
pub(crate) struct CatalogueCache(Cache<Key, Arc<Catalogue>>);

impl Default for CatalogueCache {
    fn default() -> Self {
        Self(Cache::new(MAX_UNITS, |catalogue| count_units(catalogue)))
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

fn count_units(catalogue: &Catalogue) -> usize {
    let factions = catalogue.factions().iter();
    factions.map(|faction| faction.units().len()).sum()
}
