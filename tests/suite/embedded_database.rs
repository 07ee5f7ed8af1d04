//! The private database of a server without `DATABASE_URL`.

use std::fs::{self, Permissions};
use std::os::unix::fs::PermissionsExt;
use std::path::{Path, PathBuf};
use std::time::Duration;

use nix::sys::signal::{Signal, kill};
use nix::unistd::Uid;
use serde_json::json;
use tallyhost::postgres::{Cluster, Durability, PostgresError};
use tokio_postgres::{Client, NoTls, SimpleQueryMessage};

use crate::harness::{POLL_INTERVAL, Server, cluster_in, open_folder, postmaster_in};

#[tokio::test]
async fn facts_outlive_a_restart() {
    let folder = open_folder();
    let cluster = start(folder.path()).unwrap();
    let client = connect(&cluster).await.unwrap();
    client
        .batch_execute("CREATE TABLE clubs AS SELECT 'Lanternfold' AS name")
        .await
        .unwrap();
    drop(cluster);

    let cluster = start(folder.path()).unwrap();
    assert_eq!(
        answer(&cluster, "SELECT name FROM clubs").await,
        "Lanternfold"
    );
}

#[tokio::test]
async fn it_listens_on_no_network_port_and_loses_nothing_that_was_acknowledged() {
    let folder = open_folder();
    let cluster = Cluster::start(folder.path(), None, Durability::Full).unwrap();
    for (setting, value) in [
        ("listen_addresses", ""),
        ("data_checksums", "on"),
        ("fsync", "on"),
        ("full_page_writes", "on"),
        ("synchronous_commit", "on"),
        ("TimeZone", "UTC"),
        ("server_encoding", "UTF8"),
    ] {
        assert_eq!(
            answer(&cluster, &format!("SHOW {setting}")).await,
            value,
            "{setting}"
        );
    }
}

#[tokio::test]
async fn a_database_that_is_killed_comes_back_with_every_committed_fact() {
    let folder = open_folder();
    let cluster = Cluster::start(folder.path(), None, Durability::Full).unwrap();
    let client = connect(&cluster).await.unwrap();
    client
        .batch_execute("CREATE TABLE weeks AS SELECT 250 AS cap")
        .await
        .unwrap();

    kill(postmaster_in(folder.path()), Signal::SIGKILL).unwrap();
    let client = tokio::time::timeout(Duration::from_secs(60), async {
        let mut ticks = tokio::time::interval(POLL_INTERVAL);
        loop {
            ticks.tick().await;
            match connect(&cluster).await {
                Ok(client) if !client.is_closed() => break client,
                _ => {}
            }
        }
    });
    let row = client
        .await
        .unwrap()
        .query_one("SELECT cap FROM weeks", &[])
        .await
        .unwrap();
    assert_eq!(row.get::<_, i32>(0), 250);
}

#[test]
fn its_log_tells_nothing_that_people_typed_and_only_its_owner_may_read_it() {
    let folder = open_folder();
    let server = Server::embedded(folder.path());
    let wennable = server.register("Wennable");
    let club = json!({ "name": "Lamplit Ford", "slug": "lamplit-ford" });
    wennable.post("/api/v1/clubs", &club).with_status(201);
    wennable.post("/api/v1/clubs", &club).with_status(409);
    let logs: Vec<PathBuf> = fs::read_dir(folder.path())
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.to_string_lossy().contains(".log"))
        .collect();
    let said: String = logs
        .iter()
        .map(|log| fs::read_to_string(log).unwrap())
        .collect();
    assert!(said.contains("clubs_slug_taken"), "{said}");
    for typed in ["wennable", "lamplit-ford"] {
        assert!(!said.to_lowercase().contains(typed), "{said}");
    }
    for log in logs {
        let mode = fs::metadata(&log).unwrap().permissions().mode();
        assert_eq!(mode & 0o777, 0o600, "{}", log.display());
    }
}

#[test]
fn a_folder_in_use_is_refused_and_free_again_afterwards() {
    let folder = open_folder();
    let first = start(folder.path()).unwrap();
    let refusal = start(folder.path()).unwrap_err().to_string();
    let holder = format!(
        "in use by another tallyhost (process {})",
        std::process::id()
    );
    assert!(refusal.contains(&holder), "{refusal}");
    drop(first);
    start(folder.path()).unwrap();
}

#[test]
fn a_cluster_of_a_major_version_that_is_not_installed_is_refused() {
    let folder = open_folder();
    fs::create_dir(folder.path().join("pg9")).unwrap();
    let refusal = start(folder.path()).unwrap_err();
    assert!(
        matches!(refusal, PostgresError::OtherMajor { found: 9, .. }),
        "{refusal}"
    );
}

#[test]
fn a_start_that_was_cut_off_leaves_nothing_that_looks_like_a_cluster() {
    let folder = open_folder();
    drop(start(folder.path()).unwrap());
    let cluster = cluster_in(folder.path());
    fs::remove_file(cluster.join("PG_VERSION")).unwrap();
    fs::rename(&cluster, cluster.with_extension("partial")).unwrap();
    start(folder.path()).unwrap();
    assert!(cluster.join("PG_VERSION").exists());
    assert!(!cluster.with_extension("partial").exists());
}

/// Only root hands the database to another user, who may then stand before a closed folder.
#[test]
fn a_parent_folder_that_is_closed_to_the_databases_user_is_named() {
    if !Uid::effective().is_root() {
        return;
    }
    let closed = open_folder();
    fs::set_permissions(closed.path(), Permissions::from_mode(0o700)).unwrap();
    let refusal = start(&closed.path().join("data")).unwrap_err();
    assert!(
        matches!(&refusal, PostgresError::Unreachable { folder, .. } if folder == closed.path()),
        "{refusal}"
    );
}

fn start(folder: &Path) -> Result<Cluster, PostgresError> {
    Cluster::start(folder, None, Durability::None)
}

async fn connect(cluster: &Cluster) -> Result<Client, tokio_postgres::Error> {
    let (client, connection) = tokio_postgres::connect(&cluster.url(), NoTls).await?;
    tokio::spawn(connection);
    Ok(client)
}

/// The first column of the first row, as text.
async fn answer(cluster: &Cluster, statement: &str) -> String {
    let client = connect(cluster).await.unwrap();
    let messages = client.simple_query(statement).await.unwrap();
    let value = messages.iter().find_map(|message| match message {
        SimpleQueryMessage::Row(row) => row.get(0),
        _ => None,
    });
    value.unwrap().to_owned()
}
