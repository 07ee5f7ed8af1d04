//! What people do with the pages, by clicking and typing in a real browser, at the size of a phone
//! and of a laptop, in the light and the dark.

mod driver;
mod look;
mod onlooker;
mod organiser;
mod player;
mod window;
