//! The binary `tallyhost`.

use std::process::ExitCode;

use clap::Parser;
use tallyhost::cli::Cli;

fn main() -> ExitCode {
    match Cli::parse().run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            eprintln!("tallyhost: {failure}");
            ExitCode::FAILURE
        }
    }
}
