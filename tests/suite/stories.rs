//! What people do, told over HTTP.

mod accounts;
mod bad_inputs;
mod lists;
mod results;
mod roles;
mod season;
