//! One season, for whoever may see it.

use league::keys::SeasonKey;
use store::seasons::Season;

use crate::access::view_season;
use crate::{App, Refusal, Viewer};

/// # Errors
/// [`Refusal::NotFound`].
pub async fn find_season(app: &App, viewer: Viewer, season: SeasonKey) -> Result<Season, Refusal> {
    app.store
        .read(async |conn| Ok(view_season(conn, viewer, season).await?.season))
        .await
}
