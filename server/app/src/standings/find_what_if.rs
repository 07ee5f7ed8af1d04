//! The what-if table: the standings if open games ended as supposed.

use league::keys::SeasonKey;
use league::standings::{Supposition, SuppositionRefusal, what_if};
use league::week::WeekNo;
use messages::results;

use super::SeasonStandings;
use crate::load_season::view_loaded_season;
use crate::{App, Fault, Reason, Refusal, Viewer};

/// The table after `week`, or after the last week that was paired, under suppositions.
///
/// # Errors
/// [`Reason::Validation`] with every game that is unknown or not open; [`Refusal::NotFound`].
pub async fn find_what_if(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
    week: Option<WeekNo>,
    suppositions: Vec<Supposition>,
) -> Result<SeasonStandings, Refusal> {
    app.store
        .read(async |conn| {
            let (season, loaded) = view_loaded_season(conn, app, viewer, season).await?;
            let standings = what_if(
                &loaded.facts,
                &suppositions,
                loaded.week_or_last_paired(week)?,
            )
            .map_err(|refused| supposition_refusal(&suppositions, &refused))?;
            Ok(SeasonStandings {
                season,
                players: loaded.players,
                standings,
            })
        })
        .await
}

fn supposition_refusal(suppositions: &[Supposition], refused: &[SuppositionRefusal]) -> Refusal {
    let fault = |refused: &SuppositionRefusal| {
        let (SuppositionRefusal::NoSuchGame(game) | SuppositionRefusal::NotOpen(game)) = *refused;
        let at = suppositions
            .iter()
            .position(|supposed| supposed.game == game);
        let pointer = at.map_or_else(
            || "/suppositions".to_owned(),
            |at| format!("/suppositions/{at}/game"),
        );
        Fault::new(
            refused.code(),
            pointer,
            results::not_supposed(refused.message()),
        )
    };
    let faults = refused.iter().map(fault).collect();
    Refusal::faults(Reason::Validation, results::games_not_supposed(), faults)
}
