//! Whether the database has room for what is written, as far as is known.
//!
//! A full disk is noticed by a write that fails. That a later one succeeds says little: it may have found a
//! page with space left where the next does not. Nor may writes be waited for, because whoever is not ready
//! gets none. So the database has to prove its room, and only from then on until a write fails again is
//! there any.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use diesel_async::SimpleAsyncConnection;

use crate::{Conn, Store, StoreError};

/// Has the database put 4 MB into a temporary file beside its tables, which needs no right and leaves nothing.
const PUT_ASIDE: &str = "set local work_mem = '64kB'; set local temp_tablespaces = '';
    select count(*) from generate_series(1, 131072)";

/// Shared by all pools of a process.
#[derive(Clone, Debug, Default)]
pub(crate) struct Room(Arc<AtomicBool>);

impl Room {
    /// Takes over what came of a write.
    pub fn note(&self, error: Option<&StoreError>) {
        if matches!(error, Some(StoreError::NoResources(_))) {
            self.0.store(true, Ordering::Relaxed);
        }
    }
}

impl Store {
    /// Whether writes find room, as far as is known; asks the database where one found none.
    ///
    /// # Errors
    /// A [`StoreError`] of the database, other than [`StoreError::NoResources`].
    pub async fn has_room(&self) -> Result<bool, StoreError> {
        let Room(lacks_room) = &self.room;
        if !lacks_room.load(Ordering::Relaxed) {
            return Ok(true);
        }
        let put_aside =
            async |conn: &mut Conn| Ok::<_, StoreError>(conn.batch_execute(PUT_ASIDE).await?);
        match self.read(put_aside).await {
            Ok(()) => {
                lacks_room.store(false, Ordering::Relaxed);
                Ok(true)
            }
            Err(StoreError::NoResources(_)) => Ok(false),
            Err(other) => Err(other),
        }
    }
}
