//! Makes the cluster with `initdb`, once.

use std::fs;
use std::io::Write;
use std::path::Path;
use std::process::{Command, Output, Stdio};

use super::binaries::Binaries;
use super::error::PostgresError;
use super::owner::Owner;
use super::postmaster::Durability;

/// The database's only user; the socket's folder is the wall, so there is no password.
pub(super) const USER: &str = "tallyhost";

/// Makes the cluster and the database in it, unless they are there.
///
/// It is made under another name and renamed when whole: a start that is cut off leaves nothing
/// that looks like a cluster.
pub(super) fn ensure(
    cluster: &Path,
    binaries: &Binaries,
    owner: &Owner,
    durability: Durability,
) -> Result<(), PostgresError> {
    if cluster.exists() {
        return Ok(());
    }
    let partial = cluster.with_extension("partial");
    if partial.exists() {
        fs::remove_dir_all(&partial).map_err(PostgresError::system("cannot remove", &partial))?;
    }
    owner.create_folder(&partial)?;
    let mut initdb = owner.command(&binaries.program("initdb"));
    initdb
        .args([
            "--auth=trust",
            "--encoding=UTF8",
            "--locale=C.UTF-8",
            "--data-checksums",
        ])
        .arg(format!("--username={USER}"))
        .arg("--pgdata")
        .arg(&partial);
    if durability == Durability::None {
        initdb.arg("--no-sync");
    }
    run(initdb, "")?;
    let mut single = owner.command(&binaries.program("postgres"));
    single
        .args(["--single", "-c", "exit_on_error=on", "-D"])
        .arg(&partial)
        .arg("postgres");
    run(single, &format!("CREATE DATABASE {USER}\n"))?;
    fs::rename(&partial, cluster).map_err(PostgresError::system("cannot rename", &partial))
}

fn run(mut command: Command, input: &str) -> Result<(), PostgresError> {
    let program = Path::new(command.get_program()).to_owned();
    let Output {
        status,
        stdout,
        stderr,
    } = command
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .and_then(|mut child| {
            if let Some(mut stdin) = child.stdin.take() {
                stdin.write_all(input.as_bytes())?;
            }
            child.wait_with_output()
        })
        .map_err(PostgresError::system("cannot run", program))?;
    if status.success() {
        return Ok(());
    }
    let said = if stderr.is_empty() { stdout } else { stderr };
    Err(PostgresError::Initdb {
        said: String::from_utf8_lossy(&said).trim().to_owned(),
    })
}
