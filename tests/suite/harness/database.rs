//! A database of one test, with its notices.

use std::path::PathBuf;
use std::sync::atomic::{AtomicU32, Ordering};
use std::sync::mpsc::Receiver;

use tokio_postgres::Client;

use super::clock::Clock;
use super::cluster::{CLUSTER, TEMPLATE, TestCluster};
use super::until::TIMEOUT;

/// One test's own database.
pub struct Database {
    cluster: &'static TestCluster,
    name: String,
}

impl Database {
    /// With the newest schema and a clock that the test moves.
    pub fn create() -> Self {
        Self::create_in(&CLUSTER)
    }

    /// The same in another cluster than the one that most tests share.
    pub fn create_in(cluster: &'static TestCluster) -> Self {
        Self::copy_of(cluster, TEMPLATE)
    }

    /// With no schema at all.
    pub fn empty() -> Self {
        Self::copy_of(&CLUSTER, "template0")
    }

    /// With everything that this one has; no server may be using it.
    pub fn copy(&self) -> Self {
        Self::copy_of(self.cluster, &self.name)
    }

    fn copy_of(cluster: &'static TestCluster, template: &str) -> Self {
        static COUNT: AtomicU32 = AtomicU32::new(0);
        let name = format!("test_{}", COUNT.fetch_add(1, Ordering::Relaxed));
        cluster.run(
            "postgres",
            &format!("CREATE DATABASE {name} TEMPLATE {template}"),
        );
        Self { cluster, name }
    }

    pub fn url(&self) -> String {
        self.cluster.url_of(&self.name)
    }

    /// The folder of its cluster's socket.
    pub fn socket(&self) -> PathBuf {
        self.cluster.folder().join("socket")
    }

    /// What it is called in its cluster.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Runs statements behind the server's back.
    pub fn run(&self, statements: &str) {
        self.cluster.run(&self.name, statements);
    }

    /// The first column of what a query finds, as texts.
    pub fn texts(&self, query: &str) -> Vec<String> {
        self.cluster.texts(&self.name, query)
    }

    /// Runs statements in a transaction that stays open until the answer is dropped.
    pub fn hold(&self, statements: &str) -> Client {
        self.cluster.hold(&self.name, statements)
    }

    /// Waits until a query finds something. A change of a season may bring it about: the database tells
    /// of each with its commit, so that one look after each notice is enough.
    #[track_caller]
    pub fn wait_for(&self, what: &str, query: &str) {
        let changes = self.listen("season_changed");
        while self.texts(query).is_empty() {
            changes.next(what);
        }
    }

    /// Hears what the database tells under a name from now on.
    pub fn listen(&self, channel: &'static str) -> Listener {
        let (session, heard) = self.cluster.listen(&self.name, channel);
        Listener {
            heard,
            _session: session,
            cluster: self.cluster,
            database: self.name.clone(),
            channel,
        }
    }

    pub fn clock(&self) -> Clock<'_> {
        Clock(self)
    }
}

impl Drop for Database {
    fn drop(&mut self) {
        self.cluster.run(
            "postgres",
            &format!("DROP DATABASE {} WITH (FORCE)", self.name),
        );
    }
}

/// Somebody who hears what a database tells.
pub struct Listener {
    heard: Receiver<String>,
    _session: Client,
    cluster: &'static TestCluster,
    database: String,
    channel: &'static str,
}

impl Listener {
    /// Waits for the next notice.
    #[track_caller]
    pub fn next(&self, what: &str) -> String {
        let notice = self.heard.recv_timeout(TIMEOUT);
        notice.unwrap_or_else(|_| panic!("not within a minute: {what}"))
    }

    /// What was told so far. A word of our own is the last to be heard, so that nothing is waited for
    /// that never comes.
    pub fn heard(self) -> Vec<String> {
        const LAST: &str = "no more";
        let tell = format!("NOTIFY {}, '{LAST}'", self.channel);
        self.cluster.run(&self.database, &tell);
        let told = self.heard.iter();
        told.take_while(|word| word != LAST).collect()
    }
}
