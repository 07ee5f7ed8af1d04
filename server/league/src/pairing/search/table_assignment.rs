//! Assignment of games to tables and nights, with as few repeated tables as possible.

use std::collections::BTreeSet;

use crate::pairing::round::hall::{Night, NightKey, NightSet, TableNo};

/// One free table on one night.
pub type TableSlot = (NightKey, TableNo);

/// A game that needs a slot.
#[derive(Clone, Debug)]
pub struct TableRequest<'a> {
    /// Nights both players can come.
    pub nights: NightSet,
    /// Tables the two have played on before.
    pub used: [&'a [TableNo]; 2],
    /// The slot at which it is published.
    pub published: Option<TableSlot>,
}

/// Costs more than any number of repeated tables: to move a published game, to another night even.
const MOVED_COST: i64 = 1 << 20;
const OTHER_NIGHT_COST: i64 = 1 << 30;
/// Costs more than any number of those: a night the players cannot come.
const FORBIDDEN_COST: i64 = 1 << 50;

/// A slot for each game: fewest published games moved, then fewest repeated tables in all; lower
/// tables first among equals.
/// `None` when some game finds no slot on its nights.
///
/// Minimum-cost assignment by shortest augmenting paths (Kuhn 1955, Munkres 1957; this form from
/// memory). One row at a time enters with the duals of the rows before it.
pub fn assign_tables(games: &[TableRequest<'_>], nights: &[Night]) -> Option<Vec<TableSlot>> {
    let slots = slots(nights);
    if games.len() > slots.len() {
        return None;
    }
    let mut rows = Hungarian::new(games, &slots);
    for game in 0..games.len() {
        rows.insert_game(game);
    }
    let mut assigned = vec![None; games.len()];
    for (slot, holder) in slots.iter().zip(&rows.holder) {
        if let Some(game) = *holder {
            assigned[game] = Some(*slot).filter(|(night, _)| games[game].nights.contains(*night));
        }
    }
    assigned.into_iter().collect()
}

/// All slots, low tables first.
fn slots(nights: &[Night]) -> Vec<TableSlot> {
    let all = nights
        .iter()
        .flat_map(|night| night.tables.iter().map(|&table| (table, night.key)));
    let ordered: BTreeSet<(TableNo, NightKey)> = all.collect();
    ordered
        .into_iter()
        .map(|(table, night)| (night, table))
        .collect()
}

struct Hungarian<'a> {
    games: &'a [TableRequest<'a>],
    slots: &'a [TableSlot],
    holder: Vec<Option<usize>>,
    game_dual: Vec<i64>,
    slot_dual: Vec<i64>,
}

impl<'a> Hungarian<'a> {
    fn new(games: &'a [TableRequest<'a>], slots: &'a [TableSlot]) -> Self {
        Self {
            holder: vec![None; slots.len()],
            game_dual: vec![0; games.len()],
            slot_dual: vec![0; slots.len()],
            games,
            slots,
        }
    }

    fn reduced_cost(&self, game: usize, slot: usize) -> i64 {
        let (wanted, (night, table)) = (&self.games[game], self.slots[slot]);
        let repeats = wanted
            .used
            .iter()
            .map(|used| used.iter().filter(|&&t| t == table).count());
        let never = if wanted.nights.contains(night) {
            0
        } else {
            FORBIDDEN_COST
        };
        let moved = match wanted.published {
            Some((kept, _)) if kept != night => OTHER_NIGHT_COST,
            Some((_, kept)) if kept != table => MOVED_COST,
            _ => 0,
        };
        never + moved + repeats.sum::<usize>() as i64 - self.game_dual[game] - self.slot_dual[slot]
    }

    /// Finds a slot for one more game and moves those in its way.
    fn insert_game(&mut self, new: usize) {
        let count = self.slots.len();
        let mut least = vec![i64::MAX; count];
        let mut from = vec![None; count];
        let mut done = vec![false; count];
        let mut path: Vec<(usize, usize)> = Vec::new();
        let (mut game, mut walked) = (new, 0);
        let free = loop {
            let mut next: Option<usize> = None;
            for slot in (0..count).filter(|&slot| !done[slot]) {
                let way = walked + self.reduced_cost(game, slot);
                if way < least[slot] {
                    least[slot] = way;
                    from[slot] = path.last().map(|&(slot, _)| slot);
                }
                if next.is_none_or(|best| least[slot] < least[best]) {
                    next = Some(slot);
                }
            }
            let Some(slot) = next else { return };
            walked = least[slot];
            done[slot] = true;
            match self.holder[slot] {
                None => break slot,
                Some(holder) => {
                    path.push((slot, holder));
                    game = holder;
                }
            }
        };
        self.game_dual[new] += walked;
        for &(slot, holder) in &path {
            self.game_dual[holder] += walked - least[slot];
            self.slot_dual[slot] -= walked - least[slot];
        }
        let mut slot = free;
        while let Some(before) = from[slot] {
            self.holder[slot] = self.holder[before];
            slot = before;
        }
        self.holder[slot] = Some(new);
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn night(number: u8, tables: &[u16]) -> Night {
        let tables = tables.iter().map(|&table| TableNo(table)).collect();
        Night {
            key: NightKey::new(number).unwrap(),
            tables,
        }
    }

    fn repeats(games: &[TableRequest<'_>], slots: &[TableSlot]) -> usize {
        let count = |used: &[TableNo], table| used.iter().filter(|&&t| t == table).count();
        let each = games
            .iter()
            .zip(slots)
            .flat_map(|(game, &(_, table))| game.used.map(|used| count(used, table)));
        each.sum()
    }

    /// Every assignment is tried.
    fn fewest(games: &[TableRequest<'_>], free: &[TableSlot]) -> Option<usize> {
        let Some((game, rest)) = games.split_first() else {
            return Some(0);
        };
        let usable = (0..free.len()).filter(|&at| game.nights.contains(free[at].0));
        usable
            .filter_map(|at| {
                let mut left = free.to_vec();
                let slot = left.remove(at);
                Some(repeats(&games[..1], &[slot]) + fewest(rest, &left)?)
            })
            .min()
    }

    proptest! {
        #[test]
        fn no_other_assignment_repeats_fewer_tables(
            used in prop::collection::vec(prop::collection::vec(1_u16..5, 0..4), 8),
            can in prop::collection::vec(1_u8..4, 4),
        ) {
            let used: Vec<Vec<TableNo>> =
                used.into_iter().map(|list| list.into_iter().map(TableNo).collect()).collect();
            let nights = [night(0, &[1, 2, 3]), night(1, &[2, 4])];
            let games: Vec<TableRequest<'_>> = can
                .iter()
                .enumerate()
                .map(|(at, &bits)| TableRequest {
                    nights: NightSet::from_bits(bits),
                    used: [&used[2 * at], &used[2 * at + 1]],
                    published: None,
                })
                .collect();
            let found = assign_tables(&games, &nights);
            prop_assert_eq!(
                found.as_ref().map(|slots| repeats(&games, slots)),
                fewest(&games, &slots(&nights))
            );
            if let Some(slots) = found {
                prop_assert_eq!(BTreeSet::from_iter(&slots).len(), games.len());
            }
        }
    }

    #[test]
    fn low_tables_are_used_first() {
        let free: &[TableNo] = &[];
        let game = TableRequest {
            nights: NightSet::ALL,
            used: [free, free],
            published: None,
        };
        let slots = assign_tables(&[game.clone(), game], &[night(0, &[9, 4, 1])]).unwrap();
        assert_eq!(
            slots.iter().map(|&(_, table)| table.0).collect::<Vec<_>>(),
            [1, 4]
        );
    }
}
