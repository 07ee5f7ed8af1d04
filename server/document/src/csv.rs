//! CSV (RFC 4180): tables that are written for spreadsheet programs, and a catalogue that is read.

pub mod catalogue;
pub mod table;
