//! Versions of catalogues as the rules need them, kept once they were read: a version never changes.

use std::collections::HashMap;
use std::sync::{Arc, Mutex, PoisonError};

use league::catalogue::Catalogue;
use league::ids::{CatalogueId, ClubId};
use store::Conn;

use super::load;
use crate::Refusal;

/// Units of all kept versions together at most; a unit takes about a kilobyte.
const MOST_UNITS: usize = 100_000;

type Key = (ClubId, CatalogueId, i32);

/// The versions that one process has read.
#[derive(Clone, Debug, Default)]
pub struct Library(Arc<Mutex<HashMap<Key, Arc<Catalogue>>>>);

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
        if let Some(kept) = self.kept(key) {
            return Ok(kept);
        }
        let read = Arc::new(load(conn, club, id, number).await?);
        self.keep(key, &read);
        Ok(read)
    }

    fn kept(&self, key: Key) -> Option<Arc<Catalogue>> {
        let shelves = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        shelves.get(&key).cloned()
    }

    /// Where there is no room for it, makes room by forgetting all others.
    fn keep(&self, key: Key, read: &Arc<Catalogue>) {
        let mut shelves = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let taken: usize = shelves.values().map(|kept| units(kept)).sum();
        if taken + units(read) > MOST_UNITS {
            shelves.clear();
        }
        shelves.insert(key, Arc::clone(read));
    }
}

fn units(catalogue: &Catalogue) -> usize {
    let factions = catalogue.factions().iter();
    factions.map(|faction| faction.units().len()).sum()
}

#[cfg(test)]
mod tests {
    use league::catalogue::draft::{CatalogueDraft, FactionDraft, SizeDraft, UnitDraft};
    use uuid::Uuid;

    use super::*;

    fn small() -> Arc<Catalogue> {
        let size = SizeDraft {
            models: 5,
            points: 60,
        };
        let unit = UnitDraft {
            key: "pole-hands".into(),
            name: "Pole-Hands".into(),
            kind: "line".into(),
            sizes: vec![size],
            ..UnitDraft::default()
        };
        let faction = FactionDraft {
            key: "sluicebond".into(),
            name: "Sluicebond".into(),
            units: vec![unit],
        };
        let draft = CatalogueDraft {
            factions: vec![faction],
        };
        Arc::new(Catalogue::build(&draft).unwrap())
    }

    #[test]
    fn a_version_is_kept_under_its_club() {
        let library = Library::default();
        let [here, there] = [1, 2].map(|club| ClubId(Uuid::from_u128(club)));
        let catalogue = CatalogueId(Uuid::from_u128(3));
        let first = small();
        library.keep((here, catalogue, 1), &first);
        assert!(Arc::ptr_eq(
            &library.kept((here, catalogue, 1)).unwrap(),
            &first
        ));
        assert!(library.kept((there, catalogue, 1)).is_none());
        assert!(library.kept((here, catalogue, 2)).is_none());
    }
}
