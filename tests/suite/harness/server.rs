//! The server as a child process.

use std::fs::{self, File};
use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdout, Command, ExitStatus, Stdio};
use std::sync::atomic::{AtomicU32, Ordering};

use nix::sys::signal::{Signal, kill};
use nix::unistd::Pid;
use tallyhost::postgres::die_with_this_thread;

use super::actor::Actor;
use super::browser::Browser;
use super::cluster::CLUSTER;
use super::database::Database;

/// A free port of the loopback.
const ANYWHERE: &str = "127.0.0.1:0";

/// The real binary, running as a child on a free port of the loopback.
pub struct Server {
    child: Child,
    address: String,
    /// Where its metrics are; another revision's server may have none.
    metrics: Option<String>,
    log: PathBuf,
    /// Kept open, so that the server can go on writing.
    output: BufReader<ChildStdout>,
}

impl Server {
    /// Starts a server on a test's database.
    pub fn start(database: &Database) -> Self {
        Self::launch(|command| command.env("DATABASE_URL", database.url()))
    }

    /// Starts a server where another one was, on a test's database.
    pub fn start_at(address: &str, database: &Database) -> Self {
        let listen = address.trim_start_matches("http://").to_owned();
        Self::run("serve", &listen, |command| {
            command.env("DATABASE_URL", database.url())
        })
    }

    /// Starts a server with an embedded database in a folder.
    pub fn embedded(folder: &Path) -> Self {
        Self::launch(|command| command.arg("--data").arg(folder).env_remove("DATABASE_URL"))
    }

    /// Starts the demo on a database.
    pub fn demo(database: &Database) -> Self {
        Self::run("demo", ANYWHERE, |command| {
            command.env("DATABASE_URL", database.url())
        })
    }

    /// Starts a server as `configure` says.
    pub fn launch(configure: impl FnOnce(&mut Command) -> &mut Command) -> Self {
        Self::run("serve", ANYWHERE, configure)
    }

    /// Starts another server than this revision's, on a test's database.
    pub fn other(binary: &Path, database: &Database) -> Self {
        Self::run_binary(binary, "serve", ANYWHERE, |command| {
            command.env("DATABASE_URL", database.url())
        })
    }

    fn run(word: &str, listen: &str, configure: impl FnOnce(&mut Command) -> &mut Command) -> Self {
        let binary = Path::new(env!("CARGO_BIN_EXE_tallyhost"));
        let mut server = Self::run_binary(binary, word, listen, |command| {
            configure(command.args(["--metrics-listen", ANYWHERE]))
        });
        let said = server.says_until("/metrics");
        let address = said.trim_end().strip_suffix("/metrics");
        server.metrics = address
            .and_then(|said| said.strip_prefix("metrics on "))
            .map(str::to_owned);
        server
    }

    fn run_binary(
        binary: &Path,
        word: &str,
        listen: &str,
        configure: impl FnOnce(&mut Command) -> &mut Command,
    ) -> Self {
        static COUNT: AtomicU32 = AtomicU32::new(0);
        let number = COUNT.fetch_add(1, Ordering::Relaxed);
        let log = CLUSTER.folder().join(format!("server-{number}.log"));
        let mut command = Command::new(binary);
        command
            .args([word, "--listen", listen, "--workers", "1", "--pool", "8"])
            .args(["--log-format", "json"])
            .env("TALLYHOST_CHANGES_PER_SECOND", "100000")
            // A busy machine is no broken line.
            .env("TALLYHOST_STALE_AFTER", "600")
            .env("TALLYHOST_SIGNING_KEY", "7a".repeat(32))
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(File::create(&log).unwrap());
        die_with_this_thread(configure(&mut command));
        let mut child = command.spawn().unwrap();
        let mut output = BufReader::new(child.stdout.take().unwrap());
        let address = address_in(&mut output, &log);
        Self {
            child,
            address,
            metrics: None,
            log,
            output,
        }
    }

    /// Where it is reached.
    pub fn address(&self) -> &str {
        &self.address
    }

    /// Somebody of an earlier server, at this one's address.
    pub fn welcome(&self, actor: &Actor) -> Actor {
        actor.at(&self.address)
    }

    /// The numbers of the process, for those who run it.
    pub fn metrics(&self) -> String {
        let visitor = Actor::visit(self.metrics.as_ref().unwrap());
        visitor.get("/metrics").with_status(200).text()
    }

    /// Somebody who has not signed in.
    pub fn visitor(&self) -> Actor {
        Actor::visit(&self.address)
    }

    /// A browser in which somebody with an account signs in.
    pub fn browser(&self, handle: &str) -> Browser {
        Browser::sign_in(self.visitor(), handle)
    }

    /// A browser that signed in at an earlier server, at this one's address.
    pub fn browse(&self, browser: &Browser) -> Browser {
        browser.at(&self.address)
    }

    /// Somebody with a new account, signed in.
    pub fn register(&self, handle: &str) -> Actor {
        Actor::register(&self.address, handle)
    }

    /// Sends a signal to the server.
    pub fn signal(&self, signal: Signal) {
        kill(Pid::from_raw(self.child.id().cast_signed()), signal).unwrap();
    }

    /// Waits until the server has ended.
    pub fn wait(mut self) -> ExitStatus {
        self.child.wait().unwrap()
    }

    /// Somebody who has an account already, signed in.
    pub fn greet(&self, handle: &str) -> Actor {
        Actor::sign_in_as(&self.address, handle)
    }

    /// The next lines on standard output, up to and including one that holds `word`.
    pub fn says_until(&mut self, word: &str) -> String {
        let mut said = String::new();
        while !said.contains(word) {
            let read = self.output.read_line(&mut said).unwrap();
            assert!(read > 0, "{word} is not in\n{said}");
        }
        said
    }

    /// Sends a signal and waits until the server has ended.
    pub fn stop(self, with: Signal) -> ExitStatus {
        self.signal(with);
        self.wait()
    }

    /// What the server has logged so far.
    pub fn log(&self) -> String {
        fs::read_to_string(&self.log).unwrap()
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
        if std::thread::panicking() {
            eprintln!("-- the server's log --\n{}", self.log());
        }
    }
}

/// Reads the line `listening on http://…`; the line's end comes early if the server ends instead.
fn address_in(output: &mut BufReader<ChildStdout>, log: &Path) -> String {
    let mut line = String::new();
    output.read_line(&mut line).unwrap();
    line.trim_end()
        .strip_prefix("listening on ")
        .unwrap_or_else(|| {
            panic!(
                "the server did not start:\n{}",
                fs::read_to_string(log).unwrap()
            )
        })
        .to_owned()
}
