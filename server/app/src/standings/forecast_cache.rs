//! Cache of forecasts, which are costly to simulate.

use league::keys::SeasonKey;
use league::standings::Forecast;
use league::week::WeekNo;

use crate::versioned_cache::VersionedCache;

/// Forecasts by season, seed and number of runs.
pub(crate) type ForecastCache = VersionedCache<(SeasonKey, u64, u32), SeasonForecast>;

/// A forecast with what it rests on.
#[derive(Clone, Debug)]
pub struct SeasonForecast {
    /// The season's version that it belongs to.
    pub version: i64,
    /// The last week that is paired.
    pub as_of: WeekNo,
    /// How many rounds were simulated.
    pub rounds_to_come: u8,
    /// Runs, fewer than asked for in a large season.
    pub runs: u32,
    /// How often everybody ended where.
    pub forecasts: Vec<Forecast>,
}
