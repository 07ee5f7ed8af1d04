//! Facts in the order in which the table reads them, player by player, each in one piece of memory.

use crate::week::WeekNo;

/// Things that players have in weeks. What somebody has in one week stays in the order in which it
/// came.
pub struct ByWeek<T> {
    weeks: usize,
    /// Where the things of each week of each player begin, and one place more for the end.
    starts: Vec<usize>,
    things: Vec<T>,
}

impl<T> ByWeek<T> {
    /// Sorts things by player and week by counting them. Those of weeks after `last` are left out.
    pub fn sort(
        players: usize,
        last: WeekNo,
        things: impl Iterator<Item = (usize, WeekNo, T)>,
    ) -> Self {
        let weeks = usize::from(last.number());
        let in_time = things.filter(|(_, week, _)| *week <= last);
        let (cells, mut things): (Vec<usize>, Vec<Option<T>>) = in_time
            .map(|(player, week, thing)| (player * weeks + place_of(week), Some(thing)))
            .unzip();
        let starts = starts(&cells, players * weeks);
        let order = order(&cells, &starts);
        let sorted = order
            .iter()
            .filter_map(|&from| things.get_mut(from)?.take());
        Self {
            things: sorted.collect(),
            weeks,
            starts,
        }
    }

    /// What a player has in a week.
    pub fn of(&self, player: usize, week: WeekNo) -> &[T] {
        self.between(player, place_of(week), place_of(week) + 1)
    }

    /// What a player has up to a week, in the order of the weeks.
    pub fn until(&self, player: usize, week: WeekNo) -> &[T] {
        self.between(player, 0, place_of(week) + 1)
    }

    fn between(&self, player: usize, from: usize, to: usize) -> &[T] {
        let start = |place: usize| {
            let place = place.min(self.weeks);
            self.starts.get(player * self.weeks + place).copied()
        };
        let range = start(from).zip(start(to));
        let things = range.and_then(|(from, to)| self.things.get(from..to));
        things.unwrap_or_default()
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

/// The place of a week in a list that starts with the first.
pub fn place_of(week: WeekNo) -> usize {
    usize::from(week.number() - 1)
}

/// A list for each player.
pub struct Lists<T> {
    ends: Vec<usize>,
    things: Vec<T>,
}

impl<T> Lists<T> {
    /// For so many players with about so many things each.
    pub fn with_capacity(players: usize, each: usize) -> Self {
        Self {
            ends: Vec::with_capacity(players),
            things: Vec::with_capacity(players * each),
        }
    }

    /// Adds the list of the next player.
    pub fn push(&mut self, things: impl Iterator<Item = T>) {
        self.things.extend(things);
        self.ends.push(self.things.len());
    }

    /// How many players have one.
    pub fn len(&self) -> usize {
        self.ends.len()
    }

    /// A player's list.
    pub fn of(&self, player: usize) -> &[T] {
        let range = self.range(player);
        range
            .and_then(|range| self.things.get(range))
            .unwrap_or_default()
    }

    /// A player's list, to be changed.
    pub fn of_mut(&mut self, player: usize) -> &mut [T] {
        let range = self.range(player);
        range
            .and_then(|range| self.things.get_mut(range))
            .unwrap_or_default()
    }

    /// The lists of all players.
    pub fn iter(&self) -> impl Iterator<Item = &[T]> {
        (0..self.len()).map(|player| self.of(player))
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
    fn things_are_found_by_player_and_week_in_the_order_in_which_they_came() {
        let things = [
            (1, 2, 'a'),
            (0, 3, 'b'),
            (1, 1, 'c'),
            (1, 2, 'd'),
            (0, 4, 'e'),
        ];
        let things = things.map(|(player, no, thing)| (player, week(no), thing));
        let sorted = ByWeek::sort(2, week(3), things.into_iter());
        assert_eq!(sorted.of(1, week(2)), ['a', 'd']);
        assert_eq!(sorted.of(0, week(1)), []);
        assert_eq!(sorted.until(1, week(3)), ['c', 'a', 'd']);
        assert_eq!(sorted.until(0, week(4)), ['b'], "week 4 was left out");
        assert_eq!(sorted.of(2, week(1)), [], "nobody");
    }

    #[test]
    fn every_player_has_a_list_of_their_own() {
        let mut lists = Lists::with_capacity(2, 2);
        lists.push([1, 2].into_iter());
        lists.push([].into_iter());
        lists.push([3].into_iter());
        lists.of_mut(2)[0] = 4;
        let all: Vec<_> = lists.iter().collect();
        assert_eq!(all, [&[1, 2][..], &[], &[4]]);
        assert_eq!(lists.of(3), []);
    }
}
