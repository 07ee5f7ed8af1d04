//! Finds the installed PostgreSQL programs.

use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use super::error::PostgresError;

/// The oldest major version the migrations and queries are written for.
pub(super) const MINIMUM_MAJOR: u32 = 15;

/// Where packages put the server binaries; `*` stands for one folder name, a version.
const SEARCH_PATHS: [&str; 5] = [
    "/usr/lib/postgresql/*/bin",
    "/usr/pgsql-*/bin",
    "/opt/homebrew/opt/postgresql@*/bin",
    "/usr/local/opt/postgresql@*/bin",
    "/Applications/Postgres.app/Contents/Versions/*/bin",
];

/// A folder of PostgreSQL's programs.
#[derive(Debug)]
pub struct Binaries {
    folder: PathBuf,
    /// The major version, such as 15.
    pub(super) major: u32,
}

impl Binaries {
    /// The folder itself.
    #[must_use]
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// The path of one program, such as `initdb`.
    #[must_use]
    pub fn program(&self, name: &str) -> PathBuf {
        self.folder.join(name)
    }

    /// The installed PostgreSQL to use: the major of the cluster that is there, else the highest.
    pub(super) fn find(
        named: Option<&Path>,
        data_folder: &Path,
        existing: Option<u32>,
    ) -> Result<Self, PostgresError> {
        let mut installed = Self::installed(named);
        if let (Some(found), false) = (existing, installed.is_empty()) {
            return installed
                .into_iter()
                .find(|binaries| binaries.major == found)
                .ok_or_else(|| PostgresError::OtherMajor {
                    folder: data_folder.to_owned(),
                    found,
                });
        }
        installed.pop().ok_or(PostgresError::NoBinaries {
            minimum: MINIMUM_MAJOR,
        })
    }

    /// The programs for a server that runs: those of its own major version, else the newest.
    ///
    /// # Errors
    /// [`PostgresError::NoBinaries`].
    pub fn for_server(named: Option<&Path>, major: u32) -> Result<Self, PostgresError> {
        let installed = Self::installed(named).into_iter();
        installed
            .max_by_key(|binaries| (binaries.major == major, binaries.major))
            .ok_or(PostgresError::NoBinaries {
                minimum: MINIMUM_MAJOR,
            })
    }

    /// Those that are new enough, the newest last.
    fn installed(named: Option<&Path>) -> Vec<Self> {
        let folders = named.map_or_else(candidate_folders, |folder| vec![folder.to_owned()]);
        let mut installed: Vec<Self> = folders
            .into_iter()
            .filter_map(Self::inspect)
            .filter(|binaries| binaries.major >= MINIMUM_MAJOR)
            .collect();
        installed.sort_by_key(|binaries| binaries.major);
        installed
    }

    fn inspect(folder: PathBuf) -> Option<Self> {
        if !folder.join("initdb").is_file() {
            return None;
        }
        let answer = Command::new(folder.join("postgres"))
            .arg("--version")
            .output()
            .ok()?;
        let major = parse_major(&String::from_utf8_lossy(&answer.stdout))?;
        Some(Self { folder, major })
    }
}

/// The folder behind the `initdb` on the search path, then every version in the usual places.
fn candidate_folders() -> Vec<PathBuf> {
    let search_path = env::var_os("PATH").unwrap_or_default();
    let on_path = env::split_paths(&search_path)
        .filter_map(|folder| fs::canonicalize(folder.join("initdb")).ok())
        .filter_map(|program| program.parent().map(Path::to_owned));
    on_path
        .chain(SEARCH_PATHS.iter().flat_map(|place| versions(place)))
        .collect()
}

/// The folders that match a place with one `*` in one of its names.
fn versions(place: &str) -> Vec<PathBuf> {
    let Some((before, after)) = place.split_once('*') else {
        return Vec::new();
    };
    let (parent, prefix) = before.rsplit_once('/').unwrap_or(("", before));
    let after = after.trim_start_matches('/');
    fs::read_dir(parent)
        .into_iter()
        .flatten()
        .flatten()
        .filter(|entry| entry.file_name().to_string_lossy().starts_with(prefix))
        .map(|entry| entry.path().join(after))
        .collect()
}

/// 15 from `postgres (PostgreSQL) 15.18 (Debian 15.18-0+deb12u1)`, 18 from `… 18beta1`.
fn parse_major(version: &str) -> Option<u32> {
    let number = version.split_once("(PostgreSQL) ")?.1;
    let digits = number.find(|c: char| !c.is_ascii_digit())?;
    number[..digits].parse().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_major_version_is_read_from_releases_and_betas() {
        let debian = "postgres (PostgreSQL) 15.18 (Debian 15.18-0+deb12u1)\n";
        assert_eq!(parse_major(debian), Some(15));
        assert_eq!(parse_major("postgres (PostgreSQL) 18beta1\n"), Some(18));
        assert_eq!(parse_major("postgres: not found\n"), None);
    }

    #[test]
    fn a_folder_without_binaries_names_the_package_to_install() {
        let empty = env::temp_dir();
        let error = Binaries::find(Some(&empty), Path::new("/data"), None).unwrap_err();
        assert!(
            error
                .to_string()
                .contains("install the package \"postgresql\"")
        );
    }

    #[test]
    fn a_cluster_of_an_absent_major_version_is_refused() {
        let error = Binaries::find(None, Path::new("/data"), Some(9)).unwrap_err();
        let sentence = error.to_string();
        assert!(
            sentence.contains("/data holds a PostgreSQL 9 cluster"),
            "{sentence}"
        );
    }
}
