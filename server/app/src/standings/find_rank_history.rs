//! The rank history: everybody's rank after every week so far.

use league::keys::WeekKey;
use league::standings::{RankHistory, rank_history};

use crate::load_season::view_loaded_season;
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
            let (_, loaded) = view_loaded_season(conn, app, viewer, week.season).await?;
            Ok(rank_history(&loaded.facts, week.week))
        })
        .await
}
