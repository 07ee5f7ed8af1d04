//! The JSON forms of the league's values: one shape shared by the API, the database and the
//! public export.

pub mod both;
pub mod brought;
pub mod catalogue;
pub mod catalogue_changes;
pub mod catalogue_csv;
pub mod certificate;
pub mod civil;
pub mod claim;
pub mod collection;
pub mod cuts;
pub mod export;
pub mod fairness;
pub mod fault;
pub mod fits;
pub mod ledger;
pub mod list;
pub mod list_changes;
pub mod list_rules;
pub mod painting;
pub mod pairing;
pub mod policy;
pub mod proposal;
pub mod reading;
pub mod receipt;
pub mod repair;
pub mod report;
pub mod result;
pub mod rounds;
pub mod scenario;
pub mod scoring;
pub mod season;
pub mod seats;
pub mod share;
pub mod sheet;
pub mod standings;
pub mod statistics;
pub mod tie_breaks;
pub mod unsatisfiable;
mod words;

/// Lower-case hexadecimal, the form of every digest that leaves the server.
pub fn hex(bytes: &[u8]) -> String {
    hex::encode(bytes)
}

/// So many bytes from their hexadecimal digits.
pub fn unhex<const BYTES: usize>(text: &str) -> Option<[u8; BYTES]> {
    hex::decode(text).ok()?.try_into().ok()
}
