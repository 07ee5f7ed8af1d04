//! The bars that the matching is held to: each a ratio of two medians measured in one run.
//!
//! `bars NAME` prints a group of those that compare our own runs; `bars peers DIRECTORY PROGRAM PYTHON
//! SCRIPT`, with the programs of `tests/peers`, those against general graph libraries.

#![allow(
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a measuring program"
)]

mod own;
mod peers;
#[path = "../../benches/pairing/season.rs"]
mod season;

use std::time::Duration;

use nix::time::{ClockId, clock_gettime};

use league::pairing::Task;
use league::pairing::cost::PairCosts;
use league::pairing::cost::participants::Participants;

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    match words.iter().map(String::as_str).collect::<Vec<_>>()[..] {
        ["solve", size, profile] => own::solve_and_tell_memory(size.parse().unwrap(), profile),
        ["peers", directory, program, python, script] => {
            peers::measure(directory, program, [python, script]);
        }
        [name] => own::measure(name),
        _ => println!("which group?"),
    }
}

/// Prints a figure that no bar is set for.
fn figure(what: &str, figure: f64) {
    println!("{what:<62} {figure:>10.3}");
}

/// Prints a bar: what was measured, the figure, the bar, and whether it is met.
fn bar(what: &str, figure: f64, at_least: bool, bar: f64) {
    let met = if at_least {
        figure >= bar
    } else {
        figure <= bar
    };
    let sign = if at_least { "at least" } else { "at most" };
    let word = if met { "met" } else { "MISSED" };
    println!("{what:<62} {figure:>10.3}  {sign} {bar:<6} {word}");
}

fn costs(task: &Task) -> PairCosts {
    PairCosts::new(
        task,
        Participants::new(task).unwrap(),
        task.contenders.len() % 2,
    )
    .unwrap()
}

/// Median processor time in seconds of some runs, each on an input made outside the clock:
/// neighbours on the machine do not count.
fn median<I, O>(runs: usize, mut input: impl FnMut() -> I, mut run: impl FnMut(I) -> O) -> f64 {
    let mut times: Vec<Duration> = (0..runs)
        .map(|_| {
            let input = input();
            let start = processor_time();
            std::hint::black_box(run(input));
            processor_time() - start
        })
        .collect();
    times.sort();
    times[runs / 2].as_secs_f64()
}

fn processor_time() -> Duration {
    clock_gettime(ClockId::CLOCK_THREAD_CPUTIME_ID)
        .unwrap()
        .into()
}
