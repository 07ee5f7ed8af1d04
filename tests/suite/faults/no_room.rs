//! A disk that is full, for one table and for what the database puts aside.

use std::fs;
use std::os::unix::fs::symlink;
use std::path::{Path, PathBuf};

use super::found_club;
use crate::harness::{Database, SPOILT, Server};

#[test]
fn a_full_disk_refuses_writes_for_the_moment_and_the_server_is_not_ready_until_there_is_room() {
    let database = Database::create_in(&SPOILT);
    let server = Server::start(&database);
    let wennable = server.register("Wennable");
    let is_ready = |status| server.visitor().get("/health/ready").with_status(status);
    is_ready(200);

    let full = FullDisk::under(&database, "clubs");
    let refused = found_club(&wennable, "lamplit-ford");
    assert!(refused.header("retry-after").is_some(), "{refused:?}");
    refused.refused(503, "unavailable");
    is_ready(503);
    server.visitor().get("/health/live").with_status(200);
    wennable.me().expect(200);
    is_ready(503);

    drop(full);
    is_ready(200);
    found_club(&wennable, "lamplit-ford").expect(201);
    assert_eq!(database.texts("SELECT slug FROM clubs"), ["lamplit-ford"]);
}

/// A disk without room for more rows of a table that has none yet, nor for temporary files.
struct FullDisk<'d> {
    database: &'d Database,
    table: PathBuf,
    temporary: PathBuf,
}

impl<'d> FullDisk<'d> {
    fn under(database: &'d Database, table: &str) -> Self {
        let only = |query: &str| database.texts(query).remove(0);
        let data = PathBuf::from(only("SELECT current_setting('data_directory')"));
        let file = only(&format!("SELECT pg_relation_filepath('{table}')"));
        let full = Self {
            database,
            table: data.join(file),
            temporary: data.join("base/pgsql_tmp"),
        };
        assert_eq!(fs::metadata(&full.table).unwrap().len(), 0, "{table}");
        set_aside(&full.table);
        symlink("/dev/full", &full.table).unwrap();
        if full.temporary.exists() {
            set_aside(&full.temporary);
        }
        symlink("/nowhere", &full.temporary).unwrap();
        full.reopen_files();
        full
    }

    /// Sessions keep files open: new ones open them anew.
    fn reopen_files(&self) {
        self.database.run(
            "SELECT pg_terminate_backend(pid) FROM pg_stat_activity
                WHERE datname = current_database() AND pid <> pg_backend_pid()",
        );
    }
}

impl Drop for FullDisk<'_> {
    fn drop(&mut self) {
        for path in [&self.table, &self.temporary] {
            fs::remove_file(path).unwrap();
            if aside(path).exists() {
                fs::rename(aside(path), path).unwrap();
            }
        }
        self.reopen_files();
    }
}

fn set_aside(path: &Path) {
    fs::rename(path, aside(path)).unwrap();
}

fn aside(path: &Path) -> PathBuf {
    path.with_extension("aside")
}
