//! What every page shares: the request, the layout, forms, cookies, static files, errors.

pub mod assets;
pub mod compression;
pub mod cookies;
pub mod csrf;
pub mod error_page;
pub mod form_data;
pub mod form_errors;
pub mod form_reader;
pub mod multipart_form;
pub mod page_request;
pub mod response;
pub mod urls;
