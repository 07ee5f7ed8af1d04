//! Ending a season: reveals the seed of its draws, so that anybody can check them.

use league::ids::{ClubId, SeasonId};
use serde_json::json;
use store::seasons::Season;

use crate::access::{authorize, must_be_started};
use crate::record::Scene;
use crate::{Action, Actor, App, Reason, Refusal};

/// # Errors
/// [`Reason::SeasonState`] unless it is running, [`Reason::WeekState`] while a week is open.
pub async fn end_season(
    app: &App,
    actor: Actor,
    club: ClubId,
    id: SeasonId,
) -> Result<Season, Refusal> {
    app.store
        .write(async |conn| {
            authorize(conn, actor, club, Action::RunSeason).await?;
            let season = store::seasons::lock(conn, club, id).await?;
            must_be_started(&season)?;
            let weeks = store::weeks::list(conn, club, id).await?;
            if let Some(open) = weeks.iter().find(|week| week.facts.closed_at.is_none()) {
                let detail = format!("Week {} is not closed yet.", open.week);
                return Err(Refusal::rule(Reason::WeekState, detail));
            }
            let now = store::clock::now(conn).await?;
            store::seasons::end(conn, club, id, now).await?;
            Scene::in_season(season.key(), actor, now)
                .tell_everyone(app, conn, "end_season", json!({}))
                .await?;
            Ok(store::seasons::find(conn, club, id).await?)
        })
        .await
}
