//! The table as of a week: computed from the facts each time, so that it cannot be wrong.

use document::table::standings::NamedRowDocument;
use league::keys::SeasonKey;
use league::standings::{Standings, table};
use league::week::WeekNo;
use store::players::Player;
use store::seasons::Season;

use super::named_rows;
use crate::load_season::view_loaded_season;
use crate::{App, Refusal, Viewer};

/// A table with the season and players it is of.
#[derive(Clone, Debug)]
pub struct SeasonStandings {
    /// The season, with the version the table belongs to.
    pub season: Season,
    /// Everybody who ever joined.
    pub players: Vec<Player>,
    pub standings: Standings,
}

impl SeasonStandings {
    /// The rows with the names of their players.
    #[must_use]
    pub fn rows(&self) -> Vec<NamedRowDocument> {
        named_rows(&self.standings, &self.players)
    }
}

/// The table after `week`, or after the last week that was paired.
///
/// # Errors
/// [`Refusal::NotFound`] also for a week the season does not have.
pub async fn find_standings(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
    week: Option<WeekNo>,
) -> Result<SeasonStandings, Refusal> {
    app.store
        .read(async |conn| {
            let (season, loaded) = view_loaded_season(conn, app, viewer, season).await?;
            let standings = table(&loaded.facts, loaded.week_or_last_paired(week)?);
            Ok(SeasonStandings {
                season,
                players: loaded.players,
                standings,
            })
        })
        .await
}
