//! The table as of a week: computed from the facts each time, so that it cannot be wrong.

use document::standings::NamedRowDocument;
use league::ids::{ClubId, SeasonId};
use league::standings::{Standings, table};
use league::week::WeekNo;
use store::players::Player;
use store::seasons::Season;

use super::named_rows;
use crate::facts;
use crate::seasons::look::look;
use crate::{Desk, Refusal, Viewer};

/// A table with the season and players it is of.
#[derive(Clone, Debug)]
pub struct SeasonStandings {
    /// The season, with the version the table belongs to.
    pub season: Season,
    /// Everybody who ever joined.
    pub players: Vec<Player>,
    /// The table.
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
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
    week: Option<WeekNo>,
) -> Result<SeasonStandings, Refusal> {
    desk.store
        .read(async |conn| {
            let season = look(conn, viewer, club, season).await?.season;
            let now = store::clock::now(conn).await?;
            let loaded = facts::load(conn, desk, &season, now).await?;
            let standings = table(&loaded.facts, loaded.as_of(week)?);
            Ok(SeasonStandings {
                season,
                players: loaded.players,
                standings,
            })
        })
        .await
}
