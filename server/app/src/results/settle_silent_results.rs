//! Scheduled task: confirms reported results that nobody disputed in time (silence confirms).

use document::results::SlipDocument;
use serde_json::json;

use crate::record::Scene;
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
    for &(club, season, id) in &due {
        app.store
            .write(async |conn| {
                let mut game = store::games::lock(conn, club, season, id).await?;
                let now = store::clock::now(conn).await?;
                let before = SlipDocument::from(&game.slip);
                game.slip = game.slip.settle(now);
                if SlipDocument::from(&game.slip) == before {
                    return Ok(());
                }
                store::games::update_slip(conn, club, season, &game).await?;
                Scene::by_clock(club, season, now)
                    .tell_everyone(app, conn, "confirm_result", json!({"game": id.0}))
                    .await
            })
            .await?;
    }
    Ok(due.len())
}
