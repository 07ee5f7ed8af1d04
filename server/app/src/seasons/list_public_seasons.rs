//! The directory of the seasons that everybody may see.

pub use store::directory::{Listed, Place};

use crate::{Desk, Refusal};

/// Some seasons of the directory, newest first.
#[derive(Clone, Debug)]
pub struct DirectoryPage {
    /// The seasons.
    pub seasons: Vec<Listed>,
    /// Where to go on, if there are more.
    pub next: Option<Place>,
}

/// At most `limit` seasons after a place, or the first, whose name or club's name holds `search`.
///
/// # Errors
/// [`Refusal::Unavailable`] when the database cannot be reached.
pub async fn list_public_seasons(
    desk: &Desk,
    search: &str,
    after: Option<Place>,
    limit: u16,
) -> Result<DirectoryPage, Refusal> {
    let one_more = limit.saturating_add(1);
    let mut seasons = desk
        .store
        .read(async |conn| store::directory::list(conn, search, after, one_more).await)
        .await?;
    let more = seasons.len() > usize::from(limit);
    seasons.truncate(limit.into());
    let last = seasons.last().filter(|_| more);
    let next = last.map(|last| Place {
        started_at: last.started_at,
        season: last.season,
    });
    Ok(DirectoryPage { seasons, next })
}
