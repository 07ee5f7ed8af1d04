//! Closing a week: its table stands. A later ruling makes a new version of it, with a trail entry.

use document::trail::{TablePlace, TrailAct};
use league::keys::WeekKey;
use league::season::{CloseFault, check_close};
use league::standings::table;

use crate::access::{authorize, must_be_started};
use crate::load_season::load_season;
use crate::season_change::SeasonChange;
use crate::{Action, Actor, App, Reason, Refusal};

/// # Errors
/// [`Reason::WeekState`] before the week is paired, while a game of it is open or disputed, or when
/// it is closed already.
pub async fn close_week(app: &App, actor: Actor, week: WeekKey) -> Result<(), Refusal> {
    app.write(async |mut tx| {
        authorize(&mut tx, actor, week.season.club, Action::RunSeason).await?;
        let season = store::seasons::lock(&mut tx, week.season).await?;
        must_be_started(&season)?;
        let facts = store::weeks::lock(&mut tx, week).await?.facts;
        let now = store::clock::now(&tx).await?;
        let mut loaded = load_season(&tx, app, &season, now).await?;
        let open = loaded.games.iter().filter(|game| {
            game.week == week.week && game.meeting.is_some() && game.slip.settled().is_none()
        });
        check_close(&facts, open.count(), now).map_err(close_refusal)?;
        store::weeks::mark_closed(&mut tx, week, now).await?;
        loaded.mark_closed(week.week, now);
        let rows = table(&loaded.facts, week.week).rows;
        let places = rows.iter().map(|row| TablePlace {
            rank: row.rank,
            player: row.player.0,
            total: row.total.get(),
        });
        let act = TrailAct::CloseWeek {
            week: week.week.number(),
            table: places.collect(),
        };
        let change = SeasonChange::new(season.key(), actor, now, act);
        let change = SeasonChange {
            changes_closed_week_from: Some(week.week),
            loaded: Some((season, loaded)),
            ..change
        };
        Ok(tx.publish(change).await?.with(()))
    })
    .await
}

fn close_refusal(fault: CloseFault) -> Refusal {
    let refusal = Refusal::rule(Reason::WeekState, fault.message());
    match fault {
        CloseFault::GamesOpen(games) => refusal.fact("open_games", games),
        CloseFault::ClosedAlready | CloseFault::NotPaired => refusal,
    }
}
