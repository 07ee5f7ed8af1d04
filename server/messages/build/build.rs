//! Build script: makes a Rust function of each English text in `locales`.
//!
//! What is wrong with the files is told as errors of the build, each with its file and id.

mod catalogue;
mod functions;
mod text;

use std::path::PathBuf;
use std::{env, fs, io};

fn main() -> io::Result<()> {
    println!("cargo::rerun-if-changed=locales");
    let root = PathBuf::from(env::var_os("CARGO_MANIFEST_DIR").unwrap_or_default());
    let out = PathBuf::from(env::var_os("OUT_DIR").unwrap_or_default());
    let mut faults = Vec::new();
    let catalogue = catalogue::read(&root, &mut faults)?;
    for fault in &faults {
        println!("cargo::error={fault}");
    }
    fs::write(out.join("generated.rs"), functions::write(&catalogue))
}
