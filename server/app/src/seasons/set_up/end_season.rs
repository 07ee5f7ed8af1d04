//! Ending a season: reveals the seed of its draws, so that anybody can check them.

use document::trail::TrailAct;
use league::keys::SeasonKey;
use league::season::{SeasonState, first_open_week};
use messages::seasons;
use store::seasons::Season;

use crate::access::{authorize, must_be_started};
use crate::season_change::SeasonChange;
use crate::{Action, Actor, App, Reason, Refusal};

/// # Errors
/// [`Reason::SeasonState`] unless it is running, [`Reason::WeekState`] while a week is open.
pub async fn end_season(app: &App, actor: Actor, season: SeasonKey) -> Result<Season, Refusal> {
    app.write(async |mut tx| {
        authorize(&mut tx, actor, season.club, Action::RunSeason).await?;
        let season = store::seasons::lock(&mut tx, season).await?;
        must_be_started(&season)?;
        let weeks = store::weeks::list(&tx, season.key()).await?;
        let facts = weeks.iter().map(|week| (week.week, &week.facts));
        if let Some(open) = first_open_week(facts) {
            let message = seasons::week_not_closed(open.number());
            return Err(Refusal::rule(Reason::WeekState, message));
        }
        let now = store::clock::now(&tx).await?;
        store::seasons::end(&mut tx, season.key(), now).await?;
        let change = SeasonChange::new(season.key(), actor, now, TrailAct::EndSeason {});
        let ended = |version| Season {
            state: SeasonState::Ended,
            ended_at: Some(now),
            version,
            changed_at: now,
            ..season
        };
        Ok(tx.publish(change).await?.map(ended))
    })
    .await
}
