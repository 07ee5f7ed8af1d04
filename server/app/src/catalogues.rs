//! Catalogues: what may be fielded for how many points, in versions that never change.

mod catalogue_cache;
mod create_catalogue;
mod create_catalogue_version;
mod find_catalogue_changes;
mod find_catalogue_version;
mod list_catalogues;
mod load_catalogue;

pub(crate) use catalogue_cache::CatalogueCache;
pub use create_catalogue::create_catalogue;
pub use create_catalogue_version::{CatalogueSource, create_catalogue_version};
pub use find_catalogue_changes::{
    CatalogueChanges, OpenedLists, TouchedList, find_catalogue_changes,
};
pub use find_catalogue_version::find_catalogue_version;
pub use list_catalogues::list_catalogues;
pub(crate) use load_catalogue::load_catalogue;
pub use store::catalogues::CatalogueRow;
