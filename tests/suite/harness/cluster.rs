//! The PostgreSQL cluster of a test run.

use std::fs::{self, Permissions};
use std::future::poll_fn;
use std::os::unix::fs::PermissionsExt;
use std::os::unix::process::CommandExt;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::LazyLock;
use std::sync::mpsc::{self, Receiver};

use tallyhost::postgres::{Cluster, Durability};
use tokio::runtime::Runtime;
use tokio_postgres::{AsyncMessage, Client, NoTls};

/// The database cluster of this test run, started by the first test that needs it.
pub static CLUSTER: LazyLock<TestCluster> = LazyLock::new(|| {
    let folder = run_folder();
    let sweeper = sweep_up_after_this_process(&folder);
    TestCluster::start(folder, Some(sweeper))
});

/// A cluster whose files a test may spoil.
pub static SPOILT: LazyLock<TestCluster> =
    LazyLock::new(|| TestCluster::start(folder("spoilt"), None));

/// Runs the few asynchronous calls to the database that the tests make themselves.
pub static RUNTIME: LazyLock<Runtime> = LazyLock::new(|| Runtime::new().unwrap());

/// A database that every test's own database is copied from.
pub const TEMPLATE: &str = "template_of_tests";

pub struct TestCluster {
    cluster: Cluster,
    folder: PathBuf,
    _sweeper: Option<Child>,
}

impl TestCluster {
    /// In a folder of its own, with a template for the databases of tests.
    pub fn start(folder: PathBuf, sweeper: Option<Child>) -> Self {
        let cluster = Cluster::start(&folder, None, Durability::None).unwrap();
        let started = Self {
            cluster,
            folder,
            _sweeper: sweeper,
        };
        started.prepare_template();
        started
    }

    /// Where the cluster is, and room for what a test run writes.
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    pub fn url_of(&self, database: &str) -> String {
        self.cluster.url_of(database)
    }

    /// Runs statements in one of the databases.
    pub fn run(&self, database: &str, statements: &str) {
        with_client(&self.url_of(database), async |client| {
            client.batch_execute(statements).await
        });
    }

    /// The first column of what a query finds, as texts.
    pub fn texts(&self, database: &str, query: &str) -> Vec<String> {
        texts_at(&self.url_of(database), query)
    }

    /// Runs statements in a transaction that stays open until the client is dropped.
    pub fn hold(&self, database: &str, statements: &str) -> Client {
        RUNTIME.block_on(async {
            let (client, connection) = tokio_postgres::connect(&self.url_of(database), NoTls)
                .await
                .unwrap();
            tokio::spawn(connection);
            client
                .batch_execute(&format!("BEGIN; {statements}"))
                .await
                .unwrap();
            client
        })
    }

    /// What is told under a name from now on, as long as the client is kept.
    pub fn listen(&self, database: &str, channel: &str) -> (Client, Receiver<String>) {
        let (tell, heard) = mpsc::channel();
        RUNTIME.block_on(async {
            let (client, mut connection) = tokio_postgres::connect(&self.url_of(database), NoTls)
                .await
                .unwrap();
            tokio::spawn(async move {
                while let Some(Ok(message)) = poll_fn(|task| connection.poll_message(task)).await {
                    if let AsyncMessage::Notification(notice) = message
                        && tell.send(notice.payload().to_owned()).is_err()
                    {
                        break;
                    }
                }
            });
            let listen = format!("LISTEN {channel}");
            client.batch_execute(&listen).await.unwrap();
            (client, heard)
        })
    }

    /// Migrates as an operator would, then hands the clock to the tests.
    fn prepare_template(&self) {
        self.run("postgres", &format!("CREATE DATABASE {TEMPLATE}"));
        let migrated = Command::new(env!("CARGO_BIN_EXE_tallyhost"))
            .arg("migrate")
            .env("DATABASE_URL", self.url_of(TEMPLATE))
            .output()
            .unwrap();
        assert!(
            migrated.status.success(),
            "{}",
            String::from_utf8_lossy(&migrated.stderr)
        );
        self.run(TEMPLATE, super::clock::TAKE_OVER);
    }
}

/// Whether the database at an address takes connections.
pub fn connects(url: &str) -> bool {
    RUNTIME
        .block_on(tokio_postgres::connect(url, NoTls))
        .is_ok()
}

/// The first column of what a query finds in the database at an address, as texts.
pub fn texts_at(url: &str, query: &str) -> Vec<String> {
    let rows = with_client(url, async |client| client.query(query, &[]).await);
    rows.iter().map(|row| row.get(0)).collect()
}

/// The SQLSTATE with which the database at an address refuses a statement.
pub fn refused_at(url: &str, statement: &str) -> String {
    let refused = with_client(url, async |client| Ok(client.query(statement, &[]).await));
    let fault = refused.expect_err(statement);
    fault.code().unwrap().code().to_owned()
}

fn with_client<R>(
    url: &str,
    act: impl AsyncFnOnce(&Client) -> Result<R, tokio_postgres::Error>,
) -> R {
    RUNTIME.block_on(async {
        let (client, connection) = tokio_postgres::connect(url, NoTls).await.unwrap();
        let connection = tokio::spawn(connection);
        let answer = act(&client).await.unwrap();
        drop(client);
        // The session must be over before its database can be copied or dropped.
        connection.await.unwrap().unwrap();
        answer
    })
}

/// The folder of a further cluster, within what a test run writes.
pub(super) fn folder(name: &str) -> PathBuf {
    let folder = CLUSTER.folder().join(name);
    fs::create_dir(&folder).unwrap();
    fs::set_permissions(&folder, Permissions::from_mode(0o711)).unwrap();
    folder
}

/// A folder for what a test run writes; removed when the run ends.
fn run_folder() -> PathBuf {
    let folder = tempfile::Builder::new()
        .prefix("tallyhost-")
        .tempdir()
        .unwrap()
        .keep();
    fs::set_permissions(&folder, Permissions::from_mode(0o711)).unwrap();
    folder
}

/// Removes the folder once this process has ended, however it ends: a shell waits for the other end
/// of its standard input to close, then for the database to be gone. No child of this process holds
/// that other end.
fn sweep_up_after_this_process(folder: &Path) -> Child {
    let script = r#"
        read -r _
        for _ in $(seq 300); do find "$1" -name postmaster.pid | grep -q . || break; sleep 0.1; done
        rm -rf "$1"
    "#;
    Command::new("sh")
        .args(["-c", script, "sh"])
        .arg(folder)
        .stdin(Stdio::piped())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .process_group(0)
        .spawn()
        .unwrap()
}
