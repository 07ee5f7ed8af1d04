//! From request to parameters, and from a page to a response.

pub mod client_version;
pub mod content_encoding;
pub mod format;
pub mod parameters;
pub mod read_error;
pub mod response;
pub mod uncached_response;
