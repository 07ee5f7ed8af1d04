//! Collections indexed by player, contiguous in memory in the order in which the table reads them.

use crate::week::WeekNo;

/// Items by player and week. What somebody has in one week stays in the order in which it
/// came.
pub struct ByPlayerWeek<T> {
    weeks: usize,
    /// Where the items of each week of each player begin, and one index more for the end.
    starts: Vec<usize>,
    items: Vec<T>,
}

impl<T> ByPlayerWeek<T> {
    /// Sorts items by player and week (counting sort). Those of weeks after `last` are left out.
    pub fn new(
        players: usize,
        last: WeekNo,
        items: impl Iterator<Item = (usize, WeekNo, T)>,
    ) -> Self {
        let weeks = usize::from(last.number());
        let in_time = items.filter(|(_, week, _)| *week <= last);
        let (cells, mut items): (Vec<usize>, Vec<Option<T>>) = in_time
            .map(|(player, week, item)| (player * weeks + week_index(week), Some(item)))
            .unzip();
        let starts = starts(&cells, players * weeks);
        let order = order(&cells, &starts);
        let sorted = order.iter().filter_map(|&from| items.get_mut(from)?.take());
        Self {
            items: sorted.collect(),
            weeks,
            starts,
        }
    }

    /// What a player has in a week.
    pub fn get(&self, player: usize, week: WeekNo) -> &[T] {
        self.between(player, week_index(week), week_index(week) + 1)
    }

    /// What a player has up to a week, in the order of the weeks.
    pub fn up_to(&self, player: usize, week: WeekNo) -> &[T] {
        self.between(player, 0, week_index(week) + 1)
    }

    fn between(&self, player: usize, from: usize, to: usize) -> &[T] {
        let start = |index: usize| {
            let index = index.min(self.weeks);
            self.starts.get(player * self.weeks + index).copied()
        };
        let range = start(from).zip(start(to));
        let items = range.and_then(|(from, to)| self.items.get(from..to));
        items.unwrap_or_default()
    }
}

fn starts(cells: &[usize], all: usize) -> Vec<usize> {
    let mut starts = vec![0; all + 1];
    for &cell in cells {
        if let Some(count) = starts.get_mut(cell + 1) {
            *count += 1;
        }
    }
    let mut sum = 0;
    for start in &mut starts {
        sum += *start;
        *start = sum;
    }
    starts
}

fn order(cells: &[usize], starts: &[usize]) -> Vec<usize> {
    let mut next = starts.to_vec();
    let mut order = vec![0; cells.len()];
    for (from, &cell) in cells.iter().enumerate() {
        if let Some(next) = next.get_mut(cell) {
            if let Some(to) = order.get_mut(*next) {
                *to = from;
            }
            *next += 1;
        }
    }
    order
}

/// The index of a week in a list that starts with the first.
pub fn week_index(week: WeekNo) -> usize {
    usize::from(week.number() - 1)
}

/// A list for each player.
pub struct ByPlayer<T> {
    ends: Vec<usize>,
    items: Vec<T>,
}

impl<T> ByPlayer<T> {
    /// For so many players with about so many items each.
    pub fn with_capacity(players: usize, each: usize) -> Self {
        Self {
            ends: Vec::with_capacity(players),
            items: Vec::with_capacity(players * each),
        }
    }

    /// Adds the list of the next player.
    pub fn push(&mut self, items: impl Iterator<Item = T>) {
        self.items.extend(items);
        self.ends.push(self.items.len());
    }

    /// How many players have one.
    pub fn len(&self) -> usize {
        self.ends.len()
    }

    pub fn get(&self, player: usize) -> &[T] {
        let range = self.range(player);
        range
            .and_then(|range| self.items.get(range))
            .unwrap_or_default()
    }

    /// A player's list, to be changed.
    pub fn get_mut(&mut self, player: usize) -> &mut [T] {
        let range = self.range(player);
        range
            .and_then(|range| self.items.get_mut(range))
            .unwrap_or_default()
    }

    /// The lists of all players.
    pub fn iter(&self) -> impl Iterator<Item = &[T]> {
        (0..self.len()).map(|player| self.get(player))
    }

    fn range(&self, player: usize) -> Option<std::ops::Range<usize>> {
        let start = match player.checked_sub(1) {
            None => 0,
            Some(before) => *self.ends.get(before)?,
        };
        Some(start..*self.ends.get(player)?)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::standings::tests::seasons::week;

    #[test]
    fn items_are_found_by_player_and_week_in_the_order_in_which_they_came() {
        let items = [
            (1, 2, 'a'),
            (0, 3, 'b'),
            (1, 1, 'c'),
            (1, 2, 'd'),
            (0, 4, 'e'),
        ];
        let items = items.map(|(player, no, item)| (player, week(no), item));
        let sorted = ByPlayerWeek::new(2, week(3), items.into_iter());
        assert_eq!(sorted.get(1, week(2)), ['a', 'd']);
        assert!(sorted.get(0, week(1)).is_empty());
        assert_eq!(sorted.up_to(1, week(3)), ['c', 'a', 'd']);
        assert_eq!(sorted.up_to(0, week(4)), ['b'], "week 4 was left out");
        assert!(sorted.get(2, week(1)).is_empty(), "nobody");
    }

    #[test]
    fn every_player_has_a_list_of_their_own() {
        let mut lists = ByPlayer::with_capacity(2, 2);
        lists.push([1, 2].into_iter());
        lists.push([].into_iter());
        lists.push([3].into_iter());
        lists.get_mut(2)[0] = 4;
        let all: Vec<_> = lists.iter().collect();
        assert_eq!(all, [&[1, 2][..], &[], &[4]]);
        assert_eq!(lists.get(3), []);
    }
}
