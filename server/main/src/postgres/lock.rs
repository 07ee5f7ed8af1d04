//! The lock file of a data folder.

use std::fs::{File, OpenOptions, TryLockError};
use std::io::{Read, Write};
use std::path::Path;
use std::process;

use super::error::PostgresError;

/// Held as long as a server uses a data folder. The system lets go of it however the process ends.
#[derive(Debug)]
pub(super) struct FolderLock(#[expect(dead_code, reason = "held, never read")] File);

impl FolderLock {
    pub(super) fn take(folder: &Path) -> Result<Self, PostgresError> {
        let path = folder.join("lock");
        let mut file = OpenOptions::new()
            .create(true)
            .truncate(false)
            .read(true)
            .write(true)
            .open(&path)
            .map_err(PostgresError::system("cannot open", &path))?;
        match file.try_lock() {
            Ok(()) => {}
            Err(TryLockError::WouldBlock) => {
                let mut holder = String::new();
                file.read_to_string(&mut holder)
                    .map_err(PostgresError::system("cannot read", &path))?;
                return Err(PostgresError::InUse {
                    folder: folder.to_owned(),
                    holder: holder.trim().to_owned(),
                });
            }
            Err(TryLockError::Error(cause)) => {
                return Err(PostgresError::system("cannot lock", &path)(cause));
            }
        }
        file.set_len(0)
            .and_then(|()| writeln!(file, "{}", process::id()))
            .map_err(PostgresError::system("cannot write", &path))?;
        Ok(Self(file))
    }
}
