//! Reading the trail (audit log) of a season: what was done, by whom, and why.

use league::club_role::ClubRole;
use league::keys::SeasonKey;
use store::trail::TrailEntry;

use crate::access::view_season;
use crate::{App, Refusal, Viewer};

/// Newest first; officers see more than others.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn list_trail(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
    before: Option<i64>,
    limit: u16,
) -> Result<Vec<TrailEntry>, Refusal> {
    app.store
        .read(async |conn| {
            let role = view_season(conn, viewer, season).await?.role;
            let officers = matches!(
                role,
                Some(ClubRole::Owner | ClubRole::Organiser | ClubRole::Referee)
            );
            Ok(store::trail::list(conn, season, officers, before, limit.into()).await?)
        })
        .await
}
