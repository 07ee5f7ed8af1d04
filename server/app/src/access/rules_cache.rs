//! Cache of the parsed rules of seasons that have started: from then on they never change.

use std::sync::Arc;

use document::season::policy::Policy;
use league::keys::SeasonKey;
use quick_cache::sync::Cache;
use store::Conn;
use store::seasons::Season;

use super::policy::{self, parse_document};
use super::view_season::RunningSeason;
use crate::Refusal;

/// The rules of one season take some ten kilobytes.
const MAX_SEASONS: usize = 1_000;

/// Clones share the rules.
///
/// Two who load the same at once both load it: whoever waited for the other could hold a lock in the
/// database that the other waits for.
#[derive(Clone, Debug)]
pub(crate) struct RulesCache(Arc<Cache<SeasonKey, Arc<Policy>>>);

impl Default for RulesCache {
    fn default() -> Self {
        Self(Arc::new(Cache::new(MAX_SEASONS)))
    }
}

impl RulesCache {
    /// The rules of a season whose start is committed.
    ///
    /// # Errors
    /// [`Refusal::Internal`] when the stored value can no longer be read.
    pub async fn get_or_load(
        &self,
        conn: &Conn,
        season: RunningSeason,
    ) -> Result<Arc<Policy>, Refusal> {
        if let Some(cached) = self.0.get(&season.key) {
            return Ok(cached);
        }
        let document = store::seasons::find_policy(conn, season.key).await?;
        let policy = Arc::new(parse_document(season.key, &document)?);
        self.0.insert(season.key, Arc::clone(&policy));
        Ok(policy)
    }

    /// The rules of any season. They are not put into the cache: in a transaction that starts the season
    /// they may still be rolled back.
    ///
    /// # Errors
    /// As [`RulesCache::get_or_load`].
    pub fn get_or_parse(&self, season: &Season) -> Result<Arc<Policy>, Refusal> {
        match self.0.get(&season.key()) {
            Some(cached) => Ok(cached),
            None => Ok(Arc::new(policy::parse(season)?)),
        }
    }
}
