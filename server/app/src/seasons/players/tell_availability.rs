//! Saving on which nights of a week a player can come; none at all is an absence with notice.

use document::trail::TrailAct;
use league::keys::WeekKey;
use league::season::check_availability_time;

use super::join_season::must_be_nights_of;
use crate::access::{authorize_player, must_play};
use crate::season_change::OfficersEntry;
use crate::{Actor, App, Reason, Refusal};

/// # Errors
/// [`Reason::WeekState`] once the week is paired, [`Reason::Validation`] for an unknown night.
pub async fn tell_availability(
    app: &App,
    actor: Actor,
    week: WeekKey,
    nights: Vec<String>,
) -> Result<(), Refusal> {
    app.write(async |mut tx| {
        let (season, player) = authorize_player(&tx, actor.account, week.season).await?;
        let player = must_play(&player, week.week)?;
        let facts = store::week_limits::lock_shared(&tx, week).await?.facts;
        let now = store::clock::now(&tx).await?;
        check_availability_time(&facts, now)
            .map_err(|fault| Refusal::rule(Reason::WeekState, fault.message()))?;
        let known = store::weeks::find(&mut tx, week).await?;
        must_be_nights_of(&known, &nights)?;
        store::players::save_availability(&mut tx, week, player, &nights, now).await?;
        let act = TrailAct::TellAvailability {
            player: player.0,
            week: week.week.number(),
            nights: nights.clone(),
        };
        tx.record(OfficersEntry::in_season(season.key, actor, now, act))
            .await
    })
    .await
}
