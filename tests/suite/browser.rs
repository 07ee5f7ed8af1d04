//! What people do with the pages, by clicking and typing in a real browser, at the size of a phone
//! and of a laptop, in the light and the dark.

mod absence;
mod catalogue_import;
mod checks;
mod disputes;
mod driver;
mod effort;
mod ending;
mod hall;
mod keyboard;
mod keys;
mod list_check;
mod live;
mod look;
mod onlooker;
mod organiser;
mod pages;
mod pairing;
mod paper;
mod people;
mod photos;
mod player;
mod record_consent;
mod refusals;
mod reminders;
mod repair;
mod sheets;
mod unscripted;
mod window;
