//! Was the season fair to everyone, as far as chance allows?
//!
//! For each player and measure the season's value is compared with seasons in which only chance
//! ruled: the same players were there each round, but opponents, roles, tables and byes were dealt
//! out at random. The p-value is that of a permutation test with the observed season counted in
//! (Phipson and Smyth 2010, from memory). Many tests are made at once, so a value is called unusual
//! only when p times the number of tests is at most 5 % (Bonferroni).

use std::collections::{BTreeMap, BTreeSet};

use crate::ids::PlayerId;

use super::{Game, TableNo};

/// Random seasons that the real one is compared with; enough for 400 tests at 5 %.
pub const SEASONS: u32 = 9_999;

/// One published round as it was played.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Round {
    /// Games.
    pub games: Vec<Game>,
    /// Who sat out.
    pub byes: Vec<PlayerId>,
}

/// What is compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Measure {
    /// Sum of the opponents' final scores.
    OpponentsStrength,
    /// Games as attacker less games as defender.
    Roles,
    /// Games at a table played on before.
    RepeatedTables,
    /// Rounds sat out.
    Byes,
}

/// One player's value on one measure.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// Who.
    pub player: PlayerId,
    /// What.
    pub measure: Measure,
    /// The season's value.
    pub value: i64,
    /// Sum of the values of the [`SEASONS`] random seasons; divided by it, the mean.
    pub expected_sum: i64,
    /// Random seasons at least as far from the mean, the real one included, of [`SEASONS`] + 1.
    pub as_far: u32,
    /// More unusual than chance explains, all tests together.
    pub unusual: bool,
}

/// The audit of a season.
#[derive(Clone, Debug, PartialEq)]
pub struct Audit {
    /// Tests made.
    pub tests: u32,
    /// Their results, by measure and player.
    pub findings: Vec<Finding>,
}

/// Audits rounds against chance. `scores` are final scores; players without one count 0.
pub fn audit(rounds: &[Round], scores: &BTreeMap<PlayerId, i32>, seed: u64) -> Audit {
    let players: Vec<PlayerId> = players(rounds).into_iter().collect();
    let scores: Vec<i64> = players
        .iter()
        .map(|player| i64::from(scores.get(player).copied().unwrap_or(0)))
        .collect();
    let mut season = Season::new(rounds, &players);
    let real = season.values(&scores);
    let mut chance = Chance(seed);
    let random: Vec<Vec<i64>> = (0..SEASONS)
        .map(|_| {
            season.deal(&mut chance);
            season.values(&scores)
        })
        .collect();
    let tests = real.len() as u32;
    let findings = real.iter().enumerate().map(|(at, &value)| {
        let drawn = || random.iter().map(|values| values[at]);
        let expected_sum: i64 = drawn().sum();
        let distance = |value: i64| (value * i64::from(SEASONS) - expected_sum).abs();
        let as_far = drawn()
            .filter(|&other| distance(other) >= distance(value))
            .count() as u32
            + 1;
        Finding {
            player: players[at / MEASURES.len()],
            measure: MEASURES[at % MEASURES.len()],
            value,
            expected_sum,
            as_far,
            unusual: u64::from(as_far) * u64::from(tests) * 20 <= u64::from(SEASONS + 1),
        }
    });
    Audit {
        tests,
        findings: findings.collect(),
    }
}

fn players(rounds: &[Round]) -> BTreeSet<PlayerId> {
    let games = rounds.iter().flat_map(|round| &round.games);
    let playing = games.flat_map(|game| [game.attacker, game.defender]);
    playing
        .chain(rounds.iter().flat_map(|round| round.byes.iter().copied()))
        .collect()
}

const MEASURES: [Measure; 4] = [
    Measure::OpponentsStrength,
    Measure::Roles,
    Measure::RepeatedTables,
    Measure::Byes,
];

/// Rounds as seats: two at each table, attacker first, then those who sit out.
struct Season {
    players: usize,
    rounds: Vec<(Vec<TableNo>, Vec<usize>)>,
}

impl Season {
    fn new(rounds: &[Round], players: &[PlayerId]) -> Self {
        let number = |player: &PlayerId| players.binary_search(player).unwrap_or(0);
        let rounds = rounds.iter().map(|round| {
            let games = round
                .games
                .iter()
                .flat_map(|game| [&game.attacker, &game.defender]);
            let seats = games.chain(&round.byes).map(number);
            (
                round.games.iter().map(|game| game.table).collect(),
                seats.collect(),
            )
        });
        Self {
            players: players.len(),
            rounds: rounds.collect(),
        }
    }

    /// Deals the same players of each round out to its seats at random.
    fn deal(&mut self, chance: &mut Chance) {
        for (_, seats) in &mut self.rounds {
            for at in (1..seats.len()).rev() {
                seats.swap(at, chance.below(at + 1));
            }
        }
    }

    /// All measures of the first player, then of the next.
    fn values(&self, scores: &[i64]) -> Vec<i64> {
        let mut values = vec![0; self.players * MEASURES.len()];
        let mut seen: Vec<Vec<TableNo>> = vec![Vec::new(); self.players];
        for (tables, seats) in &self.rounds {
            let (playing, byes) = seats.split_at(2 * tables.len());
            for (&table, pair) in tables.iter().zip(playing.chunks(2)) {
                for (player, opponent, role) in [(pair[0], pair[1], 1), (pair[1], pair[0], -1)] {
                    let own = &mut values[player * MEASURES.len()..][..MEASURES.len()];
                    own[0] += scores[opponent];
                    own[1] += role;
                    own[2] += i64::from(seen[player].contains(&table));
                    seen[player].push(table);
                }
            }
            for &player in byes {
                values[player * MEASURES.len() + 3] += 1;
            }
        }
        values
    }
}

/// A seeded sequence (SplitMix64, Steele, Lea and Flood 2014, from memory).
struct Chance(u64);

impl Chance {
    fn below(&mut self, limit: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((u128::from(mixed ^ (mixed >> 31)) * limit as u128) >> 64) as usize
    }
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;
    use crate::pairing::NightKey;

    fn player(at: usize) -> PlayerId {
        PlayerId(Uuid::from_u128(at as u128))
    }

    fn round(order: &[usize], bye: usize) -> Round {
        let pairs = order.chunks(2).enumerate();
        let games = pairs.map(|(at, pair)| Game {
            night: NightKey::new(0).unwrap(),
            table: TableNo(at as u16),
            attacker: player(pair[0]),
            defender: player(pair[1]),
        });
        Round {
            games: games.collect(),
            byes: vec![player(bye)],
        }
    }

    fn find(audit: &Audit, measure: Measure, at: usize) -> &Finding {
        audit
            .findings
            .iter()
            .find(|f| f.measure == measure && f.player == player(at))
            .unwrap()
    }

    #[test]
    fn a_player_who_sits_out_six_rounds_of_eight_is_found_unusual() {
        let rounds: Vec<Round> = (0..8)
            .map(|at| round(&[1, 2, 3, 4, 5, 6], if at < 6 { 0 } else { 7 }))
            .collect();
        let audit = audit(&rounds, &BTreeMap::new(), 1);
        assert_eq!(audit.tests, 4 * 8);
        assert!(find(&audit, Measure::Byes, 0).unusual);
        assert!(
            !find(&audit, Measure::OpponentsStrength, 3).unusual,
            "all scores are equal"
        );
    }

    #[test]
    fn random_seasons_are_rarely_called_unusual() {
        let players: Vec<PlayerId> = (0..9).map(player).collect();
        let scores: BTreeMap<PlayerId, i32> = (0..9).map(|at| (player(at), at as i32)).collect();
        let mut chance = Chance(5);
        let mut flagged = 0;
        for seed in 0..12 {
            let mut season = Season::new(&vec![round(&[1, 2, 3, 4, 5, 6, 7, 8], 0); 6], &players);
            season.deal(&mut chance);
            let rounds: Vec<Round> = season
                .rounds
                .iter()
                .map(|(_, seats)| round(&seats[..8], seats[8]))
                .collect();
            flagged += usize::from(
                audit(&rounds, &scores, seed)
                    .findings
                    .iter()
                    .any(|f| f.unusual),
            );
        }
        assert!(flagged <= 2, "{flagged} of 12 at a level of 5 %");
    }

    #[test]
    fn the_same_seed_gives_the_same_audit() {
        let rounds = [round(&[1, 2, 3, 4], 0), round(&[1, 3, 2, 0], 4)];
        assert_eq!(
            audit(&rounds, &BTreeMap::new(), 7),
            audit(&rounds, &BTreeMap::new(), 7)
        );
    }
}
