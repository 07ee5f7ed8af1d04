//! Versions of catalogues as the rules need them, kept once they were read: a version never changes.

use std::sync::Arc;

use league::catalogue::Catalogue;
use league::ids::{CatalogueId, ClubId};
use store::Conn;

use super::load;
use crate::Refusal;
use crate::keeper::Keeper;

/// Units of all kept versions together at most; a unit takes about a kilobyte.
const MOST_UNITS: usize = 100_000;

type Key = (ClubId, CatalogueId, i32);

/// The versions that one process has read.
#[derive(Clone, Debug)]
pub struct Library(Keeper<Key, Arc<Catalogue>>);

impl Default for Library {
    fn default() -> Self {
        Self(Keeper::new(MOST_UNITS, |catalogue| units(catalogue)))
    }
}

impl Library {
    /// A version that is committed: whoever writes one does not ask for it in the same transaction.
    ///
    /// # Errors
    /// As [`load`].
    pub async fn find(
        &self,
        conn: &Conn,
        club: ClubId,
        id: CatalogueId,
        number: i32,
    ) -> Result<Arc<Catalogue>, Refusal> {
        let key = (club, id, number);
        if let Some(kept) = self.0.find(&key) {
            return Ok(kept);
        }
        let read = Arc::new(load(conn, club, id, number).await?);
        self.0.keep(key, Arc::clone(&read));
        Ok(read)
    }
}

fn units(catalogue: &Catalogue) -> usize {
    let factions = catalogue.factions().iter();
    factions.map(|faction| faction.units().len()).sum()
}
