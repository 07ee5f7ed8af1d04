//! Silence confirms: after the season's time a reported result stands.

use document::result::SlipDocument;
use serde_json::json;

use crate::record::Scene;
use crate::{Desk, Refusal};

/// Confirms every result whose time is over; the server asks for it every second or so. Reading
/// never waits for it: whoever reads the table counts silence in.
///
/// # Errors
/// [`Refusal::Unavailable`] when the database cannot be reached.
pub async fn settle_silent_results(desk: &Desk) -> Result<usize, Refusal> {
    let due = desk
        .store
        .read(async |conn| {
            let now = store::clock::now(conn).await?;
            store::games::list_silent(conn, now).await
        })
        .await?;
    for &(club, season, id) in &due {
        desk.store
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
                    .tell_everyone(desk, conn, "confirm_result", json!({"game": id.0}))
                    .await
            })
            .await?;
    }
    Ok(due.len())
}
