//! Scheduled task: confirms reported results that nobody disputed in time (silence confirms).

use document::results::SlipDocument;
use document::trail::TrailAct;

use crate::season_change::SeasonChange;
use crate::{App, Refusal};

/// Confirms every result whose time is over; the scheduler of the server calls it every second or so. Reading
/// never waits for it: whoever reads the table counts silence in.
///
/// # Errors
/// [`Refusal::Unavailable`] when the database cannot be reached.
pub async fn settle_silent_results(app: &App) -> Result<usize, Refusal> {
    let due = app
        .store
        .read(async |conn| {
            let now = store::clock::now(conn).await?;
            store::games::list_confirmed_by_silence(conn, now).await
        })
        .await?;
    for &key in &due {
        app.write(async |mut tx| {
            let mut game = store::games::lock(&mut tx, key).await?;
            let now = store::clock::now(&tx).await?;
            let before = SlipDocument::from(&game.slip);
            game.slip = game.slip.settle(now);
            if SlipDocument::from(&game.slip) == before {
                return Ok::<_, Refusal>(tx.commit(()));
            }
            store::games::update_slip(&mut tx, key.season, &game).await?;
            let act = TrailAct::ConfirmResult { game: key.game.0 };
            let change = SeasonChange::new(key.season, None, now, act);
            Ok(tx.publish(change).await?.with(()))
        })
        .await?;
    }
    Ok(due.len())
}
