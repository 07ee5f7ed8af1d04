//! The fairness audit: permutation tests of what a season gave each player.
//!
//! For each player and measure the season's value is compared with seasons in which only chance
//! ruled: the same players were there each round, on nights they could come, but opponents, roles,
//! nights, tables and byes were dealt out at random. The p-value is that of a permutation test with
//! the observed season counted in (Phipson and Smyth 2010, from memory). Where players cannot come on
//! every night, a random season follows from the one before by swaps that both can make: a symmetric
//! walk, so that every allowed season is equally likely (Besag and Clifford 1989, from memory). Many
//! tests are made at once, so a value is called unusual only when p times the number of tests is at
//! most 5 % (Bonferroni).

use std::collections::{BTreeMap, BTreeSet};

use crate::ids::PlayerId;
use crate::pairing::round::game::Game;
use crate::pairing::round::hall::{NightKey, NightSet, TableNo};

/// Random seasons that the real one is compared with; enough for 500 tests at 5 %.
pub const RANDOM_SEASONS: u32 = 9_999;

/// One published round as it was played.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlayedRound {
    pub games: Vec<Game>,
    pub byes: Vec<PlayerId>,
    /// Whether the scenario had roles.
    pub roles: bool,
    /// Nights on which players could come; who is not named could come on all.
    pub nights: BTreeMap<PlayerId, NightSet>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FairnessMeasure {
    /// Sum of the opponents' final scores.
    OpponentsStrength,
    /// Games as attacker less games as defender.
    Roles,
    /// Games at a table played on before.
    RepeatedTables,
    /// Rounds sat out.
    Byes,
    /// Games on the night that the player had most often.
    SameNight,
}

/// One player's value on one measure.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FairnessFinding {
    pub player: PlayerId,
    pub measure: FairnessMeasure,
    pub value: i64,
    /// Sum of the values of the [`RANDOM_SEASONS`] random seasons; divided by it, the mean.
    pub expected_sum: i64,
    /// Seasons at least as far from the mean, the real one included, of [`RANDOM_SEASONS`] + 1.
    pub as_extreme: u32,
    /// More unusual than chance explains, all tests together.
    pub unusual: bool,
}

/// The audit of a season.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FairnessAudit {
    pub tests: u32,
    pub findings: Vec<FairnessFinding>,
}

/// Audits rounds against chance. `scores` are final scores; players without one count 0.
pub fn audit(rounds: &[PlayedRound], scores: &BTreeMap<PlayerId, i32>, seed: u64) -> FairnessAudit {
    let players: Vec<PlayerId> = players(rounds).into_iter().collect();
    let scores: Vec<i64> = players
        .iter()
        .map(|player| i64::from(scores.get(player).copied().unwrap_or(0)))
        .collect();
    let season = SeatedSeason::new(rounds, &players);
    let real = season.values(&scores);
    let mut expected = vec![0_i64; real.len()];
    season.for_each_random_season(seed, &scores, |values| {
        for (sum, value) in expected.iter_mut().zip(values) {
            *sum += value;
        }
    });
    let distance = |at: usize, value: i64| (value * i64::from(RANDOM_SEASONS) - expected[at]).abs();
    let mut as_far = vec![1_u32; real.len()];
    season.for_each_random_season(seed, &scores, |values| {
        for (at, &value) in values.iter().enumerate() {
            as_far[at] += u32::from(distance(at, value) >= distance(at, real[at]));
        }
    });
    let tests = real.len() as u32;
    let findings = real.iter().enumerate().map(|(at, &value)| FairnessFinding {
        player: players[at / MEASURES.len()],
        measure: MEASURES[at % MEASURES.len()],
        value,
        expected_sum: expected[at],
        as_extreme: as_far[at],
        unusual: u64::from(as_far[at]) * u64::from(tests) * 20 <= u64::from(RANDOM_SEASONS + 1),
    });
    FairnessAudit {
        tests,
        findings: findings.collect(),
    }
}

fn players(rounds: &[PlayedRound]) -> BTreeSet<PlayerId> {
    let games = rounds.iter().flat_map(|round| &round.games);
    let playing = games.flat_map(|game| [game.attacker, game.defender]);
    playing
        .chain(rounds.iter().flat_map(|round| round.byes.iter().copied()))
        .collect()
}

/// Every measure, in the order of a player's findings.
pub const MEASURES: [FairnessMeasure; 5] = [
    FairnessMeasure::OpponentsStrength,
    FairnessMeasure::Roles,
    FairnessMeasure::RepeatedTables,
    FairnessMeasure::Byes,
    FairnessMeasure::SameNight,
];

#[derive(Clone)]
struct SeatedSeason {
    players: usize,
    rounds: Vec<Seats>,
}

/// A round as seats: two at each table, attacker first, then those who sit out.
#[derive(Clone)]
struct Seats {
    slots: Vec<(NightKey, TableNo)>,
    seats: Vec<usize>,
    roles: bool,
    /// By player.
    nights: Vec<NightSet>,
}

impl SeatedSeason {
    fn new(rounds: &[PlayedRound], players: &[PlayerId]) -> Self {
        let number = |player: &PlayerId| players.binary_search(player).unwrap_or(0);
        let rounds = rounds.iter().map(|round| {
            let games = round
                .games
                .iter()
                .flat_map(|game| [&game.attacker, &game.defender]);
            let slots = round.games.iter().map(|game| (game.night, game.table));
            let nights = players.iter().map(|player| round.nights.get(player));
            Seats {
                slots: slots.collect(),
                seats: games.chain(&round.byes).map(number).collect(),
                roles: round.roles,
                nights: nights
                    .map(|it| it.copied().unwrap_or(NightSet::ALL))
                    .collect(),
            }
        });
        Self {
            players: players.len(),
            rounds: rounds.collect(),
        }
    }

    /// Calls `show` with the values of [`RANDOM_SEASONS`] random seasons; the same seed gives the same seasons.
    fn for_each_random_season(&self, seed: u64, scores: &[i64], mut show: impl FnMut(&[i64])) {
        let (mut season, mut chance) = (self.clone(), SplitMix64(seed));
        for _ in 0..RANDOM_SEASONS {
            season.shuffle(&mut chance);
            show(&season.values(scores));
        }
    }

    /// Deals the same players of each round out to its seats at random.
    fn shuffle(&mut self, chance: &mut SplitMix64) {
        for round in &mut self.rounds {
            for at in (1..round.seats.len()).rev() {
                round.swap(at, chance.below(at + 1));
            }
        }
    }

    /// All measures of the first player, then of the next.
    fn values(&self, scores: &[i64]) -> Vec<i64> {
        let mut values = vec![0; self.players * MEASURES.len()];
        let mut seen: Vec<Vec<TableNo>> = vec![Vec::new(); self.players];
        let mut nights = vec![[0_i64; 8]; self.players];
        for round in &self.rounds {
            let (playing, byes) = round.seats.split_at(2 * round.slots.len());
            for (&(night, table), pair) in round.slots.iter().zip(playing.chunks(2)) {
                for (player, opponent, role) in [(pair[0], pair[1], 1), (pair[1], pair[0], -1)] {
                    let own = &mut values[player * MEASURES.len()..][..MEASURES.len()];
                    own[0] += scores[opponent];
                    own[1] += if round.roles { role } else { 0 };
                    own[2] += i64::from(seen[player].contains(&table));
                    seen[player].push(table);
                    let same = &mut nights[player][usize::from(night.number())];
                    *same += 1;
                    own[4] = own[4].max(*same);
                }
            }
            for &player in byes {
                values[player * MEASURES.len() + 3] += 1;
            }
        }
        values
    }
}

impl Seats {
    /// Swaps two seats, where both players can come on the other's night.
    fn swap(&mut self, one: usize, other: usize) {
        if self.can_sit(self.seats[one], other) && self.can_sit(self.seats[other], one) {
            self.seats.swap(one, other);
        }
    }

    fn can_sit(&self, player: usize, seat: usize) -> bool {
        let slot = self.slots.get(seat / 2);
        slot.is_none_or(|&(night, _)| self.nights[player].contains(night))
    }
}

/// A seeded pseudo-random generator (SplitMix64, Steele, Lea and Flood 2014, from memory).
struct SplitMix64(u64);

impl SplitMix64 {
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
    use crate::pairing::round::hall::NightKey;

    fn player(at: usize) -> PlayerId {
        PlayerId(Uuid::from_u128(at as u128))
    }

    fn round(order: &[usize], bye: usize) -> PlayedRound {
        on_nights(order, bye, |_| 0)
    }

    /// Games in order, each on the night that `night` gives its place.
    fn on_nights(order: &[usize], bye: usize, night: impl Fn(usize) -> u8) -> PlayedRound {
        let pairs = order.chunks(2).enumerate();
        let games = pairs.map(|(at, pair)| Game {
            night: NightKey::new(night(at)).unwrap(),
            table: TableNo(at as u16),
            attacker: player(pair[0]),
            defender: player(pair[1]),
        });
        PlayedRound {
            games: games.collect(),
            byes: vec![player(bye)],
            roles: true,
            nights: BTreeMap::new(),
        }
    }

    fn find(audit: &FairnessAudit, measure: FairnessMeasure, at: usize) -> &FairnessFinding {
        audit
            .findings
            .iter()
            .find(|f| f.measure == measure && f.player == player(at))
            .unwrap()
    }

    #[test]
    fn a_player_who_sits_out_six_rounds_of_eight_is_found_unusual() {
        let rounds: Vec<PlayedRound> = (0..8)
            .map(|at| round(&[1, 2, 3, 4, 5, 6], if at < 6 { 0 } else { 7 }))
            .collect();
        let audit = audit(&rounds, &BTreeMap::new(), 1);
        assert_eq!(audit.tests, 5 * 8);
        assert!(find(&audit, FairnessMeasure::Byes, 0).unusual);
        assert!(
            !find(&audit, FairnessMeasure::OpponentsStrength, 3).unusual,
            "all scores are equal"
        );
    }

    #[test]
    fn random_seasons_are_rarely_called_unusual() {
        let players: Vec<PlayerId> = (0..9).map(player).collect();
        let scores: BTreeMap<PlayerId, i32> = (0..9).map(|at| (player(at), at as i32)).collect();
        let mut chance = SplitMix64(5);
        let mut flagged = 0;
        for seed in 0..12 {
            let mut season =
                SeatedSeason::new(&vec![round(&[1, 2, 3, 4, 5, 6, 7, 8], 0); 6], &players);
            season.shuffle(&mut chance);
            let rounds: Vec<PlayedRound> = season
                .rounds
                .iter()
                .map(|it| round(&it.seats[..8], it.seats[8]))
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

    /// Four tables, twelve rounds; player 1 is always on the first table.
    #[test]
    fn a_player_who_always_sits_at_one_table_is_found_unusual() {
        let rounds: Vec<PlayedRound> = (0..12)
            .map(|at| {
                let mut others: Vec<usize> = (2..=8).collect();
                others.rotate_left(at % 7);
                others.insert(0, 1);
                round(&others, 0)
            })
            .collect();
        let audit = audit(&rounds, &BTreeMap::new(), 3);
        assert_eq!(find(&audit, FairnessMeasure::RepeatedTables, 1).value, 11);
        assert!(find(&audit, FairnessMeasure::RepeatedTables, 1).unusual);
        assert!(!find(&audit, FairnessMeasure::RepeatedTables, 4).unusual);
    }

    /// Two nights of two tables, fourteen rounds; player 1 is always sent to the second night.
    fn always_second() -> Vec<PlayedRound> {
        (0..14)
            .map(|at| {
                let mut others: Vec<usize> = (2..=8).collect();
                others.rotate_left(at % 7);
                others.insert(7, 1);
                on_nights(&others, 0, |game| u8::from(game >= 2))
            })
            .collect()
    }

    #[test]
    fn a_player_who_is_always_sent_to_one_night_is_found_unusual() {
        let audit = audit(&always_second(), &BTreeMap::new(), 3);
        let found = find(&audit, FairnessMeasure::SameNight, 1);
        assert_eq!((found.value, found.unusual), (14, true));
        assert!(!find(&audit, FairnessMeasure::SameNight, 5).unusual);
    }

    #[test]
    fn a_player_who_can_come_on_one_night_alone_is_not_unusual_for_being_there() {
        let second = NightSet::from_bits(0b10);
        let mut rounds = always_second();
        for round in &mut rounds {
            round.nights.insert(player(1), second);
        }
        let audit = audit(&rounds, &BTreeMap::new(), 3);
        let found = find(&audit, FairnessMeasure::SameNight, 1);
        assert_eq!((found.value, found.unusual), (14, false));
    }

    /// With four players, one table a night and one round, each of the four seats is as likely.
    #[test]
    fn dealing_gives_each_seat_its_share() {
        let rounds = [on_nights(&[1, 2, 3, 4], 0, |game| game as u8)];
        let scores = (1..=4).map(|at| (player(at), i32::from(at == 2))).collect();
        let audit = audit(&rounds, &scores, 9);
        let met = find(&audit, FairnessMeasure::OpponentsStrength, 1).expected_sum;
        // One in five meets nobody, and of the rest one in four meets player 2: 1 in 5 in all.
        let expected = i64::from(RANDOM_SEASONS) / 5;
        assert!(
            (met - expected).abs() < 200,
            "{met}, 5 standard deviations are 200"
        );
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
