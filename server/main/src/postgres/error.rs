//! The errors of the embedded database: each is one sentence that says what to do.

use std::io;
use std::path::PathBuf;

/// Why the embedded database cannot be used.
#[derive(Debug, thiserror::Error)]
pub enum PostgresError {
    /// Neither the override, the search path nor a usual place holds the server binaries.
    #[error(
        "no PostgreSQL {minimum} or later was found: install the package \"postgresql\" \
         (Debian, Ubuntu), or name the folder that holds initdb and postgres with --postgres-bin, \
         or set DATABASE_URL"
    )]
    NoBinaries {
        /// The oldest major version the server works with.
        minimum: u32,
    },
    /// The folder's cluster was made by a major version that is not installed.
    #[error(
        "the data folder {} holds a PostgreSQL {found} cluster, but no PostgreSQL {found} is \
         installed here: install the package \"postgresql-{found}\", or start with an empty data \
         folder and restore a backup into it", folder.display()
    )]
    OtherMajor {
        folder: PathBuf,
        /// The major version of the cluster in it.
        found: u32,
    },
    /// Another server holds the folder's lock.
    #[error("the data folder {} is in use by another tallyhost (process {holder})", folder.display())]
    InUse {
        folder: PathBuf,
        /// The process id that the holder wrote into the lock file.
        holder: String,
    },
    /// The database's user cannot pass through a folder on the way.
    #[error(
        "the database runs as the user \"{user}\", who may not enter {}: choose another data \
         folder with --data, or allow it with chmod o+x", folder.display()
    )]
    Unreachable {
        /// The first folder that is closed.
        folder: PathBuf,
        /// The user the database runs as.
        user: String,
    },
    /// The operating system limits the length of a Unix socket's path.
    #[error(
        "the socket {} has a path of {length} bytes and the system allows {limit}: choose a data \
         folder with a shorter path", socket.display()
    )]
    LongSocketPath {
        /// The whole path of the socket.
        socket: PathBuf,
        /// Its length in bytes.
        length: usize,
        /// The most the system allows, in bytes.
        limit: usize,
    },
    /// The server runs as root and the system has no user to hand the database to.
    #[error(
        "PostgreSQL does not run as root, and this system has neither a user \"postgres\" nor \
         \"nobody\": start tallyhost as another user"
    )]
    NoUser,
    /// A postmaster from an earlier server still runs and does not end.
    #[error(
        "PostgreSQL process {pid} of an earlier tallyhost still runs on this data folder and does \
         not stop"
    )]
    Orphan { pid: i32 },
    /// `initdb` or the first statement failed.
    #[error("the database cluster could not be made: {said}")]
    Initdb {
        /// The last lines it printed.
        said: String,
    },
    /// The postmaster ended before it accepted connections.
    #[error("PostgreSQL did not start; the end of {} says: {said}", log.display())]
    Exited { log: PathBuf, said: String },
    /// The postmaster runs but accepts no connections in time.
    #[error("PostgreSQL was not ready after {seconds} s; see {}", log.display())]
    Slow {
        /// How long it was given.
        seconds: u64,
        log: PathBuf,
    },
    /// The operating system refused something.
    #[error("{action} {}: {cause}", path.display())]
    System {
        /// What was tried, as in "cannot open".
        action: &'static str,
        /// On what.
        path: PathBuf,
        cause: io::Error,
    },
}

impl PostgresError {
    /// For `map_err`: names the action and the path beside the system's own words.
    pub(super) fn system(
        action: &'static str,
        path: impl Into<PathBuf>,
    ) -> impl FnOnce(io::Error) -> Self {
        let path = path.into();
        move |cause| Self::System {
            action,
            path,
            cause,
        }
    }
}
