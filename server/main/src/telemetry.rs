//! Log lines to standard error. Standard output is for answers that a program may read.

use std::io::{self, IsTerminal};

use clap::Args;
use tracing_subscriber::EnvFilter;

use crate::settings::LogFormat;

/// What is logged and how.
#[derive(Args, Debug)]
pub struct Telemetry {
    /// What to log, such as `info` or `info,web=debug`
    #[arg(
        long,
        global = true,
        env = "TALLYHOST_LOG",
        default_value = "info",
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
    /// Sends the log lines of the whole process on their way.
    pub fn start(self) {
        let lines = tracing_subscriber::fmt()
            .with_env_filter(self.log)
            .with_ansi(io::stderr().is_terminal())
            .with_writer(io::stderr);
        match self.log_format {
            LogFormat::Text => lines.init(),
            LogFormat::Json => lines.json().flatten_event(true).init(),
        }
    }
}
