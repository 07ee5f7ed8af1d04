//! Cache of fairness audits, which are costly to compute.

use std::collections::BTreeMap;

use league::ids::PlayerId;
use league::keys::SeasonKey;
use league::pairing::history::audit::FairnessAudit;
use league::week::WeekNo;

use crate::versioned_cache::VersionedCache;

pub(crate) type FairnessCache = VersionedCache<SeasonKey, SeasonFairness>;

/// An audit with what it rests on.
#[derive(Clone, Debug)]
pub struct SeasonFairness {
    /// The season's version that it belongs to.
    pub version: i64,
    /// Last week that counts.
    pub as_of: WeekNo,
    /// Seed of the dealt seasons: it follows from the season's commitment, so that nobody chooses it.
    pub seed: u64,
    pub audit: FairnessAudit,
    /// How everybody is called.
    pub handles: BTreeMap<PlayerId, String>,
}
