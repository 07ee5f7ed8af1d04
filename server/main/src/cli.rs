//! The command line (clap).

use std::error::Error;
use std::io::{self, Write};
use std::path::PathBuf;

use clap::{Args, Parser, Subcommand};

use crate::commands;
use crate::settings::{Options, Settings, SettingsErrors};
use crate::telemetry::Telemetry;

/// A sentence for the person who ran a command.
pub type CommandError = Box<dyn Error + Send + Sync>;

/// How a command ended.
pub type CommandResult = Result<(), CommandError>;

/// The name of the default data folder of a club's own seasons.
const DATA_FOLDER_NAME: &str = "tallyhost";
/// That of the demo, which is never mixed with them.
const DEMO_FOLDER_NAME: &str = "tallyhost-demo";

/// Runs escalation leagues for tabletop miniature wargames
#[derive(Debug, Parser)]
#[command(name = "tallyhost", version)]
pub struct Cli {
    #[command(flatten)]
    telemetry: Telemetry,
    #[command(subcommand)]
    command: Command,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Serve the league over HTTP
    Serve(SettingsArgs),
    /// Load an invented season into an empty database, and serve it
    Demo(SettingsArgs),
    /// Bring the database to the newest schema, then end
    Migrate(SettingsArgs),
    /// Write the database into a file, and try that all of it can be restored; servers may go on
    Backup {
        /// The file, which is replaced where there is one
        file: PathBuf,
        #[command(flatten)]
        configured: SettingsArgs,
    },
    /// Put a backup into an empty database; no server may run on it
    Restore {
        /// The file that `backup` wrote
        file: PathBuf,
        /// Take away what the database holds
        #[arg(long)]
        replace: bool,
        #[command(flatten)]
        configured: SettingsArgs,
    },
    /// Print the OpenAPI 3.1 document of the server
    Openapi,
    /// Check the public export of a season offline: receipts, draws, proofs, every round again
    Verify {
        /// The export, as the server answered it
        file: PathBuf,
    },
}

#[derive(Args, Debug)]
struct SettingsArgs {
    /// File in TOML with any of the settings below, named as the flags
    #[arg(long, env = "TALLYHOST_CONFIG", value_name = "FILE")]
    config: Option<PathBuf>,
    /// Print the configuration that results, or what is wrong with it, and end
    #[arg(long)]
    check: bool,
    #[command(flatten)]
    options: Options,
}

impl Cli {
    /// Runs the command to its end.
    ///
    /// # Errors
    /// A sentence about what could not be done.
    pub fn run(self) -> CommandResult {
        self.telemetry.start()?;
        match self.command {
            Command::Serve(configured) => configured.run(DATA_FOLDER_NAME, commands::serve),
            Command::Demo(configured) => configured.run(DEMO_FOLDER_NAME, commands::demo),
            Command::Migrate(configured) => configured.run(DATA_FOLDER_NAME, commands::migrate),
            Command::Backup { file, configured } => configured.run(DATA_FOLDER_NAME, |settings| {
                commands::backup(&settings, &file)
            }),
            Command::Restore {
                file,
                replace,
                configured,
            } => configured.run(DATA_FOLDER_NAME, |settings| {
                commands::restore(&settings, &file, replace)
            }),
            Command::Openapi => commands::openapi(),
            Command::Verify { file } => commands::verify(&file),
        }
    }
}

impl SettingsArgs {
    fn run(
        self,
        data_name: &str,
        command: impl FnOnce(Settings) -> CommandResult,
    ) -> CommandResult {
        let settings = Settings::resolve(self.options, self.config.as_deref(), data_name)
            .map_err(|SettingsErrors(lines)| lines.join("\n"))?;
        if self.check {
            return Ok(write!(io::stdout(), "{settings}")?);
        }
        command(settings)
    }
}
