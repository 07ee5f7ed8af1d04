//! The nights of a week as the pairing numbers them, and those that belong to one of its rounds.

use super::hall::{MAX_NIGHTS, Night, NightKey, NightSet, TableNo};

/// The nights that one of a week's rounds is played on: an equal share of the week's `nights`, the first
/// for the first round. So nobody has two games on one night, and no round stands in the next one's way.
/// `number` is that of the round, from 1.
pub fn nights_of_round(nights: usize, per_week: u8, number: u8) -> NightSet {
    let all = nights.max(1);
    let round_of = |night: usize| night * usize::from(per_week) / all + 1;
    (0..MAX_NIGHTS)
        .filter(|&night| round_of(usize::from(night)) == usize::from(number))
        .filter_map(NightKey::new)
        .collect()
}

/// The nights of the week, with so many tables each, that are in `share`. The same number of a table means
/// the same terrain on every night.
pub fn number_tables(tables: impl IntoIterator<Item = u16>, share: NightSet) -> Vec<Night> {
    let numbered = tables.into_iter().zip(0..);
    numbered
        .filter_map(|(tables, number)| {
            Some(Night {
                key: NightKey::new(number).filter(|key| share.contains(*key))?,
                tables: (1..=tables).map(TableNo).collect(),
            })
        })
        .collect()
}

/// Which of the week's nights, named in order by `week`, these are. A name that the week does not have is
/// none.
pub fn number_nights<'a>(week: impl IntoIterator<Item = &'a str>, names: &[String]) -> NightSet {
    let numbered = week.into_iter().zip(0..);
    numbered
        .filter(|(night, _)| names.iter().any(|name| name == night))
        .filter_map(|(_, number)| NightKey::new(number))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn nights(numbers: &[u8]) -> NightSet {
        let keys = numbers.iter().filter_map(|&number| NightKey::new(number));
        keys.collect()
    }

    #[test]
    fn the_rounds_of_a_week_share_its_nights_and_never_one_night() {
        assert_eq!(nights_of_round(2, 2, 1), nights(&[0]));
        assert_eq!(nights_of_round(2, 2, 2), nights(&[1]));
        assert_eq!(nights_of_round(3, 2, 1), nights(&[0, 1]));
        assert_eq!(nights_of_round(3, 2, 2), nights(&[2]));
        for (count, per_week) in [(1, 1), (2, 1), (5, 3), (7, 7)] {
            let rounds = (1..=per_week).map(|number| nights_of_round(count, per_week, number));
            let seen = rounds.fold(NightSet::NONE, |seen, share| {
                assert!(seen.intersection(share).is_empty(), "{count} {per_week}");
                NightSet::from_bits(seen.bits() | share.bits())
            });
            let first = (0..u8::try_from(count).unwrap()).collect::<Vec<_>>();
            assert!(nights(&first).is_subset(seen), "{count} {per_week}");
        }
    }

    #[test]
    fn nights_are_numbered_as_they_begin() {
        let names = ["thu".to_owned(), "sun".to_owned()];
        assert_eq!(number_nights(["tue", "thu"], &names), nights(&[1]));
        let tables = number_tables([2, 1], nights(&[1]));
        let thursday = Night {
            key: NightKey::new(1).unwrap(),
            tables: vec![TableNo(1)],
        };
        assert_eq!(tables, [thursday]);
    }
}
