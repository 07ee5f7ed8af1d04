//! What people do with the pages, by clicking and typing in a real browser, at the size of a phone
//! and of a laptop, in the light and the dark.

mod driver;
mod hall;
mod keyboard;
mod keys;
mod look;
mod onlooker;
mod organiser;
mod pages;
mod paper;
mod photos;
mod player;
mod unscripted;
mod window;
