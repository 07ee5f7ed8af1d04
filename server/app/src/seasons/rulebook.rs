//! The rules of running seasons, kept once they were read: they are fixed from the start on.

use std::sync::Arc;

use document::policy::Policy;
use league::ids::{ClubId, SeasonId};
use store::Conn;
use store::seasons::Season;

use super::look::Running;
use super::policy::{self, parse};
use crate::Refusal;
use crate::keeper::Keeper;

/// Seasons kept at most; the rules of one take some ten kilobytes.
const MOST: usize = 1_000;

/// The rules that one process has read.
#[derive(Clone, Debug)]
pub struct Rulebook(Keeper<(ClubId, SeasonId), Arc<Policy>>);

impl Default for Rulebook {
    fn default() -> Self {
        Self(Keeper::new(MOST, |_| 1))
    }
}

impl Rulebook {
    /// The rules of a season whose start is committed.
    ///
    /// # Errors
    /// [`Refusal::Broken`] when what was kept can no longer be read.
    pub async fn find(&self, conn: &Conn, season: Running) -> Result<Arc<Policy>, Refusal> {
        if let Some(kept) = self.0.find(&season.key()) {
            return Ok(kept);
        }
        let document = store::seasons::find_policy(conn, season.club, season.id).await?;
        let policy = Arc::new(parse(season.id, &document)?);
        self.0.keep(season.key(), Arc::clone(&policy));
        Ok(policy)
    }

    /// The rules of any season. They are not kept: its start may still be taken back.
    ///
    /// # Errors
    /// As [`Rulebook::find`].
    pub fn read(&self, season: &Season) -> Result<Arc<Policy>, Refusal> {
        match self.0.find(&season.key()) {
            Some(kept) => Ok(kept),
            None => Ok(Arc::new(policy::read(season)?)),
        }
    }
}
