//! The weeks of a season, and where each stands at this instant.

use league::ids::{ClubId, SeasonId};
use league::season::Phase;
use league::week::WeekNo;
use store::weeks::Week;

use super::look::look;
use crate::{Desk, Refusal, Viewer};

/// In order. The caps of all weeks are public from the start, so that players can plan.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn list_weeks(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
) -> Result<Vec<(Week, Phase)>, Refusal> {
    desk.store
        .read(async |conn| {
            look(conn, viewer, club, season).await?;
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

/// One week.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn find_week(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
) -> Result<(Week, Phase), Refusal> {
    desk.store
        .read(async |conn| {
            look(conn, viewer, club, season).await?;
            let now = store::clock::now(conn).await?;
            let week = store::weeks::find(conn, club, season, week).await?;
            let phase = week.facts.phase(now);
            Ok((week, phase))
        })
        .await
}
