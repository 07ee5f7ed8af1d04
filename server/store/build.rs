//! A new migration must be compiled in even when no Rust file changed.

fn main() {
    println!("cargo::rerun-if-changed=../../migrations");
}
