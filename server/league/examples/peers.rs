//! Writes a pairing instance as a cost matrix for the peers of `tests/peers`, and times our own
//! solver and checker on it.
//!
//! `peers SIZE PROFILE FILE`: the file holds the number of places and then the cost of each pair
//! a < b, all as 64-bit little-endian integers, -1 where there is none.

#![allow(
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a measuring program"
)]

use std::io::Write;
use std::time::{Duration, Instant};

#[path = "../benches/pairing/season.rs"]
mod season;

use league::pairing::cost::Tariff;
use league::pairing::field::Field;
use league::pairing::sparse;

const RUNS: usize = 5;

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let (size, profile) = (words[0].parse::<usize>().unwrap(), &words[1]);
    let task = season::after_four_rounds(size, profile);
    let tariff = Tariff::new(&task, Field::new(&task).unwrap(), size % 2).unwrap();
    if let Some(file) = words.get(2) {
        write(&tariff, file);
    }
    let mut total = 0;
    let solve = median(|| {
        let matcher = sparse::optimum(&tariff).unwrap();
        let price = |&[a, b]: &[u32; 2]| tariff.price(a as usize, b as usize).unwrap();
        total = matcher.pairs().iter().map(price).sum::<i128>();
    });
    println!("ours {:.6} {total}", solve.as_secs_f64());
}

fn median(mut run: impl FnMut()) -> Duration {
    let mut times: Vec<Duration> = (0..RUNS)
        .map(|_| {
            let start = Instant::now();
            run();
            start.elapsed()
        })
        .collect();
    times.sort();
    times[RUNS / 2]
}

fn write(tariff: &Tariff, file: &str) {
    let places = tariff.places();
    let mut out = std::io::BufWriter::new(std::fs::File::create(file).unwrap());
    out.write_all(&(places as i64).to_le_bytes()).unwrap();
    for a in 0..places {
        for b in a + 1..places {
            let cost = tariff
                .price(a, b)
                .map_or(-1, |cost| i64::try_from(cost).unwrap());
            out.write_all(&cost.to_le_bytes()).unwrap();
        }
    }
}
