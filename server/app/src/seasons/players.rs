//! The players of a season: joining, changing, withdrawing, and the nights on which they can come.

mod join_season;
mod tell_availability;
mod update_player;
mod withdraw_player;

pub(crate) use join_season::must_be_nights_of;
pub use join_season::{JoinSeason, join_season};
pub use tell_availability::tell_availability;
pub use update_player::{UpdatePlayer, update_player};
pub use withdraw_player::withdraw_player;
