//! The awards of a season: prizes that the data decide.

use league::keys::SeasonKey;
use league::season::SeasonState;
use league::standings::{PrizeAward, awards};
use league::week::WeekNo;

use crate::load_season::view_loaded_season;
use crate::{App, Refusal, Viewer};

/// The prizes of a season so far, or for good once it has ended.
#[derive(Clone, Debug)]
pub struct SeasonAwards {
    /// The season's version that they belong to.
    pub version: i64,
    /// Last week that counts.
    pub as_of: WeekNo,
    /// Whether the season has ended.
    pub is_final: bool,
    pub awards: Vec<PrizeAward>,
}

/// # Errors
/// [`Refusal::NotFound`].
pub async fn list_awards(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
) -> Result<SeasonAwards, Refusal> {
    app.store
        .read(async |conn| {
            let (season, loaded) = view_loaded_season(conn, app, viewer, season).await?;
            let as_of = loaded.last_paired_week();
            Ok(SeasonAwards {
                version: season.version,
                as_of,
                is_final: season.state == SeasonState::Ended,
                awards: awards(&loaded.facts, as_of),
            })
        })
        .await
}
