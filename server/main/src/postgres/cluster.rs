//! A running private cluster, watched by a thread of its own.

use std::io;
use std::path::{Path, PathBuf};
use std::process::Child;
use std::sync::mpsc::{self, Receiver, RecvTimeoutError, Sender};
use std::thread::{self, JoinHandle};
use std::time::Duration;

use percent_encoding::{NON_ALPHANUMERIC, utf8_percent_encode};

use super::binaries::Binaries;
use super::error::PostgresError;
use super::folder::{self, DataFolder};
use super::initdb::{self, USER};
use super::lock::FolderLock;
use super::log::DatabaseLog;
use super::orphan;
use super::owner::Owner;
use super::postmaster::{Durability, Postmaster};

/// How often the watcher checks that the database runs.
const POLL_INTERVAL: Duration = Duration::from_millis(100);
/// How long it waits after a start that failed.
const RESTART_DELAY: Duration = Duration::from_secs(1);

/// A running private database. Dropping it stops the database and frees the data folder.
#[derive(Debug)]
pub struct Cluster {
    socket: PathBuf,
    until_dropped: Option<Sender<()>>,
    watch: Option<JoinHandle<()>>,
}

impl Cluster {
    /// Starts the database in `data_folder`, making folder and cluster where they are missing.
    ///
    /// `postgres_bin` names the folder of the server binaries; without it the usual places are
    /// searched. A postmaster that ends unasked is started again.
    ///
    /// # Errors
    /// [`PostgresError`], each a sentence for the person who starts the server; nothing runs then.
    pub fn start(
        data_folder: &Path,
        postgres_bin: Option<&Path>,
        durability: Durability,
    ) -> Result<Self, PostgresError> {
        let owner = Owner::choose()?;
        let folder = DataFolder::open(data_folder, &owner)?;
        let lock = FolderLock::take(folder.root())?;
        let binaries = Binaries::find(postgres_bin, folder.root(), folder.existing_major()?)?;
        let cluster = folder.cluster(binaries.major);
        initdb::ensure(&cluster, &binaries, &owner, durability)?;
        owner.create_folder(&folder.socket())?;
        orphan::stop(&cluster)?;
        let postmaster = Postmaster {
            program: binaries.program("postgres"),
            owner,
            cluster,
            socket: folder.socket(),
            log: DatabaseLog::new(folder.log(binaries.major)),
            durability,
        };
        Self::watch(postmaster, lock)
    }

    /// The address of one of its databases, for any PostgreSQL client on this machine.
    #[must_use]
    pub fn url_of(&self, database: &str) -> String {
        url_at(&self.socket, database)
    }

    /// The address of the server's own database in a data folder that another process uses.
    #[must_use]
    pub fn url_in(data_folder: &Path) -> String {
        url_at(&folder::socket_in(data_folder), USER)
    }

    /// The address of the server's own database.
    #[must_use]
    pub fn url(&self) -> String {
        self.url_of(USER)
    }

    /// The database dies with the thread that starts it, so that thread lives as long as this value.
    fn watch(postmaster: Postmaster, lock: FolderLock) -> Result<Self, PostgresError> {
        let socket = postmaster.socket.clone();
        let (until_dropped, dropped) = mpsc::channel();
        let (first, first_start) = mpsc::channel();
        let watch = thread::Builder::new()
            .name("postgres".to_owned())
            .spawn(move || {
                let _lock = lock;
                match postmaster.launch() {
                    Ok(child) => {
                        let _ = first.send(Ok(()));
                        supervise(&postmaster, child, &dropped);
                    }
                    Err(fault) => {
                        let _ = first.send(Err(fault));
                    }
                }
            })
            .map_err(PostgresError::system("cannot start a thread for", &socket))?;
        let cluster = Self {
            socket,
            until_dropped: Some(until_dropped),
            watch: Some(watch),
        };
        first_start
            .recv()
            .map_err(io::Error::other)
            .map_err(PostgresError::system("cannot watch", &cluster.socket))??;
        Ok(cluster)
    }
}

impl Drop for Cluster {
    fn drop(&mut self) {
        self.until_dropped = None;
        if let Some(watch) = self.watch.take() {
            let _ = watch.join();
        }
    }
}

fn url_at(socket: &Path, database: &str) -> String {
    let socket = socket.to_string_lossy();
    let host = utf8_percent_encode(&socket, NON_ALPHANUMERIC);
    format!("postgresql://{USER}@/{database}?host={host}")
}

/// Starts the database again whenever it ends, until the cluster is dropped.
fn supervise(postmaster: &Postmaster, mut child: Child, dropped: &Receiver<()>) {
    let mut wait = POLL_INTERVAL;
    while matches!(dropped.recv_timeout(wait), Err(RecvTimeoutError::Timeout)) {
        wait = POLL_INTERVAL;
        if let Err(fault) = postmaster.log.rotate() {
            tracing::warn!(%fault, "the embedded database's log cannot be begun anew");
        }
        let Ok(Some(status)) = child.try_wait() else {
            continue;
        };
        tracing::error!(%status, "the embedded database ended unasked; starting it again");
        match postmaster.launch() {
            Ok(next) => child = next,
            Err(fault) => {
                tracing::error!(%fault, "the embedded database does not start");
                wait = RESTART_DELAY;
            }
        }
    }
    postmaster.stop(&mut child);
}
