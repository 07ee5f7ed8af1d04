//! Berger tables: the schedule of a round robin (FIDE Handbook C.05, annex 1).

use std::collections::BTreeSet;

/// Most players of a round robin; a season has no more weeks than that.
pub const MAX_PLAYERS: usize = 54;

/// Two numbers from 1, the attacker first. With an odd field the last number is nobody: who meets it
/// sits out.
pub type SeatPair = (usize, usize);

/// The rounds of a single cycle for so many players, `None` outside 2 to [`MAX_PLAYERS`].
///
/// In round r the last number n meets k = ((r-1) n/2 mod (n-1)) + 1, as defender when r is odd; the
/// others pair up around k. The rule was computed from the printed tables for 4, 6 and 8 players.
pub fn berger_table(players: usize) -> Option<Vec<Vec<SeatPair>>> {
    let n = players.next_multiple_of(2);
    (2..=MAX_PLAYERS)
        .contains(&players)
        .then(|| (1..n).map(|round| berger_round(n, round)).collect())
}

fn berger_round(n: usize, round: usize) -> Vec<SeatPair> {
    let ring = n - 1;
    let k = (round - 1) * (n / 2) % ring;
    let around = |steps: usize| (k + steps) % ring + 1;
    let first = if round % 2 == 1 {
        (k + 1, n)
    } else {
        (n, k + 1)
    };
    let rest = (1..n / 2).map(|i| (around(i), around(ring - i)));
    [first].into_iter().chain(rest).collect()
}

/// Two cycles with the roles of the second swapped. The last two rounds of the first cycle change
/// places, so that nobody has the same role three times in a row (annex 1, note on double cycles).
pub fn double_berger_table(players: usize) -> Option<Vec<Vec<SeatPair>>> {
    let mut rounds = berger_table(players)?;
    let second = rounds
        .iter()
        .map(|round| round.iter().map(|&(a, b)| (b, a)).collect());
    let second: Vec<Vec<SeatPair>> = second.collect();
    let last = rounds.len();
    if last >= 2 {
        rounds.swap(last - 2, last - 1);
    }
    rounds.extend(second);
    Some(rounds)
}

/// Who sits out in each round of an odd field, in order of the rounds.
pub fn byes(rounds: &[Vec<SeatPair>], players: usize) -> Vec<usize> {
    let absent = |round: &Vec<SeatPair>| {
        let playing: BTreeSet<usize> = round
            .iter()
            .filter(|&&(a, b)| a <= players && b <= players)
            .flat_map(|&(a, b)| [a, b])
            .collect();
        (1..=players).find(|number| !playing.contains(number))
    };
    rounds.iter().filter_map(absent).collect()
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::*;

    /// The tables for 4, 6 and 8 players as printed in FIDE Handbook C.05, annex 1.
    const PRINTED: [&str; 3] = [
        "1-4 2-3 | 4-3 1-2 | 2-4 3-1",
        "1-6 2-5 3-4 | 6-4 5-3 1-2 | 2-6 3-1 4-5 | 6-5 1-4 2-3 | 3-6 4-2 5-1",
        "1-8 2-7 3-6 4-5 | 8-5 6-4 7-3 1-2 | 2-8 3-1 4-7 5-6 | 8-6 7-5 1-4 2-3 | \
         3-8 4-2 5-1 6-7 | 8-7 1-6 2-5 3-4 | 4-8 5-3 6-2 7-1",
    ];

    #[test]
    fn the_rule_gives_the_printed_tables() {
        for (players, printed) in [4, 6, 8].into_iter().zip(PRINTED) {
            assert_eq!(written(&berger_table(players).unwrap()), printed);
        }
    }

    /// The tables for 10 and 12 players of FIDE Handbook C.05, annex 1, from memory.
    const REMEMBERED: [&str; 2] = [
        "1-10 2-9 3-8 4-7 5-6 | 10-6 7-5 8-4 9-3 1-2 | 2-10 3-1 4-9 5-8 6-7 | \
         10-7 8-6 9-5 1-4 2-3 | 3-10 4-2 5-1 6-9 7-8 | 10-8 9-7 1-6 2-5 3-4 | \
         4-10 5-3 6-2 7-1 8-9 | 10-9 1-8 2-7 3-6 4-5 | 5-10 6-4 7-3 8-2 9-1",
        "1-12 2-11 3-10 4-9 5-8 6-7 | 12-7 8-6 9-5 10-4 11-3 1-2 | 2-12 3-1 4-11 5-10 6-9 7-8 | \
         12-8 9-7 10-6 11-5 1-4 2-3 | 3-12 4-2 5-1 6-11 7-10 8-9 | 12-9 10-8 11-7 1-6 2-5 3-4 | \
         4-12 5-3 6-2 7-1 8-11 9-10 | 12-10 11-9 1-8 2-7 3-6 4-5 | 5-12 6-4 7-3 8-2 9-1 10-11 | \
         12-11 1-10 2-9 3-8 4-7 5-6 | 6-12 7-5 8-4 9-3 10-2 11-1",
    ];

    #[test]
    fn the_rule_gives_the_tables_for_ten_and_twelve() {
        for (players, remembered) in [10, 12].into_iter().zip(REMEMBERED) {
            assert_eq!(written(&berger_table(players).unwrap()), remembered);
        }
    }

    /// What holds for every table of the annex: each round is the one before with everybody but the
    /// last number moved on by half the table, and the last number changes roles every round.
    #[test]
    fn each_round_moves_the_one_before_on_by_half_the_table() {
        for n in (4..=16).step_by(2) {
            let rounds = berger_table(n).unwrap();
            let moved = |number: usize| match number {
                last if last == n => n,
                number => (number - 1 + n / 2) % (n - 1) + 1,
            };
            for (at, pair) in rounds.windows(2).enumerate() {
                let on: BTreeSet<[usize; 2]> = pair[0]
                    .iter()
                    .map(|&(a, b)| sorted(moved(a), moved(b)))
                    .collect();
                let next: BTreeSet<[usize; 2]> =
                    pair[1].iter().map(|&(a, b)| sorted(a, b)).collect();
                assert_eq!(on, next, "{n} players, round {}", at + 2);
            }
            for (at, round) in rounds.iter().enumerate() {
                let first = round[0];
                let last_attacks = first.0 == n;
                assert!(first.0 == n || first.1 == n);
                assert_eq!(last_attacks, at % 2 == 1, "{n} players, round {}", at + 1);
            }
        }
    }

    fn sorted(a: usize, b: usize) -> [usize; 2] {
        [a.min(b), a.max(b)]
    }

    fn written(rounds: &[Vec<SeatPair>]) -> String {
        let rounds = rounds.iter().map(|round| {
            let games: Vec<String> = round.iter().map(|(a, b)| format!("{a}-{b}")).collect();
            games.join(" ")
        });
        rounds.collect::<Vec<_>>().join(" | ")
    }

    #[test]
    fn everyone_meets_everyone_once_and_roles_differ_by_at_most_one() {
        for players in 2..=16 {
            let mut met = BTreeMap::new();
            let mut attacks = vec![0_i32; players + 2];
            for (a, b) in berger_table(players).unwrap().into_iter().flatten() {
                *met.entry((a.min(b), a.max(b))).or_insert(0) += 1;
                if b <= players && a <= players {
                    attacks[a] += 1;
                    attacks[b] -= 1;
                }
            }
            let n = players.next_multiple_of(2);
            assert_eq!(met.len(), n * (n - 1) / 2);
            assert!(met.values().all(|&times| times == 1));
            assert!(
                attacks.iter().all(|difference| difference.abs() <= 1),
                "{players}: {attacks:?}"
            );
        }
    }

    /// Computed from the printed table for 8 players (project's STANDARDS, section 1.5).
    #[test]
    fn seven_players_sit_out_in_the_order_of_the_table() {
        assert_eq!(byes(&berger_table(7).unwrap(), 7), [1, 5, 2, 6, 3, 7, 4]);
    }

    #[test]
    fn two_cycles_never_give_three_times_the_same_role_in_a_row() {
        for players in (4..=16).step_by(2) {
            let rounds = double_berger_table(players).unwrap();
            for number in 1..=players {
                let role = |round: &Vec<SeatPair>| round.iter().any(|&(a, _)| a == number);
                let roles: Vec<bool> = rounds.iter().map(role).collect();
                assert!(
                    roles.windows(3).all(|w| !(w[0] == w[1] && w[1] == w[2])),
                    "{players}: {number}"
                );
            }
        }
    }

    #[test]
    fn a_round_robin_needs_two_players() {
        assert_eq!(
            (berger_table(1), berger_table(MAX_PLAYERS + 1)),
            (None, None)
        );
        assert_eq!(berger_table(2), Some(vec![vec![(1, 2)]]));
    }
}
