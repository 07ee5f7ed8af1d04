//! The seasons of a club that the viewer may see.

use league::ids::ClubId;
use league::season::is_listed;
use store::seasons::Season;

use crate::access::role_of;
use crate::{App, Refusal, Viewer};

/// Newest first.
///
/// # Errors
/// [`Refusal::NotFound`] when there is no such club.
pub async fn list_seasons(app: &App, viewer: Viewer, club: ClubId) -> Result<Vec<Season>, Refusal> {
    app.store
        .read(async |conn| {
            store::clubs::find(conn, club).await?;
            let role = role_of(conn, viewer, club).await?;
            let mut seasons = store::seasons::list(conn, club).await?;
            seasons.retain(|season| is_listed(season.state, season.visibility, role));
            Ok(seasons)
        })
        .await
}
