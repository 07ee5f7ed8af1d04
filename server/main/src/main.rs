//! The binary `tallyhost`.

fn main() {}
