//! How likely each rank is while much is open: the rest of the season, played again and again.

use league::ids::{ClubId, SeasonId};
use league::standings::{Forecast, Simulation, forecast};
use league::week::WeekNo;

use crate::facts::{self, Loaded};
use crate::seasons::look::look;
use crate::turns::Turn;
use crate::{Desk, Refusal, Viewer};

/// Weeks of one player that a forecast plays at most, all runs together: it bounds the time of an
/// answer, whatever the size of the season.
const MOST_WEEKS_PLAYED: usize = 1_000_000;
const FEWEST_RUNS: u32 = 100;

/// A forecast with what it rests on.
#[derive(Clone, Debug)]
pub struct SeasonForecast {
    /// The season's version that it belongs to.
    pub version: i64,
    /// Last week that is paired.
    pub as_of: WeekNo,
    /// Rounds supposed.
    pub rounds_to_come: u8,
    /// Runs, fewer than asked for in a large season.
    pub runs: u32,
    /// How often everybody ended where.
    pub forecasts: Vec<Forecast>,
}

/// The same seed on the same facts gives the same answer.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn find_forecast(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    id: SeasonId,
    seed: u64,
    runs: u32,
) -> Result<SeasonForecast, Refusal> {
    let (version, loaded) = desk
        .store
        .read(async |conn| {
            let season = look(conn, viewer, club, id).await?.season;
            let now = store::clock::now(conn).await?;
            let loaded = facts::load(conn, desk, &season, now).await?;
            Ok::<_, Refusal>((season.version, loaded))
        })
        .await?;
    let runs = runs.min(most_runs(&loaded));
    desk.forecasts
        .or_reckon((id, seed, runs), version, &desk.reckoning, async |turn| {
            play(version, loaded, seed, runs, turn).await
        })
        .await
}

async fn play(
    version: i64,
    loaded: Loaded,
    seed: u64,
    runs: u32,
    turn: Turn,
) -> Result<SeasonForecast, Refusal> {
    let simulation = Simulation {
        last: loaded.last_paired(),
        rounds_to_come: loaded.rounds_to_come(),
        seed,
        runs,
    };
    let facts = loaded.facts;
    let forecasts = turn.aside(move || forecast(&facts, &simulation)).await?;
    Ok(SeasonForecast {
        version,
        as_of: simulation.last,
        rounds_to_come: simulation.rounds_to_come,
        runs,
        forecasts,
    })
}

fn most_runs(loaded: &Loaded) -> u32 {
    let weeks_of_a_run = (loaded.players.len() * loaded.weeks.len()).max(1);
    let runs = u32::try_from(MOST_WEEKS_PLAYED / weeks_of_a_run);
    runs.unwrap_or(u32::MAX).max(FEWEST_RUNS)
}
