//! Pages for people, rendered on the server, whole without a script. They are made from the same values of the use
//! cases as the API's responses.
//!
//! Each room has one subject; `frame`, `words` and `pictures` serve them all.

mod club;
mod frame;
mod lists;
mod painting;
mod pictures;
mod results;
mod rounds;
pub mod routes;
mod season;
mod setup;
mod week;
mod words;

pub use frame::error_page::{accepts_html, error_page};
