//! The JSON forms of the league's values: one shape shared by the API, the database and the
//! public export.

pub mod catalogue;
pub mod catalogue_csv;
pub mod certificate;
pub mod fault;
pub mod list;
pub mod list_rules;
pub mod pairing;
pub mod proposal;
pub mod receipt;
pub mod report;
pub mod share;

/// Lower-case hexadecimal, the form of every digest that leaves the server.
pub fn hex(bytes: &[u8]) -> String {
    hex::encode(bytes)
}
