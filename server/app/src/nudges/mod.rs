//! Reminding whoever owes a list or a result, on their own page and nowhere else.

mod find_nudges;
mod nudge_players;
mod owing;

pub use find_nudges::{NudgeDesk, find_nudges, find_own_nudges};
pub use nudge_players::{Nudged, nudge_players};
pub use owing::About;
