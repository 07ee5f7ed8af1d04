//! The directory of public seasons: the one query that crosses clubs for everybody.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use league::ids::SeasonId;
use league::keys::SeasonKey;
use league::season::SeasonState;
use league::time::Instant;
use uuid::Uuid;

use crate::keys::season_from_pk;
use crate::schema::{clubs, seasons};
use crate::{Conn, StoreError};

/// A season in the directory.
#[derive(Clone, Debug)]
pub struct DirectoryEntry {
    pub season: SeasonKey,
    pub club_name: String,
    pub name: String,
    /// Started or ended.
    pub state: SeasonState,
    pub started_at: Instant,
    pub ended_at: Option<Instant>,
}

/// A place in the directory's order: newest start first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DirectoryCursor {
    pub started_at: Instant,
    pub season: SeasonId,
}

/// The seasons after a place, or the first, whose name or club's name holds `search` in any case.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list(
    conn: &mut Conn,
    search: &str,
    after: Option<DirectoryCursor>,
    limit: u16,
) -> Result<Vec<DirectoryEntry>, StoreError> {
    let mut query = seasons::table
        .inner_join(clubs::table.on(clubs::club_id.eq(seasons::club_id)))
        .filter(seasons::visibility.eq("public"))
        .filter(seasons::state.ne("draft"))
        .order((seasons::started_at.desc(), seasons::season_id.desc()))
        .limit(limit.into())
        .select((
            seasons::club_id,
            clubs::name,
            seasons::season_id,
            seasons::name,
            seasons::started_at.assume_not_null(),
            seasons::ended_at,
        ))
        .into_boxed();
    if !search.is_empty() {
        let pattern = format!("%{}%", escape_like(search));
        let named = seasons::name.ilike(pattern.clone());
        query = query.filter(named.or(clubs::name.ilike(pattern)));
    }
    if let Some(DirectoryCursor { started_at, season }) = after {
        let same_start = seasons::started_at.eq(started_at);
        let later = seasons::started_at.lt(started_at);
        let after = later.or(same_start.and(seasons::season_id.lt(season.0)));
        query = query.filter(after);
    }
    let rows: Vec<(Uuid, String, Uuid, String, Instant, Option<Instant>)> =
        query.load(conn).await?;
    let listed =
        |(club, club_name, season, name, started_at, ended_at): (_, _, _, _, _, Option<_>)| {
            DirectoryEntry {
                season: season_from_pk((club, season)),
                club_name,
                name,
                state: match ended_at {
                    Some(_) => SeasonState::Ended,
                    None => SeasonState::Started,
                },
                started_at,
                ended_at,
            }
        };
    Ok(rows.into_iter().map(listed).collect())
}

/// A text that a pattern finds as it is.
fn escape_like(text: &str) -> String {
    let mut literal = String::new();
    for letter in text.chars() {
        if ['%', '_', '\\'].contains(&letter) {
            literal.push('\\');
        }
        literal.push(letter);
    }
    literal
}

#[cfg(test)]
mod tests {
    use super::escape_like;

    #[test]
    fn what_a_pattern_would_take_for_anything_is_looked_for_as_it_is() {
        assert_eq!(escape_like(r"100%_\Lamplit"), r"100\%\_\\Lamplit");
    }
}
