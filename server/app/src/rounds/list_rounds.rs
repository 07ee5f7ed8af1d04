//! The rounds of a week: published ones for everybody, with reasons and proof; a proposal only for
//! those who run the season, that of a repair also for referees.

use league::keys::WeekKey;
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
    week: WeekKey,
) -> Result<Vec<RoundRow>, Refusal> {
    app.store
        .read(async |conn| {
            let view = view_season(conn, viewer, week.season).await?;
            store::weeks::find(conn, week).await?;
            let mut rounds = store::rounds::list(conn, week.season, Some(week.week)).await?;
            let judges = view.role.is_some_and(|role| Action::Judge.allowed_to(role));
            rounds.retain(|round| {
                let is_open = view.runs_season() || round.published_at.is_some();
                is_open || (judges && round.repair.is_some())
            });
            Ok(rounds)
        })
        .await
}
