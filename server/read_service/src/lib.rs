//! The shared read service: what everybody may see of public seasons, from a cache that is never stale. Needs no
//! account, no secret, and nothing of the database but reading.
//!
//! A page belongs to one version of its season and is encoded once for it. Whoever reads after a writer of
//! **this process** was answered sees what was written. Changes by **other processes** arrive by a notice of the
//! database within moments; should a notice be lost, by polling within half a second. A page is never served
//! whose version was confirmed more than two seconds ago, nor by a replica that has been cut off from its primary
//! for longer than the process was told to serve. A page expires at the instant at which the clock alone would
//! show more.

mod cache;
mod fast_path;
mod handlers;
mod http;
mod openapi;
mod resources;
mod routes;

pub use cache::counters::CacheCounters;
pub use cache::page_cache::PageCache;
pub use cache::watch::keep_current;
pub use fast_path::middleware::{FastPath, HitObserver, ObserverFactory};
pub use openapi::openapi;
pub use routes::configure;
