//! How long pairing takes: a club's evening, large fields, hard instances, the checker.

#![allow(clippy::unwrap_used, reason = "a measuring program")]

mod season;

use divan::{Bencher, black_box};
use league::pairing::cost::PairCosts;
use league::pairing::cost::participants::Participants;
use league::pairing::round::repair;
use league::pairing::search::sparse;
use league::pairing::verify;
use league::pairing::{Draw, Night, NightKey, NightSet, TableNo, Task, Wishes, propose};

fn main() {
    divan::main();
}

fn costs(task: &Task) -> PairCosts {
    let participants = Participants::new(task).unwrap();
    PairCosts::new(task, participants, task.contenders.len() % 2).unwrap()
}

#[divan::bench(args = [16, 24, 64, 256, 1024, 4096, 16384])]
fn solve_wdl(bencher: Bencher<'_, '_>, players: usize) {
    let costs = costs(&season::after_four_rounds(players, "wdl"));
    bencher.bench(|| sparse::optimum(black_box(&costs)).is_ok());
}

#[divan::bench(args = [16, 24, 64, 256, 1024, 4096, 16384])]
fn solve_bp(bencher: Bencher<'_, '_>, players: usize) {
    let costs = costs(&season::after_four_rounds(players, "bp"));
    bencher.bench(|| sparse::optimum(black_box(&costs)).is_ok());
}

/// What each makes slow stands in `season::hard`.
#[divan::bench(args = season::HARD)]
fn solve_hard_1024(bencher: Bencher<'_, '_>, name: &str) {
    let costs = costs(&season::hard(name, 1024));
    bencher.bench(|| sparse::optimum(black_box(&costs)).is_ok());
}

/// Every pair's cost once: the floor that a method on all pairs cannot beat.
#[divan::bench(args = [4096, 16384])]
fn all_costs_once(bencher: Bencher<'_, '_>, players: usize) {
    let costs = costs(&season::after_four_rounds(players, "bp"));
    bencher.bench(|| sparse::cheapest_edge(black_box(&costs)));
}

/// A club's evening with everything: two nights, tables, look-ahead, reasons and proof.
fn club() -> Task {
    let mut task = season::after_four_rounds(24, "bp");
    task.wishes = Wishes::default();
    task.rounds_left = 3;
    task.draw = Draw([3; 32]);
    for (at, contender) in task.contenders.iter_mut().enumerate() {
        contender.nights = NightSet::from_bits([1, 2, 3][at % 3]);
    }
    let night = |number, tables| Night {
        key: NightKey::new(number).unwrap(),
        tables: (1..=tables).map(TableNo).collect(),
    };
    task.nights = vec![night(0, 6), night(1, 7)];
    task
}

#[divan::bench]
fn propose_club_of_24(bencher: Bencher<'_, '_>) {
    let task = club();
    bencher.bench(|| propose(black_box(&task)).is_ok());
}

#[divan::bench]
fn verify_club_of_24(bencher: Bencher<'_, '_>) {
    let task = club();
    let proposal = propose(&task).unwrap();
    bencher.bench(|| verify(black_box(&task), &proposal).is_ok());
}

#[divan::bench]
fn repair_club_of_24(bencher: Bencher<'_, '_>) {
    let task = club();
    let games = propose(&task).unwrap().games;
    let shock = repair::Disruption {
        nights: task.nights.clone(),
        availabilities: vec![(games[0].attacker, NightSet::default())],
        ..repair::Disruption::default()
    };
    let task = repair::repair_task(&task, &games, shock);
    bencher.bench(|| propose(black_box(&task)).is_ok());
}

#[divan::bench(args = [24, 256, 1024])]
fn verify_bp(bencher: Bencher<'_, '_>, players: usize) {
    let task = season::after_four_rounds(players, "bp");
    let proposal = propose(&task).unwrap();
    bencher.bench(|| verify(black_box(&task), &proposal).is_ok());
}

/// One game forbidden after the solve: only what it breaks is searched again.
#[divan::bench(args = [256, 1024, 4096])]
fn forbid_one_game_bp(bencher: Bencher<'_, '_>, players: usize) {
    let costs = costs(&season::after_four_rounds(players, "bp"));
    let matcher = sparse::optimum(&costs).unwrap();
    let [a, b] = matcher.pairs()[players / 4];
    bencher
        .with_inputs(|| matcher.clone())
        .bench_values(|matcher| sparse::optimum_without(&costs, matcher, &[[a, b]]).is_ok());
}
