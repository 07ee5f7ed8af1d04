//! What a reader has seen: from then on nothing older, whichever process answers.

use actix_web::http::header::{HeaderMap, IF_NONE_MATCH};
use app::Refusal;

use crate::shelf::{Key, Shelf};

/// The newest version that a reader knows of: as it says itself, or as its tags tell, which begin with
/// the version of their body.
pub fn seen(headers: &HeaderMap, at_least: Option<i64>) -> Option<i64> {
    let tags = headers.get_all(IF_NONE_MATCH);
    let tags = tags.filter_map(|tags| tags.to_str().ok());
    let tags = tags.flat_map(|tags| tags.split(',').filter_map(version_of));
    tags.chain(at_least).max()
}

/// From `"17.0b5c…"`, be it weak.
fn version_of(tag: &str) -> Option<i64> {
    let tag = tag.trim();
    let opaque = tag.strip_prefix("W/").unwrap_or(tag).strip_prefix('"')?;
    opaque.split_once('.')?.0.parse().ok()
}

impl Shelf {
    /// Makes sure that nothing older than `version` is served, asking the database where it is not
    /// known here yet.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] while this process's database has not got so far; as
    /// [`Shelf::page`](crate::Shelf) besides.
    pub(crate) async fn catch_up(&self, key: Key, version: i64) -> Result<(), Refusal> {
        let kept = self.season(key).await?;
        if kept.version() >= version {
            return Ok(());
        }
        let found = self.desk().find_versions(&[key]).await?.seasons;
        let newest = found.first().ok_or(Refusal::NotFound)?.version;
        kept.raise(newest);
        if newest >= version {
            return Ok(());
        }
        Err(Refusal::Unavailable {
            retry_after: 1,
            cause: format!("at version {newest}, the reader at {version}"),
        })
    }
}

#[cfg(test)]
mod tests {
    use actix_web::http::header::HeaderValue;

    use super::*;

    #[test]
    fn the_newest_of_all_that_a_reader_names_is_what_it_has_seen() {
        let mut headers = HeaderMap::new();
        assert_eq!(seen(&headers, None), None);
        assert_eq!(seen(&headers, Some(4)), Some(4));
        let tags = HeaderValue::from_static("\"7.ab-gzip\", W/\"9.cd\", \"other\", *, \"x.12\"");
        headers.insert(IF_NONE_MATCH, tags);
        assert_eq!(seen(&headers, Some(4)), Some(9));
        assert_eq!(seen(&headers, Some(12)), Some(12));
    }
}
