//! The private database's log: readable by its owner alone, bounded in length, without personal data.

use std::fs::{self, File, OpenOptions, Permissions};
use std::io;
use std::os::unix::fs::{OpenOptionsExt, PermissionsExt};
use std::path::{Path, PathBuf};

use super::error::PostgresError;

/// Bytes of the newest part. The part before it is kept beside it, so that both take twice as much.
const MAX_BYTES: u64 = 4 * 1024 * 1024;

/// Read and written by the owner, by nobody else.
const OWNER_ONLY: u32 = 0o600;

/// What keeps personal data out. A detail repeats what somebody typed, as in `Key (email)=(…) already
/// exists`; so does a statement that failed. The client is told both all the same.
pub(super) const SETTINGS: [&str; 2] =
    ["log_error_verbosity=terse", "log_min_error_statement=panic"];

/// The file that the database writes its log to, and the older part beside it.
#[derive(Debug)]
pub(super) struct DatabaseLog {
    path: PathBuf,
}

impl DatabaseLog {
    pub(super) fn new(path: PathBuf) -> Self {
        Self { path }
    }

    pub(super) fn path(&self) -> &Path {
        &self.path
    }

    /// Opens the file for the database, which appends to it.
    ///
    /// A file that others may read is from a version that logged e-mail addresses: it is emptied.
    pub(super) fn open(&self) -> Result<File, PostgresError> {
        let file = self
            .open_to_append()
            .map_err(PostgresError::system("cannot open", &self.path))?;
        close_to_others(&file).map_err(PostgresError::system("cannot close", &self.path))?;
        Ok(file)
    }

    /// Moves what is there to the older part once it is too long.
    ///
    /// The database holds the file open, so that it is copied and emptied instead of renamed; a line that is
    /// written between these two is lost.
    pub(super) fn rotate(&self) -> io::Result<()> {
        self.rotate_beyond(MAX_BYTES)
    }

    /// Its length in bytes.
    pub(super) fn length(&self) -> u64 {
        fs::metadata(&self.path).map_or(0, |facts| facts.len())
    }

    /// What was written after the first `start` bytes.
    pub(super) fn since(&self, start: u64) -> String {
        let bytes = fs::read(&self.path).unwrap_or_default();
        let start = usize::try_from(start).unwrap_or(0).min(bytes.len());
        String::from_utf8_lossy(bytes.split_at(start).1)
            .trim()
            .to_owned()
    }

    fn rotate_beyond(&self, max: u64) -> io::Result<()> {
        if self.length() <= max {
            return Ok(());
        }
        // A copy has the permissions of the file, not even at first wider ones.
        fs::copy(&self.path, self.path.with_extension("log.old"))?;
        self.open_to_append()?.set_len(0)
    }

    fn open_to_append(&self) -> io::Result<File> {
        OpenOptions::new()
            .create(true)
            .append(true)
            .mode(OWNER_ONLY)
            .open(&self.path)
    }
}

fn close_to_others(file: &File) -> io::Result<()> {
    if file.metadata()?.permissions().mode() & 0o077 == 0 {
        return Ok(());
    }
    file.set_permissions(Permissions::from_mode(OWNER_ONLY))?;
    file.set_len(0)
}

#[cfg(test)]
mod tests {
    use std::io::Write;

    use super::*;

    #[test]
    fn a_log_that_is_too_long_is_kept_once_and_begun_anew() {
        let folder = tempfile::tempdir().unwrap();
        let log = DatabaseLog::new(folder.path().join("pg15.log"));
        let mut database = log.open().unwrap();
        for week in ["week 1", "week 2", "week 3"] {
            writeln!(database, "{week}").unwrap();
            log.rotate_beyond(10).unwrap();
        }
        assert_eq!(log.since(0), "week 3");
        let older = folder.path().join("pg15.log.old");
        assert_eq!(fs::read_to_string(&older).unwrap(), "week 1\nweek 2\n");
        for file in [log.path(), &older] {
            let mode = fs::metadata(file).unwrap().permissions().mode();
            assert_eq!(mode & 0o777, OWNER_ONLY, "{}", file.display());
        }
    }

    #[test]
    fn a_log_that_others_could_read_is_closed_to_them_and_emptied() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("pg15.log");
        fs::write(&path, "Key (email)=(wennable@club.example)\n").unwrap();
        fs::set_permissions(&path, Permissions::from_mode(0o644)).unwrap();
        let log = DatabaseLog::new(path.clone());
        log.open().unwrap();
        assert_eq!(log.length(), 0);
        let mode = fs::metadata(&path).unwrap().permissions().mode();
        assert_eq!(mode & 0o777, OWNER_ONLY);
    }
}
