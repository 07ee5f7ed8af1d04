//! Seasons: set up, started and ended; their weeks, scenarios and players.

mod players;
mod reads;
mod set_up;
mod weeks;

pub use crate::access::policy::parse as parse_policy;
pub(crate) use players::must_be_nights_of;
pub use players::{
    JoinSeason, UpdatePlayer, join_season, tell_availability, update_player, withdraw_player,
};
pub(crate) use reads::visible_scenario;
pub use reads::{
    DirectoryCursor, DirectoryEntry, DirectoryPage, VisibleScenario, archive_season, export_season,
    find_availability, find_scenario, find_season, find_week, list_players, list_public_seasons,
    list_seasons, list_trail, list_weeks,
};
pub use set_up::{
    CarriedPlayers, Carry, CreateSeason, CreateSeasonFrom, LeftOut, MAX_GRACE_MINUTES, NextSeason,
    UpdateSeason, create_season, create_season_from, end_season, first_day_fault, start_season,
    update_season,
};
pub use store::players::{LeftAfter, Player};
pub use store::seasons::Season;
pub use store::trail::TrailEntry;
pub use store::weeks::Week;
pub use weeks::{
    RevealAt, UpdateScenario, UpdateWeek, publish_due_reveals, update_scenario, update_week,
};
