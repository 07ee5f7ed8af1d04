//! The binary `tallyhost`.

use std::process::ExitCode;

use clap::Parser;
use mimalloc::MiMalloc;
use tallyhost::cli::Cli;

/// Gives back the memory of passwords and photos once they are done with. The system's own keeps some
/// for each thread: after 64 people had signed in, a server held 660 MiB of it.
#[global_allocator]
static ALLOCATOR: MiMalloc = MiMalloc;

fn main() -> ExitCode {
    match Cli::parse().run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            eprintln!("tallyhost: {failure}");
            ExitCode::FAILURE
        }
    }
}
