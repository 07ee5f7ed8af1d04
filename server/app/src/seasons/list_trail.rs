//! The trail of a season: what was done, by whom, and why.

use league::ids::{ClubId, SeasonId};
use league::role::Role;
use store::trail::Entry;

use super::look::look;
use crate::{Desk, Refusal, Viewer};

/// Newest first; officers see more than others.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn list_trail(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
    before: Option<i64>,
    limit: u16,
) -> Result<Vec<Entry>, Refusal> {
    desk.store
        .read(async |conn| {
            let role = look(conn, viewer, club, season).await?.role;
            let officers = matches!(role, Some(Role::Owner | Role::Organiser | Role::Referee));
            Ok(store::trail::list(conn, club, season, officers, before, limit.into()).await?)
        })
        .await
}
