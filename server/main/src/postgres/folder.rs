//! The layout of a data folder.

use std::fs::{self, Permissions};
use std::os::unix::ffi::OsStrExt;
use std::os::unix::fs::PermissionsExt;
use std::path::{self, Path, PathBuf};

use super::error::PostgresError;
use super::owner::Owner;

/// The longest path of a Unix socket in bytes: `sun_path` without its closing zero.
const MAX_SOCKET_PATH_BYTES: usize = if cfg!(target_os = "linux") { 107 } else { 103 };

/// The name PostgreSQL gives its socket for the port that stands in its configuration.
const SOCKET_FILE: &str = ".s.PGSQL.5432";

/// A data folder and the paths inside it.
#[derive(Debug)]
pub(super) struct DataFolder {
    root: PathBuf,
}

impl DataFolder {
    /// Makes the folder where it is missing and checks that a database can live in it.
    pub(super) fn open(path: &Path, owner: &Owner) -> Result<Self, PostgresError> {
        let root = path::absolute(path).map_err(PostgresError::system("cannot resolve", path))?;
        if !root.exists() {
            fs::create_dir_all(&root).map_err(PostgresError::system("cannot create", &root))?;
            fs::set_permissions(&root, Permissions::from_mode(0o711))
                .map_err(PostgresError::system("cannot open", &root))?;
        }
        let folder = Self { root };
        let socket = folder.socket().join(SOCKET_FILE);
        let length = socket.as_os_str().as_bytes().len();
        if length > MAX_SOCKET_PATH_BYTES {
            return Err(PostgresError::LongSocketPath {
                socket,
                length,
                limit: MAX_SOCKET_PATH_BYTES,
            });
        }
        owner.check_way_to(&folder.root)?;
        Ok(folder)
    }

    pub(super) fn root(&self) -> &Path {
        &self.root
    }

    pub(super) fn socket(&self) -> PathBuf {
        socket_in(&self.root)
    }

    pub(super) fn cluster(&self, major: u32) -> PathBuf {
        self.root.join(format!("pg{major}"))
    }

    pub(super) fn log(&self, major: u32) -> PathBuf {
        self.root.join(format!("pg{major}.log"))
    }

    /// The highest major version a cluster is there for.
    pub(super) fn existing_major(&self) -> Result<Option<u32>, PostgresError> {
        let entries =
            fs::read_dir(&self.root).map_err(PostgresError::system("cannot read", &self.root))?;
        Ok(entries
            .flatten()
            .filter_map(|entry| entry.file_name().to_str()?.strip_prefix("pg")?.parse().ok())
            .max())
    }
}

/// Where the database of a data folder is reached.
pub(super) fn socket_in(root: &Path) -> PathBuf {
    root.join("socket")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_socket_path_beyond_the_systems_limit_is_refused_before_anything_starts() {
        let folder = std::env::temp_dir().join("x".repeat(110));
        let fault = DataFolder::open(&folder, &Owner::Myself).unwrap_err();
        fs::remove_dir(&folder).unwrap();
        assert!(matches!(fault, PostgresError::LongSocketPath { length, .. } if length > 110));
    }
}
