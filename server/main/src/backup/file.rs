//! The file of a backup: whole or not there, and readable by its owner alone.

use std::fs::{self, File, OpenOptions};
use std::io;
use std::os::unix::fs::OpenOptionsExt;
use std::path::{Path, PathBuf};

/// A file that has another name until it is whole. Dropped before, it is removed.
#[derive(Debug)]
pub struct BackupFile {
    draft: PathBuf,
    path: PathBuf,
}

impl BackupFile {
    /// Begins a file that will be at `path`.
    ///
    /// # Errors
    /// A path that has no name; those of the system.
    pub fn begin(path: &Path) -> io::Result<(Self, File)> {
        let name = path.file_name().ok_or(io::ErrorKind::InvalidFilename)?;
        let mut name = name.to_owned();
        name.push(format!(".{}.part", std::process::id()));
        let draft = path.with_file_name(name);
        let mut options = OpenOptions::new();
        let file = options
            .write(true)
            .create_new(true)
            .mode(0o600)
            .open(&draft)?;
        let path = path.to_owned();
        Ok((Self { draft, path }, file))
    }

    /// Where it is until it is whole.
    pub fn draft(&self) -> &Path {
        &self.draft
    }

    /// Gives it its name, in the place of an older file, once all of it is on the disk.
    ///
    /// # Errors
    /// Those of the system.
    pub fn finish(self) -> io::Result<()> {
        File::open(&self.draft)?.sync_all()?;
        fs::rename(&self.draft, &self.path)?;
        match self.path.parent() {
            Some(folder) if !folder.as_os_str().is_empty() => File::open(folder)?.sync_all(),
            _ => File::open(".")?.sync_all(),
        }
    }
}

impl Drop for BackupFile {
    fn drop(&mut self) {
        // Once it has its name, there is no draft.
        let _ = fs::remove_file(&self.draft);
    }
}
