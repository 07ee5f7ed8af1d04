//! Reads a pasted text of so many lines, for `tests/counts/reader` to count the instructions.
//!
//! `read_text KIND LINES`, with a kind of text as the match below has them.

#![allow(
    clippy::print_stdout,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a measuring program"
)]

use league::lists::reader::{MAX_LINE_BYTES, parse};

#[path = "../benches/lists/pasted.rs"]
mod pasted;

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let lines = words[1].parse::<usize>().unwrap();
    let list = pasted::text(lines);
    let full = |bit: &str| {
        let line = bit.repeat(MAX_LINE_BYTES / bit.len());
        format!("{line}\n").repeat(lines)
    };
    let text = match words[0].as_str() {
        "list" => list,
        "misspelt" => list.replace("er", "re").replace("and", "nad"),
        "marks" => full("1,.("),
        "digits" => full("7"),
        "letters" => full("quern "),
        other => panic!("there is no kind {other}"),
    };
    assert!(text.lines().count() == lines);
    println!("{}", parse(&text, &pasted::catalogue(), None).lines.len());
}
