//! A week's scenario, as far as the viewer may see it.

use super::visible_scenario::{VisibleScenario, visible_scenario};
use crate::access::view_season;
use crate::{App, Refusal, Viewer};
use league::keys::WeekKey;

/// # Errors
/// [`Refusal::NotFound`] when there is none or nothing may be known of it: the two look alike.
pub async fn find_scenario(
    app: &App,
    viewer: Viewer,
    week: WeekKey,
) -> Result<VisibleScenario, Refusal> {
    app.store
        .read(async |conn| {
            let view = view_season(conn, viewer, week.season).await?;
            let week = store::weeks::find(conn, week).await?;
            let now = store::clock::now(conn).await?;
            visible_scenario(&view, &week, now).ok_or(Refusal::NotFound)
        })
        .await
}
