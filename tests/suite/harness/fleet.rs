//! A primary and a streaming replica of it, two clusters on this machine. Each listens on a socket in
//! its own folder, so that no port can be taken.

use std::fs::{self, Permissions};
use std::os::unix::fs::{MetadataExt, PermissionsExt, chown};
use std::os::unix::process::CommandExt;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::LazyLock;
use std::sync::atomic::{AtomicU32, Ordering};

use tallyhost::postgres::{Cluster, Durability};

use super::cluster::{TestCluster, folder, texts_at};
use super::folder::cluster_in;

/// The primary that replicas follow.
pub static PRIMARY: LazyLock<TestCluster> =
    LazyLock::new(|| TestCluster::start(folder("primary"), None));

/// A replica of it that is never stopped.
pub static REPLICA: LazyLock<Replica> = LazyLock::new(Replica::follow);

/// Where a replica that was cut off finds its primary, as SQL.
pub struct WayBack(String);

/// A streaming replica of the primary.
pub struct Replica {
    folder: PathBuf,
    cluster: Option<Cluster>,
}

impl Replica {
    /// Copies the primary and follows it.
    pub fn follow() -> Self {
        static COUNT: AtomicU32 = AtomicU32::new(0);
        let name = format!("replica-{}", COUNT.fetch_add(1, Ordering::Relaxed));
        let mut replica = Self {
            folder: folder(&name),
            cluster: None,
        };
        copy_primary(&replica.folder, &name.replace('-', "_"));
        replica.start();
        replica
    }

    /// Starts it again after a stop.
    pub fn start(&mut self) {
        let cluster = Cluster::start(&self.folder, None, Durability::None);
        self.cluster = Some(cluster.unwrap());
    }

    /// Stops it, as for maintenance; whoever reads from it loses the connection.
    pub fn stop(&mut self) {
        self.cluster = None;
    }

    /// The address of one of the primary's databases, as this replica has it.
    pub fn url_of(&self, database: &str) -> String {
        self.cluster.as_ref().unwrap().url_of(database)
    }

    /// From now on it receives and shows nothing new.
    pub fn pause(&self) {
        self.look("SELECT pg_wal_replay_pause()::text");
    }

    /// Catches up and goes on.
    pub fn resume(&self) {
        self.look("SELECT pg_wal_replay_resume()::text");
    }

    /// From now on it hears nothing of the primary, which goes on. The way back is a statement.
    pub fn cut_off(&self) -> WayBack {
        let conninfo = "SELECT quote_literal(current_setting('primary_conninfo'))";
        let conninfo = texts_at(&self.url_of("postgres"), conninfo).remove(0);
        self.follow_at("''");
        WayBack(conninfo)
    }

    /// Hears of the primary again.
    pub fn reconnect(&self, WayBack(conninfo): WayBack) {
        self.follow_at(&conninfo);
    }

    fn follow_at(&self, conninfo: &str) {
        self.look(&format!("ALTER SYSTEM SET primary_conninfo = {conninfo}"));
        self.look("SELECT pg_reload_conf()::text");
    }

    fn look(&self, query: &str) {
        texts_at(&self.url_of("postgres"), query);
    }
}

/// As the user whom the primary belongs to: PostgreSQL refuses to run as root. The slot has the primary
/// keep what this replica has not received yet, however long it is away and whatever others write.
fn copy_primary(into: &Path, slot: &str) {
    let primary = cluster_in(PRIMARY.folder());
    let owner = fs::metadata(&primary).unwrap();
    let copy = into.join(primary.file_name().unwrap());
    fs::create_dir(&copy).unwrap();
    chown(&copy, Some(owner.uid()), Some(owner.gid())).unwrap();
    fs::set_permissions(&copy, Permissions::from_mode(0o700)).unwrap();
    let mut command = Command::new(beside_postgres(&primary, "pg_basebackup"));
    command
        .args(["--checkpoint=fast", "--write-recovery-conf", "--no-sync"])
        .args(["--create-slot", "--slot", slot])
        .arg("--pgdata")
        .arg(&copy)
        .arg("--dbname")
        .arg(PRIMARY.url_of("postgres"))
        .current_dir("/");
    if nix::unistd::Uid::effective().is_root() {
        command.uid(owner.uid()).gid(owner.gid());
    }
    let output = command.output().unwrap();
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
}

/// A program of the PostgreSQL that runs a cluster.
pub fn beside_postgres(cluster: &Path, program: &str) -> PathBuf {
    let options = fs::read_to_string(cluster.join("postmaster.opts")).unwrap();
    let postgres = options.split_whitespace().next().unwrap();
    Path::new(postgres).with_file_name(program)
}
