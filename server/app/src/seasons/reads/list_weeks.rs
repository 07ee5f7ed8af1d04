//! The weeks of a season, each with its phase at this instant.

use league::keys::{SeasonKey, WeekKey};
use league::season::WeekPhase;
use store::weeks::Week;

use crate::access::view_season;
use crate::{App, Refusal, Viewer};

/// In order. The caps of all weeks are public from the start, so that players can plan.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn list_weeks(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
) -> Result<Vec<(Week, WeekPhase)>, Refusal> {
    app.store
        .read(async |conn| {
            view_season(conn, viewer, season).await?;
            let now = store::clock::now(conn).await?;
            let weeks = store::weeks::list(conn, season).await?;
            let with_phase = |week: Week| {
                let phase = week.facts.phase(now);
                (week, phase)
            };
            Ok(weeks.into_iter().map(with_phase).collect())
        })
        .await
}

/// # Errors
/// [`Refusal::NotFound`].
pub async fn find_week(
    app: &App,
    viewer: Viewer,
    week: WeekKey,
) -> Result<(Week, WeekPhase), Refusal> {
    app.store
        .read(async |conn| {
            view_season(conn, viewer, week.season).await?;
            let now = store::clock::now(conn).await?;
            let week = store::weeks::find(conn, week).await?;
            let phase = week.facts.phase(now);
            Ok((week, phase))
        })
        .await
}
