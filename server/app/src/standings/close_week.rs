//! Closing a week: its table stands. A later ruling makes a new version of it, with a trail entry.

use document::trail::{TablePlace, TrailAct};
use league::keys::WeekKey;
use league::standings::table;
use messages::results;

use crate::access::{authorize, must_be_started};
use crate::load_season::load_season;
use crate::season_change::SeasonChange;
use crate::{Action, Actor, App, Reason, Refusal};

/// A week without a round, because nobody could come or nobody was left to meet, is closed once its
/// games would have been played.
///
/// # Errors
/// [`Reason::WeekState`] before the week is paired, while a game of it is open or disputed, or when
/// it is closed already.
pub async fn close_week(app: &App, actor: Actor, week: WeekKey) -> Result<(), Refusal> {
    app.write(async |mut tx| {
        authorize(&mut tx, actor, week.season.club, Action::RunSeason).await?;
        let season = store::seasons::lock(&mut tx, week.season).await?;
        must_be_started(&season)?;
        let facts = store::weeks::lock(&mut tx, week).await?.facts;
        let state = |message| Err(Refusal::rule(Reason::WeekState, message));
        if facts.closed_at.is_some() {
            return state(results::week_closed_already());
        }
        let now = store::clock::now(&tx).await?;
        if facts.paired_at.is_none() && now < facts.play_until_at {
            return state(results::week_not_paired());
        }
        let mut loaded = load_season(&tx, app, &season, now).await?;
        let open = loaded.games.iter().filter(|game| {
            game.week == week.week && game.meeting.is_some() && game.slip.settled().is_none()
        });
        let open = open.count();
        if open > 0 {
            let message = results::games_open(open);
            return Err(Refusal::rule(Reason::WeekState, message).fact("open_games", open));
        }
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
