//! One round of a round robin as a task: the games of the Berger table, and games missed earlier that
//! both players are free to catch up.
//!
//! Whose opponent is away sits out, or catches a missed game up; nobody meets somebody ahead of the
//! table. So everybody's games stay those of the table, in whatever week they are played.

use std::collections::{BTreeMap, BTreeSet};

use messages::{Message, policy};

use crate::ids::PlayerId;
use crate::pairing::round::game::{FixedGame, Meeting, Pair};
use crate::pairing::round::hall::NightSet;
use crate::pairing::round::method::Cycles;
use crate::pairing::round::task::Task;
use crate::pairing::round::wishes::Wish;

use super::berger::{MAX_PLAYERS, SeatPair, berger_table, double_berger_table};

/// The seat of everybody who is there: their number in the table, from 1.
pub type SeatNumbers = BTreeMap<PlayerId, u8>;

/// Who must and who may meet in one round.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TableRound {
    /// Games of the round whose players can both come.
    pub fixed: Vec<FixedGame>,
    /// Those, and games that were missed.
    pub allowed: Vec<Pair>,
}

/// The rounds of a round robin with so many seats; `None` where the tables do not go so far.
pub fn cycle_table(seats: usize, cycles: Cycles) -> Option<Vec<Vec<SeatPair>>> {
    match cycles {
        Cycles::Single => berger_table(seats),
        Cycles::Double => double_berger_table(seats),
    }
}

/// Why a season has no room for a round robin.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RoundRobinFault {
    /// The tables go no further.
    Players {
        /// How many there are.
        players: usize,
    },
    /// The table has more rounds than the season.
    Rounds {
        /// How many there are.
        players: usize,
        /// Rounds of their table.
        needed: usize,
        /// Rounds of the season.
        rounds: usize,
    },
}

impl RoundRobinFault {
    pub fn message(&self) -> Message {
        match *self {
            Self::Players { .. } => policy::policy_round_robin_players(MAX_PLAYERS),
            Self::Rounds {
                players,
                needed,
                rounds,
            } => policy::policy_round_robin_rounds(players, needed, rounds),
        }
    }
    /// The limit that is exceeded, and the number that exceeds it.
    pub fn limit_and_actual(self) -> (usize, usize) {
        match self {
            Self::Players { players } => (MAX_PLAYERS, players),
            Self::Rounds { needed, rounds, .. } => (needed, rounds),
        }
    }
}

/// Whether so many players, two at least, can all meet within so many rounds.
///
/// # Errors
/// [`RoundRobinFault`] where they cannot.
pub fn check_room(players: usize, cycles: Cycles, rounds: usize) -> Result<(), RoundRobinFault> {
    let needed = cycle_table(players, cycles).ok_or(RoundRobinFault::Players { players })?;
    let needed = needed.len();
    if needed > rounds {
        return Err(RoundRobinFault::Rounds {
            players,
            needed,
            rounds,
        });
    }
    Ok(())
}

/// A round's position in the season's Berger table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TablePosition {
    /// Seats of the table.
    pub seats: usize,
    /// How often everybody meets everybody.
    pub cycles: Cycles,
    /// Index of the round, from 0.
    pub number: usize,
}

/// The task with what the table says of it: households and all wishes but the roles' play no part, and
/// after the table's last round only those who missed a game contend. `None` where the tables do not
/// go so far.
pub fn restrict_to_table(
    mut task: Task,
    seats: &SeatNumbers,
    place: TablePosition,
) -> Option<Task> {
    let table = cycle_table(place.seats, place.cycles)?;
    for contender in &mut task.contenders {
        contender.household = None;
    }
    task.wishes = task.wishes.only(&[Wish::RolesInBounds, Wish::RolesEven]);
    task.rounds_left = u8::try_from(table.len().saturating_sub(place.number + 1)).ok()?;
    let round = TableRound::for_task(&table, seats, &task, place.number);
    if place.number >= table.len() {
        let allowed = &round.allowed;
        let owes = |player| allowed.iter().any(|pair| pair.contains(player));
        task.contenders.retain(|contender| owes(contender.player));
    }
    task.fixed = round.fixed;
    task.allowed = Some(round.allowed);
    Some(task)
}

impl TableRound {
    /// Round `number` of the table for those who contend, where both can come on a night that is open.
    fn for_task(table: &[Vec<SeatPair>], seats: &SeatNumbers, task: &Task, number: usize) -> Self {
        let open = task.nights.iter().filter(|night| !night.tables.is_empty());
        let open: NightSet = open.map(|night| night.key).collect();
        let nights: BTreeMap<PlayerId, NightSet> = task
            .contenders
            .iter()
            .map(|contender| (contender.player, contender.nights.intersection(open)))
            .collect();
        let there = seats
            .iter()
            .filter(|(player, _)| nights.contains_key(player));
        let there = there.map(|(&player, &seat)| (player, seat)).collect();
        let together = |pair: Pair| {
            let [one, other] = pair.players().map(|player| nights.get(&player).copied());
            let shared = one.zip(other).map(|(one, other)| one.intersection(other));
            shared.is_some_and(|shared| !shared.is_empty()) && !task.forbidden.contains(&pair)
        };
        Self::from_table(table, number, &there, &task.history, together)
    }

    /// Round `number` of the table, from 0; beyond its end only what was missed is left. `together`
    /// says who can play each other in this round at all.
    pub fn from_table(
        table: &[Vec<SeatPair>],
        number: usize,
        seats: &SeatNumbers,
        history: &[Meeting],
        together: impl Fn(Pair) -> bool,
    ) -> Self {
        let holders: BTreeMap<usize, PlayerId> = seats
            .iter()
            .map(|(&player, &seat)| (usize::from(seat), player))
            .collect();
        let fixture = |&(a, b): &SeatPair| {
            Some(FixedGame {
                attacker: *holders.get(&a)?,
                defender: *holders.get(&b)?,
            })
        };
        let fixtures = |rounds: &[Vec<SeatPair>]| -> Vec<FixedGame> {
            rounds.iter().flatten().filter_map(fixture).collect()
        };
        let (past, rest) = table.split_at(number.min(table.len()));
        let mut fixed = fixtures(rest.get(..1).unwrap_or_default());
        fixed.retain(|fixture| fixture.pair().is_some_and(&together));
        let mut owed: BTreeMap<Pair, i32> = BTreeMap::new();
        for pair in fixtures(past).into_iter().filter_map(FixedGame::pair) {
            *owed.entry(pair).or_default() += 1;
        }
        for meeting in history {
            *owed.entry(meeting.pair).or_default() -= 1;
        }
        let missed = owed.into_iter().filter(|&(_, times)| times > 0);
        let allowed: BTreeSet<Pair> = fixed
            .iter()
            .filter_map(|fixture| fixture.pair())
            .chain(missed.map(|(pair, _)| pair))
            .collect();
        Self {
            fixed,
            allowed: allowed.into_iter().collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;
    use crate::week::WeekNo;

    fn player(number: u8) -> PlayerId {
        PlayerId(Uuid::from_u128(number.into()))
    }

    fn pair(a: u8, b: u8) -> Pair {
        Pair::new(player(a), player(b)).unwrap()
    }

    fn seats(of: impl IntoIterator<Item = u8>) -> SeatNumbers {
        of.into_iter().map(|seat| (player(seat), seat)).collect()
    }

    fn met(pairs: &[(u8, u8)]) -> Vec<Meeting> {
        let meeting = |&(a, b): &(u8, u8)| Meeting {
            pair: pair(a, b),
            week: WeekNo::FIRST,
        };
        pairs.iter().map(meeting).collect()
    }

    fn numbers(round: &TableRound) -> Vec<(u128, u128)> {
        let number = |player: PlayerId| player.0.as_u128();
        let fixed = round.fixed.iter();
        fixed
            .map(|it| (number(it.attacker), number(it.defender)))
            .collect()
    }

    #[test]
    fn a_full_round_is_that_of_the_table_with_its_roles() {
        let table = cycle_table(4, Cycles::Single).unwrap();
        let met = met(&[(1, 4), (2, 3)]);
        let round = TableRound::from_table(&table, 1, &seats(1..=4), &met, |_| true);
        assert_eq!(numbers(&round), [(4, 3), (1, 2)]);
        assert_eq!(round.allowed, [pair(1, 2), pair(3, 4)]);
    }

    #[test]
    fn a_missed_game_is_caught_up_when_both_are_free() {
        let table = cycle_table(6, Cycles::Single).unwrap();
        // In round 1 (1-6, 2-5, 3-4) player 6 was away. In round 2 (6-4, 5-3, 1-2) player 4 is.
        let met = met(&[(2, 5), (3, 4)]);
        let there = seats([1, 2, 3, 5, 6]);
        let round = TableRound::from_table(&table, 1, &there, &met, |_| true);
        assert_eq!(numbers(&round), [(5, 3), (1, 2)]);
        assert_eq!(round.allowed, [pair(1, 2), pair(1, 6), pair(3, 5)]);
    }

    #[test]
    fn after_the_table_only_missed_games_are_left() {
        let table = cycle_table(4, Cycles::Single).unwrap();
        let met = met(&[(1, 4), (2, 3), (3, 4), (1, 2), (1, 3)]);
        let round = TableRound::from_table(&table, 3, &seats(1..=4), &met, |_| true);
        assert_eq!(
            (numbers(&round).len(), round.allowed),
            (0, vec![pair(2, 4)])
        );
    }

    #[test]
    fn who_shares_no_night_owes_the_game() {
        let table = cycle_table(4, Cycles::Single).unwrap();
        let apart = pair(1, 4);
        let round = TableRound::from_table(&table, 0, &seats(1..=4), &[], |pair| pair != apart);
        assert_eq!(numbers(&round), [(2, 3)]);
        let met = met(&[(2, 3)]);
        let next = TableRound::from_table(&table, 1, &seats(1..=4), &met, |_| true);
        assert!(next.allowed.contains(&apart));
    }

    #[test]
    fn in_the_second_cycle_everybody_may_meet_again() {
        let table = cycle_table(4, Cycles::Double).unwrap();
        let met = met(&[(1, 4), (2, 3), (3, 4), (1, 2), (1, 3), (2, 4)]);
        let round = TableRound::from_table(&table, 3, &seats(1..=4), &met, |_| true);
        assert_eq!((round.fixed.len(), round.allowed.len()), (2, 2));
    }

    /// Somebody takes the empty seat of an odd field in the third round.
    #[test]
    fn a_latecomer_takes_the_empty_seat_and_owes_what_was_missed() {
        let table = cycle_table(5, Cycles::Single).unwrap();
        let met = met(&[(2, 5), (3, 4), (3, 5), (1, 2)]);
        let round = TableRound::from_table(&table, 2, &seats(1..=6), &met, |_| true);
        assert!(round.fixed.iter().any(|it| it.defender == player(6)));
        let owed = [pair(1, 6), pair(4, 6)];
        assert!(owed.iter().all(|pair| round.allowed.contains(pair)));
    }
}
