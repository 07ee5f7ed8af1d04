//! A week's scenario, as far as the viewer may see it.

use league::ids::{ClubId, SeasonId};
use league::week::WeekNo;

use super::visible_scenario::{VisibleScenario, visible_scenario};
use crate::access::view_season;
use crate::{App, Refusal, Viewer};

/// # Errors
/// [`Refusal::NotFound`] when there is none or nothing may be known of it: the two look alike.
pub async fn find_scenario(
    app: &App,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
) -> Result<VisibleScenario, Refusal> {
    app.store
        .read(async |conn| {
            let view = view_season(conn, viewer, club, season).await?;
            let week = store::weeks::find(conn, club, season, week).await?;
            let now = store::clock::now(conn).await?;
            visible_scenario(&view, &week, now).ok_or(Refusal::NotFound)
        })
        .await
}
