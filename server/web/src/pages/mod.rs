//! Pages for people, rendered here, whole without a script. They make their answers from the same
//! values of the use cases as the operations for programs do.

mod accounts;
mod address;
mod answer;
mod assets;
mod board;
mod catalogues;
mod chart;
mod clubs;
mod cookie;
mod csrf;
mod factions;
mod fields;
mod games;
mod home;
mod list_form;
mod lists;
mod map;
mod mine;
mod moment;
mod painting;
mod pairing_desk;
mod pairings;
mod paste;
mod print;
mod refused;
mod roles;
pub mod routes;
mod season_scene;
mod seasons;
mod setup;
mod setup_form;
mod sheets;
mod slip_form;
mod standings;
mod texts;
mod told;
mod visit;
mod week_panel;
mod weeks;

pub use refused::{reads_pages, refused};
