//! Stops an orphaned postmaster, which outlived the server that started it.

use std::fs;
use std::path::Path;
use std::thread;
use std::time::{Duration, Instant};

use nix::sys::signal::{Signal, kill};
use nix::unistd::Pid;

use super::error::PostgresError;
use super::pid_file::PidFile;

const STOP_TIMEOUT: Duration = Duration::from_secs(30);

/// Stops a postmaster that outlived the server that started it, as after `kill -9`.
///
/// The lock on the data folder is held, so no living server needs it. Where the system has no
/// `/proc`, PostgreSQL itself refuses to start beside it.
pub(super) fn stop(cluster: &Path) -> Result<(), PostgresError> {
    let Some(PidFile { pid, .. }) = PidFile::read(cluster) else {
        return Ok(());
    };
    let deadline = Instant::now() + STOP_TIMEOUT;
    while is_postmaster_of(pid, cluster) {
        if Instant::now() > deadline {
            return Err(PostgresError::Orphan { pid });
        }
        // It may already be ending: a signal to a process that is gone is no fault.
        let _ = kill(Pid::from_raw(pid), Signal::SIGINT);
        thread::sleep(Duration::from_millis(20));
    }
    Ok(())
}

/// A postmaster's working folder is its cluster; a stale file may name an unrelated process.
fn is_postmaster_of(pid: i32, cluster: &Path) -> bool {
    let Ok(cluster) = fs::canonicalize(cluster) else {
        return false;
    };
    fs::read_link(format!("/proc/{pid}/cwd")).is_ok_and(|folder| folder == cluster)
}
