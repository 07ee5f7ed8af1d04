//! The weeks of a season, each with its phase at this instant.

use league::ids::{ClubId, SeasonId};
use league::season::WeekPhase;
use league::week::WeekNo;
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
    club: ClubId,
    season: SeasonId,
) -> Result<Vec<(Week, WeekPhase)>, Refusal> {
    app.store
        .read(async |conn| {
            view_season(conn, viewer, club, season).await?;
            let now = store::clock::now(conn).await?;
            let weeks = store::weeks::list(conn, club, season).await?;
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
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
) -> Result<(Week, WeekPhase), Refusal> {
    app.store
        .read(async |conn| {
            view_season(conn, viewer, club, season).await?;
            let now = store::clock::now(conn).await?;
            let week = store::weeks::find(conn, club, season, week).await?;
            let phase = week.facts.phase(now);
            Ok((week, phase))
        })
        .await
}
