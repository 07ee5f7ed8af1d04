//! Writes pairing instances as cost matrices for the peers and times our own solver on them.
//!
//! `peers FOLDER SIZE PROFILE` writes `FOLDER/PROFILE-SIZE.costs` and prints our cost and seconds.

#![allow(
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a measuring program"
)]

use std::time::Instant;

#[path = "../benches/pairing/season.rs"]
mod season;

use league::pairing::cost::Tariff;
use league::pairing::field::Field;
use league::pairing::sparse;

fn main() {
    let mut words = std::env::args().skip(1);
    let (size, profile): (usize, String) = (
        words.next().unwrap().parse().unwrap(),
        words.next().unwrap(),
    );
    let task = season::after_four_rounds(size, &profile);
    let field = Field::new(&task).unwrap();
    let tariff = Tariff::new(&task, field, size % 2).unwrap();
    for _ in 0..3 {
        let start = Instant::now();
        let matcher = sparse::optimum(&tariff).unwrap();
        let total: i128 = matcher
            .pairs()
            .iter()
            .map(|&[a, b]| tariff.price(a as usize, b as usize).unwrap())
            .sum();
        println!(
            "{size} {profile} ours {:.6} {total}",
            start.elapsed().as_secs_f64()
        );
    }
}
