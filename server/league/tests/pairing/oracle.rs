//! The solver against networkx: the optimum of several hundred graphs with ties, holes, two nights
//! and long chains. `tests/oracles/matching.py` computes the data file.

use std::collections::BTreeMap;

use league::pairing::solve::Matcher;

const DATA: &str = include_str!("../../../../tests/oracles/matching.csv");

/// Knuth's 64-bit linear congruential generator (MMIX), upper 31 bits, as in the script.
struct Numbers(u64);

impl Numbers {
    fn below(&mut self, limit: u64) -> u64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % limit
    }
}

/// The cost of each pair a < b.
fn costs(kind: &str, size: usize, seed: u64) -> BTreeMap<(usize, usize), i128> {
    let mut numbers = Numbers(seed);
    let mut costs = BTreeMap::new();
    for a in 0..size {
        for b in a + 1..size {
            let (cost, dice) = (numbers.below(1_000_000), numbers.below(100));
            let span = (b - a) as u64;
            let edge = match kind {
                "ties" => Some(cost % 2),
                "narrow" => Some(cost % 10),
                "wide" => Some(cost),
                "holes" => (dice * (size as u64) < 300).then_some(cost % 50),
                "nights" => (a % 2 == b % 2 || dice < 2).then_some(cost % 20),
                "chain" => (span < 4 || dice < 3).then_some(span * span * 100 + cost % 7),
                other => panic!("unknown kind {other}"),
            };
            costs.extend(edge.map(|cost| ((a, b), i128::from(cost))));
        }
    }
    costs
}

#[test]
fn every_optimum_is_that_of_networkx() {
    let mut compared = 0;
    for line in DATA.lines().skip(1) {
        let words: Vec<&str> = line.split(',').collect();
        let size: usize = words[1].parse().unwrap();
        let costs = costs(words[0], size, words[2].parse().unwrap());
        let solved = Matcher::optimum(size, |a, b| costs.get(&(a, b)).copied());
        let total = solved.map(|matcher| {
            let pairs = matcher.pairs();
            pairs
                .iter()
                .map(|&[a, b]| costs[&(a as usize, b as usize)])
                .sum::<i128>()
        });
        assert_eq!(
            total.map_or("none".into(), |sum| sum.to_string()),
            words[3],
            "{line}"
        );
        compared += 1;
    }
    assert!(compared > 300);
}
