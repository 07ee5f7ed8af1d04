//! Temporary data folders.

use std::fs::{self, Permissions};
use std::os::unix::fs::PermissionsExt;
use std::path::{Path, PathBuf};

use nix::unistd::Pid;
use tempfile::TempDir;

/// A temporary folder that every user may pass through, as a data folder must be.
pub fn open_folder() -> TempDir {
    let folder = tempfile::tempdir().unwrap();
    fs::set_permissions(folder.path(), Permissions::from_mode(0o711)).unwrap();
    folder
}

/// The cluster in a data folder.
pub fn cluster_in(folder: &Path) -> PathBuf {
    let mut entries = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path());
    entries
        .find(|path| path.join("PG_VERSION").exists())
        .unwrap()
}

/// The first process of the database in a data folder.
pub fn postmaster_in(folder: &Path) -> Pid {
    let file = fs::read_to_string(cluster_in(folder).join("postmaster.pid")).unwrap();
    Pid::from_raw(file.lines().next().unwrap().parse().unwrap())
}
