//! The fast path: a repeated request is answered from the cache before any routing.

pub mod middleware;
pub mod resolved_request;
