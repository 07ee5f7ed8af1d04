//! The postmaster process: start, readiness, stop.

use std::fs::File;
use std::os::unix::process::CommandExt;
use std::path::PathBuf;
use std::process::{Child, Stdio};
use std::thread;
use std::time::{Duration, Instant};

use nix::sys::signal::{Signal, kill};
use nix::unistd::Pid;

use super::error::PostgresError;
use super::log::{self, DatabaseLog};
use super::owner::Owner;
use super::parent_death::die_with_this_thread;
use super::pid_file::PidFile;

/// Crash recovery included; PostgreSQL itself sets no limit.
const START_TIMEOUT: Duration = Duration::from_secs(120);
/// A fast shutdown ends sessions and writes a checkpoint.
const STOP_TIMEOUT: Duration = Duration::from_secs(60);
/// Room for the pools of several servers and for a person with a client.
const CONNECTIONS: &str = "max_connections=200";
const POLL_INTERVAL: Duration = Duration::from_millis(20);

/// What a crash of the machine may cost.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Durability {
    /// Nothing that was acknowledged.
    Full,
    /// Everything: for clusters that live as long as a test run.
    None,
}

impl Durability {
    fn settings(self) -> [&'static str; 3] {
        match self {
            Self::Full => ["fsync=on", "synchronous_commit=on", "full_page_writes=on"],
            Self::None => [
                "fsync=off",
                "synchronous_commit=off",
                "full_page_writes=off",
            ],
        }
    }
}

/// All that is needed to start the database, again and again.
#[derive(Debug)]
pub(super) struct Postmaster {
    pub(super) program: PathBuf,
    pub(super) owner: Owner,
    pub(super) cluster: PathBuf,
    pub(super) socket: PathBuf,
    pub(super) log: DatabaseLog,
    pub(super) durability: Durability,
}

impl Postmaster {
    /// Starts the database and waits until it accepts connections.
    pub(super) fn launch(&self) -> Result<Child, PostgresError> {
        let deadline = Instant::now() + START_TIMEOUT;
        loop {
            let log = self.log.open()?;
            let log_start = self.log.length();
            let mut child = self.spawn(log)?;
            if self.is_ready_before(deadline, &mut child)? {
                return Ok(child);
            }
            let said = self.log.since(log_start);
            // Sessions of a postmaster that was killed take a moment to notice and end.
            let sessions_remain = said.contains("pre-existing shared memory block");
            if !sessions_remain || Instant::now() > deadline {
                let log = self.log.path().to_owned();
                return Err(PostgresError::Exited { log, said });
            }
            thread::sleep(POLL_INTERVAL);
        }
    }

    /// Ends the database: sessions are cut, everything written, then it goes.
    pub(super) fn stop(&self, child: &mut Child) {
        let pid = Pid::from_raw(child.id().cast_signed());
        let deadline = Instant::now() + STOP_TIMEOUT;
        // A signal to a child that has already ended is no fault.
        let _ = kill(pid, Signal::SIGINT);
        while matches!(child.try_wait(), Ok(None)) {
            if Instant::now() > deadline {
                tracing::error!("the embedded database does not stop; it is cut off");
                let _ = kill(pid, Signal::SIGQUIT);
                let _ = child.wait();
                return;
            }
            thread::sleep(POLL_INTERVAL);
        }
    }

    fn spawn(&self, log: File) -> Result<Child, PostgresError> {
        let errors = log
            .try_clone()
            .map_err(PostgresError::system("cannot share", self.log.path()))?;
        let mut command = self.owner.command(&self.program);
        command
            .arg("-D")
            .arg(&self.cluster)
            .arg("-k")
            .arg(&self.socket);
        for setting in self.durability.settings().into_iter().chain(log::SETTINGS) {
            command.args(["-c", setting]);
        }
        command
            .args([
                "-c",
                "listen_addresses=",
                "-c",
                "unix_socket_permissions=0700",
            ])
            .args(["-c", "timezone=UTC", "-c", "log_timezone=UTC"])
            .args(["-c", CONNECTIONS])
            .stdin(Stdio::null())
            .stdout(log)
            .stderr(errors)
            // Ctrl-C at the terminal is for the server, which ends its database last.
            .process_group(0);
        die_with_this_thread(&mut command);
        command
            .spawn()
            .map_err(PostgresError::system("cannot start", &self.program))
    }

    /// Whether the child came to accept connections; false when it ended instead.
    fn is_ready_before(&self, deadline: Instant, child: &mut Child) -> Result<bool, PostgresError> {
        let pid = child.id().cast_signed();
        loop {
            if PidFile::read(&self.cluster).is_some_and(|file| file.ready && file.pid == pid) {
                return Ok(true);
            }
            if !matches!(child.try_wait(), Ok(None)) {
                return Ok(false);
            }
            if Instant::now() > deadline {
                self.stop(child);
                return Err(PostgresError::Slow {
                    seconds: START_TIMEOUT.as_secs(),
                    log: self.log.path().to_owned(),
                });
            }
            thread::sleep(POLL_INTERVAL);
        }
    }
}
