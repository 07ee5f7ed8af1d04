//! Backups (pg_dump, pg_restore): a database written into a file, checked, and put back.

mod contents;
mod file;
mod programs;
mod trial;

pub use contents::Contents;
pub use file::BackupFile;
pub use programs::{Programs, VersionsAfter};
pub use trial::{CREATE_READERS, restore_on_trial};
