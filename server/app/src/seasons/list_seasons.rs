//! The seasons of a club that the viewer may know of.

use league::ids::ClubId;
use league::role::Role;
use league::season::{SeasonState, Visibility};
use store::seasons::Season;

use crate::may::standing;
use crate::{Desk, Refusal, Viewer};

/// Newest first.
///
/// # Errors
/// [`Refusal::NotFound`] when there is no such club.
pub async fn list_seasons(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
) -> Result<Vec<Season>, Refusal> {
    desk.store
        .read(async |conn| {
            store::clubs::find(conn, club).await?;
            let role = standing(conn, viewer, club).await?;
            let mut seasons = store::seasons::list(conn, club).await?;
            seasons.retain(|season| match (season.state, season.visibility) {
                (SeasonState::Draft, _) => matches!(role, Some(Role::Owner | Role::Organiser)),
                (_, Visibility::Public) => true,
                (_, Visibility::Club) => role.is_some(),
            });
            Ok(seasons)
        })
        .await
}
