//! The JSON forms of the league's values: one shape shared by the API, the database and the
//! public export.

pub mod catalogue;
pub mod civil;
pub mod csv;
pub mod export;
pub mod fault;
pub mod lists;
mod mirror_enum;
pub mod painting;
pub mod results;
pub mod rounds;
pub mod season;
pub mod share;
pub mod table;
pub mod trail;
