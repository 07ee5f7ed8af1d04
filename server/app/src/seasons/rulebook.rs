//! The rules of running seasons, kept once they were read: they are fixed from the start on.

use std::collections::HashMap;
use std::sync::{Arc, Mutex, PoisonError};

use document::policy::Policy;
use league::ids::{ClubId, SeasonId};
use store::Conn;

use super::look::Running;
use super::policy::parse;
use crate::Refusal;

/// Seasons kept at most, then all are forgotten; the rules of one take some ten kilobytes.
const MOST: usize = 1_000;

type Key = (ClubId, SeasonId);

/// The rules that one process has read.
#[derive(Clone, Debug, Default)]
pub struct Rulebook(Arc<Mutex<HashMap<Key, Arc<Policy>>>>);

impl Rulebook {
    /// # Errors
    /// [`Refusal::Broken`] when what was kept can no longer be read.
    pub async fn find(&self, conn: &Conn, season: Running) -> Result<Arc<Policy>, Refusal> {
        let key = (season.club, season.id);
        if let Some(kept) = self.kept(key) {
            return Ok(kept);
        }
        let document = store::seasons::find_policy(conn, season.club, season.id).await?;
        let policy = Arc::new(parse(season.id, &document)?);
        let mut all = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if all.len() >= MOST {
            all.clear();
        }
        all.insert(key, Arc::clone(&policy));
        Ok(policy)
    }

    fn kept(&self, key: Key) -> Option<Arc<Policy>> {
        let all = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        all.get(&key).cloned()
    }
}
