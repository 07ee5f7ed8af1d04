//! Forecast of the final ranks: the rest of the season, simulated many times (Monte Carlo).

use league::keys::SeasonKey;
use league::standings::{Simulation, forecast};

use super::SeasonForecast;
use crate::load_season::view_loaded_season;
use crate::loaded_season::LoadedSeason;
use crate::work_queue::Permit;
use crate::{App, Refusal, Viewer};

/// Weeks of one player that a forecast simulates, all runs together: it bounds the time of an answer,
/// whatever the size of the season.
const MAX_SIMULATED_WEEKS: usize = 1_000_000;
const MIN_RUNS: u32 = 100;

/// The same seed on the same facts gives the same answer.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn find_forecast(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
    seed: u64,
    runs: u32,
) -> Result<SeasonForecast, Refusal> {
    let (version, loaded) = app
        .store
        .read(async |conn| {
            let (season, loaded) = view_loaded_season(conn, app, viewer, season).await?;
            Ok::<_, Refusal>((season.version, loaded))
        })
        .await?;
    let runs = runs.min(max_runs(&loaded));
    app.forecast_cache
        .get_or_compute(
            (season, seed, runs),
            version,
            &app.analysis_queue,
            async |permit| simulate(version, loaded, seed, runs, permit).await,
        )
        .await
}

async fn simulate(
    version: i64,
    loaded: LoadedSeason,
    seed: u64,
    runs: u32,
    permit: Permit,
) -> Result<SeasonForecast, Refusal> {
    let simulation = Simulation {
        last: loaded.last_paired_week(),
        rounds_to_come: loaded.rounds_to_come(),
        seed,
        runs,
    };
    let facts = loaded.facts;
    let forecasts = permit
        .run_blocking(move || forecast(&facts, &simulation))
        .await?;
    Ok(SeasonForecast {
        version,
        as_of: simulation.last,
        rounds_to_come: simulation.rounds_to_come,
        runs,
        forecasts,
    })
}

fn max_runs(loaded: &LoadedSeason) -> u32 {
    let weeks_of_a_run = (loaded.players.len() * loaded.weeks.len()).max(1);
    let runs = u32::try_from(MAX_SIMULATED_WEEKS / weeks_of_a_run);
    // More than fit are as good as unlimited.
    runs.unwrap_or(u32::MAX).max(MIN_RUNS)
}
