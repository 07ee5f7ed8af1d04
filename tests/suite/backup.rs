//! A backup that is put back serves what it held, to whoever has seen more as well.

use std::fs;
use std::os::unix::fs::PermissionsExt;
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
    let whole = fs::read(&dump).unwrap();
    fs::write(&dump, &whole[..whole.len() / 2]).unwrap();
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

#[test]
fn the_private_database_is_backed_up_while_its_server_runs_and_put_back_elsewhere() {
    let [data, elsewhere] = [open_folder(), open_folder()];
    let file = data.path().join("league.backup");
    let server = Server::embedded(data.path());
    server.register("Wennable");
    let said = succeed(backup(&file).arg("--data").arg(data.path()));
    assert!(said.contains("restored on trial, all the same"), "{said}");
    let facts = fs::metadata(&file).unwrap();
    assert_eq!(facts.permissions().mode() & 0o777, 0o600);
    assert_eq!(parts_beside(&file), 0);
    let in_use = refuse(restore(&file).arg("--data").arg(data.path()));
    assert!(in_use.contains("in use by another tallyhost"), "{in_use}");
    drop(server);

    succeed(restore(&file).arg("--data").arg(elsewhere.path()));
    let server = Server::embedded(elsewhere.path());
    server.greet("Wennable").me().expect(200);
    drop(server);
    succeed(backup(&file).arg("--data").arg(elsewhere.path()));
    let holds = refuse(restore(&file).arg("--data").arg(elsewhere.path()));
    assert!(holds.contains("--replace"), "{holds}");
}

#[test]
fn a_backup_of_a_database_that_others_run_takes_the_place_of_what_came_after() {
    let week = FirstWeek::paired(&["Oskrel", "Corvanel"]);
    let public = week.season().for_everybody();
    let before = public.read("standings").expect(200);
    let folder = open_folder();
    let file = folder.path().join("league.backup");
    succeed(backup(&file).env("DATABASE_URL", week.stage.database.url()));
    let point = week
        .season()
        .adjust(&week.players[0].id, 1, 1, "Swept the hall");
    point.expect(200);
    let lost = public.standings().expect(200).version;
    let database = week.stage.database;
    drop(week.stage.server);
    database.run("CREATE TABLE of_a_later_version AS SELECT club_id FROM clubs");

    let holds = refuse(restore(&file).env("DATABASE_URL", database.url()));
    assert!(holds.contains("--replace"), "{holds}");
    succeed(
        restore(&file)
            .arg("--replace")
            .env("DATABASE_URL", database.url()),
    );
    let server = Server::start(&database);
    let standings = format!("standings?at_least={lost}");
    let after = public.by(server.visitor()).read(&standings).expect(200);
    assert_eq!(without_version(after), without_version(before));
    let later = "SELECT 'there' FROM pg_tables WHERE tablename = 'of_a_later_version'";
    assert_eq!(database.texts(later), Vec::<String>::new());
}

#[test]
fn a_backup_that_is_cut_off_changes_nothing() {
    let week = FirstWeek::sealed(&["Oskrel", "Corvanel"]);
    let database = week.stage.database;
    drop(week.stage.server);
    let folder = open_folder();
    let file = folder.path().join("league.backup");
    succeed(backup(&file).env("DATABASE_URL", database.url()));
    let whole = fs::read(&file).unwrap();
    fs::write(&file, &whole[..whole.len() / 2]).unwrap();
    let tables = "SELECT name FROM seasons UNION ALL SELECT digest::text FROM trail";
    let before = database.texts(tables);
    let said = refuse(
        restore(&file)
            .arg("--replace")
            .env("DATABASE_URL", database.url()),
    );
    assert!(said.contains("pg_restore"), "{said}");
    assert_eq!(database.texts(tables), before);
}

#[test]
fn what_cannot_be_restored_is_no_backup() {
    let database = Database::create();
    let server = Server::start(&database);
    server.register("Wennable");
    database.run(
        "CREATE ROLE known_here_alone;
        CREATE POLICY known_here_alone ON seasons TO known_here_alone",
    );
    let folder = open_folder();
    let file = folder.path().join("league.backup");
    let said = refuse(backup(&file).env("DATABASE_URL", database.url()));
    assert!(said.contains("known_here_alone"), "{said}");
    assert!(!file.exists());
    assert_eq!(parts_beside(&file), 0);
    let empty = Database::empty();
    let said = refuse(backup(&file).env("DATABASE_URL", empty.url()));
    assert!(said.contains("holds nothing"), "{said}");
}

fn backup(file: &Path) -> Command {
    tallyhost("backup", file)
}

fn restore(file: &Path) -> Command {
    tallyhost("restore", file)
}

fn tallyhost(word: &str, file: &Path) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tallyhost"));
    command.arg(word).arg(file).env_remove("DATABASE_URL");
    command
}

fn succeed(command: &mut Command) -> String {
    let output = command.output().unwrap();
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{said}");
    String::from_utf8(output.stdout).unwrap()
}

fn refuse(command: &mut Command) -> String {
    let output = command.output().unwrap();
    assert!(!output.status.success());
    String::from_utf8(output.stderr).unwrap()
}

/// Files beside one that are not whole.
fn parts_beside(file: &Path) -> usize {
    let entries = fs::read_dir(file.parent().unwrap()).unwrap();
    let names = entries.map(|entry| entry.unwrap().file_name());
    names
        .filter(|name| name.to_string_lossy().ends_with(".part"))
        .count()
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
