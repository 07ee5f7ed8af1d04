//! Catalogues: what may be fielded for how many points, in versions that never change.

mod create_catalogue;
mod create_catalogue_version;
mod find_catalogue_changes;
mod find_catalogue_version;
mod library;
mod list_catalogues;

pub use create_catalogue::create_catalogue;
pub use create_catalogue_version::{CatalogueSource, create_catalogue_version};
pub use find_catalogue_changes::{
    CatalogueChanges, OpenedLists, TouchedList, find_catalogue_changes,
};
pub use find_catalogue_version::{find_catalogue_version, load};
pub(crate) use library::Library;
pub use list_catalogues::list_catalogues;
pub use store::catalogues::Catalogue;
