//! Bars against general graph libraries on identical instances, solve only.

use std::io::Write;
use std::process::Command;

use league::pairing::cost::PairCosts;
use league::pairing::search::sparse;

use crate::{bar, costs, median, season};

const RUNS: usize = 5;

/// Where one run of a peer takes longer, it is stopped and left out.
const MAX_SECONDS: &str = "45";

/// Size, the bar, and who runs: the compiled libraries and those of Python. Boost 1.74 loops for
/// ever on some instances above 64 places.
const SIZES: [(usize, f64, &[&str], &[&str]); 5] = [
    (
        24,
        1.0,
        &["lemon", "lemon-fractional", "boost"],
        &["rustworkx", "networkx"],
    ),
    (
        64,
        1.0,
        &["lemon", "lemon-fractional", "boost"],
        &["rustworkx", "networkx"],
    ),
    (256, 6.0, &["lemon", "lemon-fractional"], &["rustworkx"]),
    (1024, 25.0, &["lemon-fractional"], &[]),
    (4096, 150.0, &["lemon-fractional"], &[]),
];

/// Seconds and cost as a peer printed them.
type Told = (String, f64, i128);

pub fn measure(directory: &str, program: &str, python: [&str; 2]) {
    let file = format!("{directory}/costs");
    for (players, least, compiled, scripted) in SIZES {
        for profile in ["wdl", "bp"] {
            let costs = costs(&season::after_four_rounds(players, profile));
            write(&costs, &file);
            let mut told = tell(&[program, &file], compiled);
            told.extend(tell(&[python[0], python[1], &file], scripted));
            let mut cost = 0;
            let ours = median(RUNS.max(20_000 / players), || (), |()| cost = total(&costs));
            for (peer, seconds, theirs) in &told {
                let note = if *theirs == cost {
                    ""
                } else {
                    ", NOT THE OPTIMUM"
                };
                println!("  {players} {profile}: {peer} {seconds:.6} s, ours {ours:.6} s{note}");
            }
            let right = told.iter().filter(|(_, _, theirs)| *theirs == cost);
            let best = right
                .map(|(_, seconds, _)| *seconds)
                .fold(f64::MAX, f64::min);
            let what = format!("{players} {profile}: the best of the peers / ours");
            if best < f64::MAX {
                bar(&what, best / ours, true, least);
            } else {
                println!("{what}: nobody finished");
            }
        }
    }
}

/// The cost of the matching, which is solved anew.
fn total(costs: &PairCosts) -> i128 {
    let matcher = sparse::optimum(costs).unwrap();
    let price = |&[a, b]: &[u32; 2]| costs.edge_cost(a as usize, b as usize).unwrap();
    matcher.pairs().iter().map(price).sum()
}

/// Runs each peer by itself and collects its line `name seconds cost`.
fn tell(command: &[&str], peers: &[&str]) -> Vec<Told> {
    let run = |peer: &&str| {
        let limited = ["timeout", MAX_SECONDS];
        let words: Vec<&str> = limited
            .iter()
            .chain(command)
            .copied()
            .chain([*peer])
            .collect();
        let output = Command::new(words[0]).args(&words[1..]).output().unwrap();
        let line = String::from_utf8(output.stdout).unwrap();
        let words: Vec<&str> = line.split_whitespace().collect();
        match words[..] {
            [name, seconds, cost] => Some((
                name.to_owned(),
                seconds.parse().unwrap(),
                cost.parse().unwrap(),
            )),
            _ => None,
        }
    };
    peers.iter().filter_map(run).collect()
}

/// The number of places, then the cost of each pair a < b, as 64-bit little-endian integers, -1
/// where there is none.
fn write(costs: &PairCosts, file: &str) {
    let places = costs.vertex_count();
    let mut out = std::io::BufWriter::new(std::fs::File::create(file).unwrap());
    out.write_all(&(places as i64).to_le_bytes()).unwrap();
    for a in 0..places {
        for b in a + 1..places {
            let cost = costs
                .edge_cost(a, b)
                .map_or(-1, |cost| i64::try_from(cost).unwrap());
            out.write_all(&cost.to_le_bytes()).unwrap();
        }
    }
}
