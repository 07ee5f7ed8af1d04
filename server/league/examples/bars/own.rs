//! Bars that compare our own runs with each other.

use league::pairing::cost::Tariff;
use league::pairing::{certificate, propose, sparse};

use crate::{bar, median, season, tariff};

const RUNS: usize = 5;
const PROFILES: [&str; 2] = ["wdl", "bp"];

/// Measures the group of this name.
pub fn measure(name: &str) {
    let groups = [
        ("club", club as fn()),
        ("check", check),
        ("growth", growth),
        ("hard", hard),
        ("repair", repair),
        ("memory", memory),
    ];
    for (own, group) in groups {
        if name == own {
            group();
        }
    }
}

fn solve(tariff: &Tariff) -> f64 {
    median(RUNS, || (), |()| sparse::optimum(tariff).is_ok())
}

fn club() {
    for profile in PROFILES {
        let task = season::after_four_rounds(24, profile);
        let (tariff, proposal) = (tariff(&task), propose(&task).unwrap());
        let both = median(
            501,
            || (),
            |()| sparse::optimum(&tariff).is_ok() && certificate::verify(&task, &proposal).is_ok(),
        );
        let what = format!("24 {profile}: solved and checked, microseconds");
        bar(&what, both * 1e6, false, 200.0);
    }
}

fn check() {
    for (players, runs) in [(24, 101), (256, RUNS), (1024, RUNS)] {
        let task = season::after_four_rounds(players, "bp");
        let proposal = propose(&task).unwrap();
        let check = median(
            runs,
            || (),
            |()| certificate::verify(&task, &proposal).is_ok(),
        );
        let whole = median(runs.min(RUNS), || (), |()| propose(&task).is_ok());
        let what = format!("{players} bp: check of a proposal / making it");
        bar(&what, check / whole, false, 0.2);
        let what = format!("{players} bp: check of a proposal / matching alone");
        bar(&what, check / solve(&tariff(&task)), false, 0.2);
    }
}

fn growth() {
    for profile in PROFILES {
        let large = tariff(&season::after_four_rounds(16_384, profile));
        let small = solve(&tariff(&season::after_four_rounds(512, profile)));
        let time = solve(&large);
        let costs = median(3, || (), |()| sparse::cheapest(&large));
        let what = format!("16384 {profile}: solve / solve of 512");
        bar(&what, time / small, false, 80.0);
        let what = format!("16384 {profile}: solve / all pair costs once");
        bar(&what, time / costs, false, 1.0);
    }
}

fn hard() {
    for players in [256, 1024, 4096] {
        let plain = solve(&tariff(&season::after_four_rounds(players, "bp")));
        for name in season::HARD {
            let time = solve(&tariff(&season::hard(name, players)));
            let what = format!("{players} {name}: solve / plain solve");
            bar(&what, time / plain, false, 10.0);
        }
    }
}

fn repair() {
    for players in [256, 1024, 4096] {
        let tariff = tariff(&season::after_four_rounds(players, "bp"));
        let cold = solve(&tariff);
        let solved = sparse::optimum(&tariff).unwrap();
        let torn = [solved.pairs()[players / 8]];
        let again = median(
            RUNS,
            || solved.clone(),
            |matcher| sparse::without(&tariff, matcher, &torn).is_ok(),
        );
        let what = format!("{players} bp, one game forbidden: repair / cold solve");
        bar(&what, again / cold, false, 0.2);
    }
}

/// A process of its own, so that nothing else has used memory before.
fn memory() {
    let own = std::env::current_exe().unwrap();
    let output = std::process::Command::new(own)
        .args(["solve", "16384"])
        .output();
    let peak: f64 = String::from_utf8(output.unwrap().stdout)
        .unwrap()
        .trim()
        .parse()
        .unwrap();
    let matrix = 16_384.0 * 16_383.0 / 2.0 * 8.0;
    let what = "16384 bp: peak memory of the process / half matrix of 64 bits";
    bar(what, peak * 1024.0 / matrix, false, 0.05);
}

/// Prints the peak of resident memory in KiB.
pub fn solve_and_tell_memory(players: usize) {
    let tariff = tariff(&season::after_four_rounds(players, "bp"));
    assert!(sparse::optimum(&tariff).is_ok());
    let status = std::fs::read_to_string("/proc/self/status").unwrap();
    let peak = status.lines().find(|line| line.starts_with("VmHWM:"));
    println!("{}", peak.unwrap().split_whitespace().nth(1).unwrap());
}
