//! The invented season of the demo.

pub mod data;
