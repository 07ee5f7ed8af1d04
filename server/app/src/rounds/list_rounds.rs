//! The rounds of a week: published ones for everybody, with reasons and proof; a proposal only for
//! those who run the season, that of a repair also for referees.

use league::ids::{ClubId, SeasonId};
use league::week::WeekNo;
use store::rounds::RoundRow;

use crate::access::view_season;
use crate::{Action, App, Refusal, Viewer};

/// Every version of every round, in order; [`with_changes`](super::with_changes) adds what a repair
/// changes.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn list_rounds(
    app: &App,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
) -> Result<Vec<RoundRow>, Refusal> {
    app.store
        .read(async |conn| {
            let view = view_season(conn, viewer, club, season).await?;
            store::weeks::find(conn, club, season, week).await?;
            let mut rounds = store::rounds::list(conn, club, season, Some(week)).await?;
            let judges = view.role.is_some_and(|role| Action::Judge.allowed_to(role));
            rounds.retain(|round| {
                let is_open = view.runs_season() || round.published_at.is_some();
                is_open || (judges && round.repair.is_some())
            });
            Ok(rounds)
        })
        .await
}
