//! Pages on which a player writes an army list.

pub mod check;
pub mod editor;
pub mod form;
pub mod paste;
