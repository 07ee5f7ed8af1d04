//! Monotonic reads: a client that names the version it knows is answered with nothing older, whichever
//! process it asks.

use actix_web::http::header::{HeaderMap, IF_NONE_MATCH};
use app::{Reason, Refusal};
use league::keys::SeasonKey;
use messages::requests;

use crate::cache::page_cache::PageCache;

/// The newest version that a client's entity tags name: each begins with the version of its body.
pub fn tagged_version(headers: &HeaderMap) -> Option<i64> {
    let tags = headers.get_all(IF_NONE_MATCH);
    let tags = tags.filter_map(|tags| tags.to_str().ok());
    tags.flat_map(|tags| tags.split(',').filter_map(version_of))
        .max()
}

/// Of a tag such as `"17.0b5c…"`, strong or weak.
fn version_of(tag: &str) -> Option<i64> {
    let tag = tag.trim();
    let opaque = tag.strip_prefix("W/").unwrap_or(tag).strip_prefix('"')?;
    opaque.split_once('.')?.0.parse().ok()
}

impl PageCache {
    /// Makes sure that nothing older is served than what a client knows of: by its entity tags, or by what it
    /// asks for at least.
    ///
    /// # Errors
    /// [`Reason::VersionAhead`] where the season is not at the version asked for; a tag of such a version was
    /// made up and is ignored. As [`PageCache::catch_up`] besides.
    pub(crate) async fn satisfy(
        &self,
        key: SeasonKey,
        headers: &HeaderMap,
        at_least: Option<i64>,
    ) -> Result<(), Refusal> {
        if let Some(version) = tagged_version(headers) {
            self.catch_up(key, version).await?;
        }
        let Some(version) = at_least else {
            return Ok(());
        };
        let newest = self.catch_up(key, version).await?;
        if newest < version {
            let message = requests::version_ahead(newest);
            return Err(Refusal::rule(Reason::VersionAhead, message).fact("newest", newest));
        }
        Ok(())
    }

    /// Makes sure that nothing older than `version` is served, asking the database where it is not known here
    /// yet. Answers a version that the season has come to: an older one only where there is no newer, since
    /// the primary has them all.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] while a replica has not got so far; as [`PageCache::page`](crate::PageCache)
    /// besides.
    pub(crate) async fn catch_up(&self, key: SeasonKey, version: i64) -> Result<i64, Refusal> {
        let entry = self.confirmed_entry(key).await?;
        let known = entry.version();
        if known >= version {
            return Ok(known);
        }
        let found = self.app().find_versions(&[key]).await?.seasons;
        let newest = found.first().ok_or(Refusal::NotFound)?.version;
        entry.raise_version(newest);
        if newest >= version || self.app().reads_primary() {
            return Ok(newest);
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
    fn the_newest_of_all_tags_that_a_reader_sends_is_what_it_has_seen() {
        let mut headers = HeaderMap::new();
        assert_eq!(tagged_version(&headers), None);
        let tags = HeaderValue::from_static("\"7.ab-gzip\", W/\"9.cd\", \"other\", *, \"x.12\"");
        headers.insert(IF_NONE_MATCH, tags);
        assert_eq!(tagged_version(&headers), Some(9));
    }
}
