//! A backup that is put back serves what it held, to whoever has seen more as well.

use std::path::Path;
use std::process::Command;

use serde_json::Value;

use crate::harness::{Database, Server, open_folder};
use crate::service::RESOURCES;
use crate::sources::root;
use crate::stories::results::week::{FirstWeek, played};

#[test]
fn a_backup_that_is_put_back_serves_the_same_and_nobody_is_left_ahead_of_it() {
    let week = FirstWeek::paired(&["Oskrel", "Corvanel"]);
    let first = week.sides()[0].clone();
    week.report(&first, "first", &played((3, 90), (1, 40)))
        .expect(200);
    let public = week.season().for_everybody();
    let read = |server: &Server, of: &str| public.by(server.visitor()).read(of).expect(200);
    let before = RESOURCES.map(|of| read(&week.stage.server, of));

    let folder = open_folder();
    let dump = folder.path().join("tallyhost.dump");
    run("backup.sh", &week.stage.database, &dump);
    let point = week
        .season()
        .adjust(&week.players[0].id, 1, 1, "Swept the hall");
    point.expect(200);
    let lost = public.standings().expect(200).version;
    let database = week.stage.database;
    drop(week.stage.server);
    run("restore.sh", &database, &dump);

    let server = Server::start(&database);
    for (of, before) in RESOURCES.into_iter().zip(before) {
        let of = format!("{of}?at_least={lost}");
        assert_eq!(
            without_version(read(&server, &of)),
            without_version(before),
            "{of}"
        );
    }
}

#[test]
fn a_dump_that_is_cut_off_changes_nothing() {
    let week = FirstWeek::sealed(&["Oskrel", "Corvanel"]);
    let database = week.stage.database;
    drop(week.stage.server);
    let folder = open_folder();
    let dump = folder.path().join("tallyhost.dump");
    run("backup.sh", &database, &dump);
    let whole = std::fs::read(&dump).unwrap();
    std::fs::write(&dump, &whole[..whole.len() / 2]).unwrap();
    let tables = "SELECT name FROM seasons UNION ALL SELECT digest::text FROM trail";
    let before = database.texts(tables);
    assert!(
        !command("restore.sh", &database, &dump)
            .output()
            .unwrap()
            .status
            .success()
    );
    assert_eq!(database.texts(tables), before);
}

fn without_version(mut body: Value) -> Value {
    body.as_object_mut().unwrap().remove("version").unwrap();
    body
}

fn run(script: &str, database: &Database, dump: &Path) {
    let output = command(script, database, dump).output().unwrap();
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{script}: {said}");
}

/// As an operator runs it.
fn command(script: &str, database: &Database, dump: &Path) -> Command {
    let mut command = Command::new("bash");
    command
        .arg(root().join("docker").join(script))
        .arg(dump)
        .env("PGHOST", database.socket())
        .env("PGUSER", "tallyhost")
        .env("PGDATABASE", database.name());
    command
}
