//! Logging to standard error. Standard output is for answers that a program may read.

use std::io::{self, IsTerminal};

use clap::Args;
use tracing::subscriber::{SetGlobalDefaultError, set_global_default};
use tracing_subscriber::EnvFilter;

use crate::settings::LogFormat;

/// What is logged and how.
#[derive(Args, Debug)]
pub struct Telemetry {
    /// What to log, by level and part of the program
    #[arg(
        long,
        global = true,
        env = "TALLYHOST_LOG",
        default_value = "info,actix_server=warn",
        value_name = "FILTER"
    )]
    log: EnvFilter,
    /// How log lines are written
    #[arg(
        long,
        global = true,
        env = "TALLYHOST_LOG_FORMAT",
        default_value = "text",
        value_name = "FORMAT"
    )]
    log_format: LogFormat,
}

impl Telemetry {
    /// Installs the subscriber of the whole process.
    ///
    /// Only `tracing` is heard, not the older `log`: through that the database driver tells every
    /// parameter of a statement, and with it addresses, password hashes and sealed lists.
    ///
    /// # Errors
    /// It was called before.
    pub fn start(self) -> Result<(), SetGlobalDefaultError> {
        let lines = tracing_subscriber::fmt()
            .with_env_filter(self.log)
            .with_ansi(io::stderr().is_terminal())
            .with_writer(io::stderr);
        match self.log_format {
            LogFormat::Text => set_global_default(lines.finish()),
            LogFormat::Json => set_global_default(
                lines
                    .json()
                    .flatten_event(true)
                    .with_span_list(false)
                    .finish(),
            ),
        }
    }
}
