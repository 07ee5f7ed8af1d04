//! Queries about seasons: what a viewer may see of them.

mod archive_season;
mod export_season;
mod find_availability;
mod find_scenario;
mod find_season;
mod list_players;
mod list_public_seasons;
mod list_seasons;
mod list_trail;
mod list_weeks;
mod visible_scenario;

pub use archive_season::archive_season;
pub use export_season::export_season;
pub use find_availability::find_availability;
pub use find_scenario::find_scenario;
pub use find_season::find_season;
pub use list_players::list_players;
pub use list_public_seasons::{
    DirectoryCursor, DirectoryEntry, DirectoryPage, list_public_seasons,
};
pub use list_seasons::list_seasons;
pub use list_trail::list_trail;
pub use list_weeks::{find_week, list_weeks};
pub use visible_scenario::VisibleScenario;
pub(crate) use visible_scenario::visible_scenario;
