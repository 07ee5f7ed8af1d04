//! The directory of public seasons, page by page.

pub use store::directory::{DirectoryCursor, DirectoryEntry};

use crate::{App, Refusal};

/// Some seasons of the directory, newest first.
#[derive(Clone, Debug)]
pub struct DirectoryPage {
    pub seasons: Vec<DirectoryEntry>,
    /// Where to go on, if there are more.
    pub next: Option<DirectoryCursor>,
}

/// At most `limit` seasons after a place, or the first, whose name or club's name holds `search`.
///
/// # Errors
/// [`Refusal::Unavailable`] when the database cannot be reached.
pub async fn list_public_seasons(
    app: &App,
    search: &str,
    after: Option<DirectoryCursor>,
    limit: u16,
) -> Result<DirectoryPage, Refusal> {
    let one_more = limit.saturating_add(1);
    let mut seasons = app
        .store
        .read(async |conn| store::directory::list(conn, search, after, one_more).await)
        .await?;
    let more = seasons.get(usize::from(limit)).is_some();
    seasons.truncate(limit.into());
    let last = seasons.last().filter(|_| more);
    let next = last.map(|last| DirectoryCursor {
        started_at: last.started_at,
        season: last.season.season,
    });
    Ok(DirectoryPage { seasons, next })
}
