//! Monotonic reads: a client that names the version it knows is answered with nothing older, whichever
//! process it asks.

use actix_web::http::header::{HeaderMap, IF_NONE_MATCH};
use app::Refusal;
use league::keys::SeasonKey;

use crate::cache::page_cache::PageCache;

/// The newest version that a client knows of: by its `at_least`, or by its entity tags, which begin with the
/// version of their body.
pub fn client_version(headers: &HeaderMap, at_least: Option<i64>) -> Option<i64> {
    let tags = headers.get_all(IF_NONE_MATCH);
    let tags = tags.filter_map(|tags| tags.to_str().ok());
    let tags = tags.flat_map(|tags| tags.split(',').filter_map(version_of));
    tags.chain(at_least).max()
}

/// Of a tag such as `"17.0b5c…"`, strong or weak.
fn version_of(tag: &str) -> Option<i64> {
    let tag = tag.trim();
    let opaque = tag.strip_prefix("W/").unwrap_or(tag).strip_prefix('"')?;
    opaque.split_once('.')?.0.parse().ok()
}

impl PageCache {
    /// Makes sure that nothing older than `version` is served, asking the database where it is not known here
    /// yet.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] while this process's database has not got so far; as
    /// [`PageCache::page`](crate::PageCache) besides.
    pub(crate) async fn catch_up(&self, key: SeasonKey, version: i64) -> Result<(), Refusal> {
        let entry = self.confirmed_entry(key).await?;
        if entry.version() >= version {
            return Ok(());
        }
        let found = self.app().find_versions(&[key]).await?.seasons;
        let newest = found.first().ok_or(Refusal::NotFound)?.version;
        entry.raise_version(newest);
        if newest >= version {
            return Ok(());
        }
        let cause = format!("at version {newest}, the reader at {version}");
        Err(Refusal::unavailable(1, cause))
    }
}

#[cfg(test)]
mod tests {
    use actix_web::http::header::HeaderValue;

    use super::*;

    #[test]
    fn the_newest_of_all_that_a_reader_names_is_what_it_has_seen() {
        let mut headers = HeaderMap::new();
        assert_eq!(client_version(&headers, None), None);
        assert_eq!(client_version(&headers, Some(4)), Some(4));
        let tags = HeaderValue::from_static("\"7.ab-gzip\", W/\"9.cd\", \"other\", *, \"x.12\"");
        headers.insert(IF_NONE_MATCH, tags);
        assert_eq!(client_version(&headers, Some(4)), Some(9));
        assert_eq!(client_version(&headers, Some(12)), Some(12));
    }
}
