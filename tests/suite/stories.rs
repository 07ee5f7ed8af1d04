//! What people do, told over HTTP.

mod abuses;
mod accounts;
mod bad_inputs;
mod catalogue_changes;
mod catalogue_import;
mod languages;
mod list_aids;
pub mod lists;
mod next_version;
mod painted_share;
mod reminders;
mod repairs;
pub mod results;
mod roles;
mod rounds;
mod season;
pub mod season_end;
mod two_worlds;
mod unreadable_fields;
mod unsatisfiable_rules;
