//! Prizes that the data decide.

use league::ids::{ClubId, SeasonId};
use league::season::SeasonState;
use league::standings::{Awarded, awards};
use league::week::WeekNo;

use crate::facts;
use crate::seasons::look::look;
use crate::{Desk, Refusal, Viewer};

/// The prizes of a season so far, or for good once it has ended.
#[derive(Clone, Debug)]
pub struct SeasonAwards {
    /// The season's version that they belong to.
    pub version: i64,
    /// Last week that counts.
    pub as_of: WeekNo,
    /// Whether the season has ended.
    pub is_final: bool,
    /// The prizes.
    pub awards: Vec<Awarded>,
}

/// # Errors
/// [`Refusal::NotFound`].
pub async fn list_awards(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
) -> Result<SeasonAwards, Refusal> {
    desk.store
        .read(async |conn| {
            let season = look(conn, viewer, club, season).await?.season;
            let now = store::clock::now(conn).await?;
            let loaded = facts::load(conn, desk, &season, now).await?;
            let as_of = loaded.last_paired();
            Ok(SeasonAwards {
                version: season.version,
                as_of,
                is_final: season.state == SeasonState::Ended,
                awards: awards(&loaded.facts, as_of),
            })
        })
        .await
}
