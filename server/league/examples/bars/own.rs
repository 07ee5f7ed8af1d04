//! Performance bars that compare our own runs with each other.

use league::pairing::cost::PairCosts;
use league::pairing::round::repair::{self, Disruption};
use league::pairing::search::sparse;
use league::pairing::verify;
use league::pairing::{Game, NightKey, NightSet, Pair, TableNo, Task, propose};

use crate::{bar, costs, figure, median, season};

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

fn solve(costs: &PairCosts) -> f64 {
    let runs = if costs.vertex_count() < 1000 {
        101
    } else {
        RUNS
    };
    median(runs, || (), |()| sparse::optimum(costs).is_ok())
}

fn club() {
    for profile in PROFILES {
        let task = season::after_four_rounds(24, profile);
        let (costs, proposal) = (costs(&task), propose(&task).unwrap());
        let both = median(
            501,
            || (),
            |()| sparse::optimum(&costs).is_ok() && verify(&task, &proposal).is_ok(),
        );
        let what = format!("24 {profile}: solved and checked, microseconds");
        bar(&what, both * 1e6, false, 200.0);
    }
}

/// Making a proposal is what production runs; the matching alone is the smallest part of it.
fn check() {
    for (players, runs) in [(24, 101), (256, RUNS), (1024, RUNS)] {
        let task = season::after_four_rounds(players, "bp");
        let proposal = propose(&task).unwrap();
        let check = |()| verify(&task, &proposal).is_ok();
        let check = median(runs, || (), check);
        let whole = median(runs.min(RUNS), || (), |()| propose(&task).is_ok());
        let what = format!("{players} bp: check of a proposal / making it");
        bar(&what, check / whole, false, 0.2);
        let bare = |()| sparse::optimum(&costs(&task)).is_ok();
        let what = format!("{players} bp: check of a proposal / participants, prices and matching");
        figure(&what, check / median(runs, || (), bare));
        let what = format!("{players} bp: check of a proposal / matching alone");
        figure(&what, check / solve(&costs(&task)));
    }
}

fn growth() {
    for profile in PROFILES {
        let large = costs(&season::after_four_rounds(16_384, profile));
        let small = solve(&costs(&season::after_four_rounds(512, profile)));
        let time = solve(&large);
        let costs = median(3, || (), |()| sparse::cheapest_edge(&large));
        let what = format!("16384 {profile}: solve / solve of 512");
        bar(&what, time / small, false, 80.0);
        let what = format!("16384 {profile}: solve / all pair costs once");
        bar(&what, time / costs, false, 1.0);
    }
}

fn hard() {
    for players in [256, 1024, 4096] {
        let plain = solve(&costs(&season::after_four_rounds(players, "bp")));
        for name in season::HARD {
            let time = solve(&costs(&season::hard(name, players)));
            let what = format!("{players} {name}: solve / plain solve");
            bar(&what, time / plain, false, 10.0);
        }
    }
}

fn repair() {
    for players in [64, 256, 1024, 4096] {
        let task = season::after_four_rounds(players, "bp");
        let costs = costs(&task);
        let cold = solve(&costs);
        let solved = sparse::optimum(&costs).unwrap();
        for (name, shock) in shocks(&task, &costs, &solved.pairs()) {
            let published = games(&costs, &solved.pairs());
            let again = crate::costs(&repair::repair_task(&task, &published, shock));
            let what = format!("{players} bp, {name} after publishing: repair / cold solve");
            bar(&what, solve(&again) / cold, false, 0.2);
        }
        let torn = [solved.pairs()[players / 8]];
        let without = |()| sparse::optimum_without(&costs, solved.clone(), &torn).is_ok();
        let what = format!("{players} bp, price of forbidding a game: solve / cold solve");
        bar(&what, median(4 * RUNS, || (), without) / cold, false, 0.2);
    }
}

/// A published round may lose a player or a game, or get a game that the organiser wants.
fn shocks(task: &Task, costs: &PairCosts, pairs: &[[u32; 2]]) -> [(&'static str, Disruption); 3] {
    let published = games(costs, pairs);
    let (one, other) = (published[pairs.len() / 4], published[pairs.len() / 4 + 1]);
    let shock = || Disruption {
        nights: task.nights.clone(),
        ..Disruption::default()
    };
    let (mut drop, mut forced, mut forbidden) = (shock(), shock(), shock());
    drop.availabilities = vec![(one.attacker, NightSet::NONE)];
    forced.pins.extend(Pair::new(one.attacker, other.defender));
    forbidden.forbidden.extend(one.pair());
    [
        ("a drop", drop),
        ("a forced game", forced),
        ("a forbidden game", forbidden),
    ]
}

/// The pairs as published games, all at one table: the matching does not look at it.
fn games(costs: &PairCosts, pairs: &[[u32; 2]]) -> Vec<Game> {
    let player = |place: u32| costs.participants().list[place as usize].player;
    let game = |&[attacker, defender]: &[u32; 2]| Game {
        night: NightKey::new(0).unwrap(),
        table: TableNo(1),
        attacker: player(attacker),
        defender: player(defender),
    };
    pairs.iter().map(game).collect()
}

/// A process of its own, so that nothing else has used memory before.
fn memory() {
    for profile in PROFILES {
        let own = std::env::current_exe().unwrap();
        let output = std::process::Command::new(own)
            .args(["solve", "16384", profile])
            .output();
        let peak = String::from_utf8(output.unwrap().stdout).unwrap();
        let peak: f64 = peak.trim().parse().unwrap();
        let matrix = 16_384.0 * 16_383.0 / 2.0 * 8.0;
        let what = format!("16384 {profile}: peak memory / half matrix of 64-bit costs");
        bar(&what, peak * 1024.0 / matrix, false, 0.05);
    }
}

/// Prints the peak of resident memory in KiB.
pub fn solve_and_tell_memory(players: usize, profile: &str) {
    let costs = costs(&season::after_four_rounds(players, profile));
    assert!(sparse::optimum(&costs).is_ok());
    let status = std::fs::read_to_string("/proc/self/status").unwrap();
    let peak = status.lines().find(|line| line.starts_with("VmHWM:"));
    println!("{}", peak.unwrap().split_whitespace().nth(1).unwrap());
}
