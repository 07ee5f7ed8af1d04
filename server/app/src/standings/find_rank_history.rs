//! The rank history: everybody's rank after every week so far.

use league::keys::WeekKey;
use league::standings::{RankHistory, rank_history};

use crate::access::view_season;
use crate::load_season::load_season;
use crate::{App, Refusal, Viewer};

/// The ranks after each week up to `week`.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn find_rank_history(
    app: &App,
    viewer: Viewer,
    week: WeekKey,
) -> Result<Vec<RankHistory>, Refusal> {
    app.store
        .read(async |conn| {
            let season = view_season(conn, viewer, week.season).await?.season;
            let now = store::clock::now(conn).await?;
            let loaded = load_season(conn, app, &season, now).await?;
            Ok(rank_history(&loaded.facts, week.week))
        })
        .await
}
