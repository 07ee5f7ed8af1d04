//! Seats of a round robin: the size of its table, and the seat for who comes after the start.

use std::collections::BTreeSet;

/// Seats of the table, an even number, by the seats that were ever given; `None` where there are none.
pub fn table_size(given: impl IntoIterator<Item = u8>) -> Option<usize> {
    let last = given.into_iter().max()?;
    Some(usize::from(last).next_multiple_of(2))
}

/// The lowest of so many seats that nobody has; `None` when all are taken.
pub fn find_free_seat(seats: usize, taken: &BTreeSet<u8>) -> Option<u8> {
    let mut all = (1..=u8::MAX).take(seats);
    all.find(|seat| !taken.contains(seat))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_table_has_an_even_number_of_seats() {
        assert_eq!(table_size([]), None);
        assert_eq!(table_size([3, 1, 2]), Some(4));
        assert_eq!(table_size([1, 2, 3, 4]), Some(4));
    }

    #[test]
    fn who_comes_later_takes_the_lowest_free_seat() {
        assert_eq!(find_free_seat(4, &[1, 3].into()), Some(2));
        assert_eq!(find_free_seat(4, &[1, 2, 3].into()), Some(4));
        assert_eq!(find_free_seat(4, &[1, 2, 3, 4].into()), None);
    }
}
