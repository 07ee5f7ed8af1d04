//! Whether a rank can still be reached, and what it takes: exact, once all rounds are paired.

use league::ids::PlayerId;
use league::keys::SeasonKey;
use league::standings::{Reach, ReachRefusal, reach};
use messages::results;

use crate::load_season::view_loaded_season;
use crate::{App, Reason, Refusal, Viewer};

/// What the open games can still make of a player's place.
#[derive(Clone, Copy, Debug)]
pub struct SeasonReach {
    /// The season's version that it belongs to.
    pub version: i64,
    pub reach: Reach,
}

/// # Errors
/// [`Reason::TooOpen`] while rounds are to come or somebody has more than two open games;
/// [`Refusal::NotFound`] also for a player without a row.
pub async fn find_reach(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
    player: PlayerId,
    rank: u32,
) -> Result<SeasonReach, Refusal> {
    app.store
        .read(async |conn| {
            let (season, loaded) = view_loaded_season(conn, app, viewer, season).await?;
            let to_come = loaded.rounds_to_come();
            if to_come > 0 {
                let message = results::rounds_to_come(to_come);
                let refusal = Refusal::rule(Reason::TooOpen, message);
                return Err(refusal.fact("rounds_to_come", to_come));
            }
            let reach = reach(&loaded.facts, player, rank, loaded.last_paired_week())
                .map_err(reach_refusal)?;
            Ok(SeasonReach {
                version: season.version,
                reach,
            })
        })
        .await
}

fn reach_refusal(why: ReachRefusal) -> Refusal {
    match why {
        ReachRefusal::NoRow => Refusal::NotFound,
        ReachRefusal::TooOpen { limit, actual } => {
            Refusal::rule(Reason::TooOpen, results::no_exact_answer(why.message()))
                .fact("limit", limit)
                .fact("actual", actual)
        }
    }
}
