//! Everybody's rank after every week so far.

use league::ids::{ClubId, SeasonId};
use league::standings::{RankHistory, rank_history};
use league::week::WeekNo;

use crate::facts;
use crate::seasons::look::look;
use crate::{Desk, Refusal, Viewer};

/// The ranks after each week up to `week`.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn find_rank_history(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
) -> Result<Vec<RankHistory>, Refusal> {
    desk.store
        .read(async |conn| {
            let season = look(conn, viewer, club, season).await?.season;
            let now = store::clock::now(conn).await?;
            let loaded = facts::load(conn, desk, &season, now).await?;
            Ok(rank_history(&loaded.facts, week))
        })
        .await
}
