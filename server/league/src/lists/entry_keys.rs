//! Entry keys of a pasted list: those of last week's units, which names alone cannot tell.

use std::collections::HashSet;

use crate::lists::army_list::{ArmyList, Entry, EntryKey, MAX_ENTRIES};

/// The list with the keys of `previous` for units that can be the same, in favour of the player:
/// of several entries of one unit, first those that return unchanged, then those that lost
/// nothing and grew least, then the rest. Entries that are new get keys that were not used.
pub fn reuse_entry_keys(list: &ArmyList, previous: &ArmyList) -> ArmyList {
    if list.faction() != previous.faction() {
        return list.clone();
    }
    let mut given: Vec<Option<EntryKey>> = vec![None; list.entries().len()];
    let mut free: Vec<&Entry> = previous.entries().iter().collect();
    // Closest first: an unchanged unit gets its key back before one that merely grew can take it.
    for closeness in [Closeness::Unchanged, Closeness::Grown, Closeness::Other] {
        free.retain(|before| {
            let candidates = list.entries().iter().zip(&mut given);
            let best = candidates
                .filter(|(now, key)| {
                    key.is_none() && entry_closeness(before, now) == Some(closeness)
                })
                .min_by_key(|(now, _)| now.models.abs_diff(before.models));
            match best {
                Some((_, key)) => {
                    *key = Some(before.key.clone());
                    false
                }
                None => true,
            }
        });
    }
    with_keys(list, previous, &given).unwrap_or_else(|| list.clone())
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Closeness {
    Unchanged,
    Grown,
    Other,
}

/// How close this week's entry is to last week's; `None` when it is another unit.
fn entry_closeness(before: &Entry, now: &Entry) -> Option<Closeness> {
    let kept = |(key, taken): (_, &u32)| now.options.get(key).is_some_and(|now| now >= taken);
    let lost_nothing = now.models >= before.models && before.options.iter().all(kept);
    (before.unit == now.unit).then_some(
        if before.models == now.models && before.options == now.options {
            Closeness::Unchanged
        } else if lost_nothing {
            Closeness::Grown
        } else {
            Closeness::Other
        },
    )
}

fn with_keys(list: &ArmyList, previous: &ArmyList, given: &[Option<EntryKey>]) -> Option<ArmyList> {
    let mut used: HashSet<EntryKey> = given.iter().flatten().cloned().collect();
    used.extend(previous.entries().iter().map(|entry| entry.key.clone()));
    let mut keys = Vec::with_capacity(given.len());
    for (entry, key) in list.entries().iter().zip(given) {
        keys.push(match key {
            Some(key) => key.clone(),
            None => unused_key(&entry.key, &mut used)?,
        });
    }
    let mut entries = list.entries().to_vec();
    for (entry, key) in entries.iter_mut().zip(&keys) {
        entry.key = key.clone();
        if let Some(joined) = &mut entry.joins {
            *joined = keys.get(list.position(joined)?)?.clone();
        }
    }
    ArmyList::new(list.faction().clone(), entries).ok()
}

/// The key itself, or its stem with the first number that is not taken.
fn unused_key(key: &EntryKey, used: &mut HashSet<EntryKey>) -> Option<EntryKey> {
    let stem = key.as_str().trim_end_matches(|c: char| c.is_ascii_digit());
    let stem: String = stem.chars().take(36).collect();
    let numbered =
        (1..=2 * MAX_ENTRIES + 1).filter_map(|i| EntryKey::new(&format!("{stem}{i}")).ok());
    let mut keys = std::iter::once(key.clone()).chain(numbered);
    keys.find(|key| used.insert(key.clone()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::samples::{list, list_of};

    fn keys(now: &str, before: &str) -> Vec<String> {
        let list = reuse_entry_keys(&list(now), &list(before));
        list.entries()
            .iter()
            .map(|entry| {
                let joins = entry.joins.as_ref();
                joins.map_or(entry.key.to_string(), |host| {
                    format!("{}>{host}", entry.key)
                })
            })
            .collect()
    }

    #[test]
    fn unchanged_units_return_before_grown_ones_and_those_before_the_rest() {
        let before = "a turf-cutters 8, b turf-cutters 10 mud-sledges, c turf-cutters 12";
        let now = "turf-1 turf-cutters 9, turf-2 turf-cutters 11 mud-sledges, \
                   turf-3 turf-cutters 12, turf-4 turf-cutters 8";
        assert_eq!(keys(now, before), ["turf-1", "b", "c", "a"]);
        let now = "turf-1 turf-cutters 9, turf-2 turf-cutters 16";
        assert_eq!(keys(now, before), ["a", "c"]);
    }

    #[test]
    fn new_units_get_keys_that_nobody_had() {
        let before = "waders-1 stilt-waders 8, kin-1 rushlight-kin 6";
        let now = "waders-1 fen-trebuchet 4, waders-2 stilt-waders 8";
        assert_eq!(keys(now, before), ["waders-2", "waders-1"]);
    }

    #[test]
    fn who_joins_whom_stays() {
        let before = "m mire-speaker 1, t turf-cutters 8";
        let now = "x mire-speaker 1 >y, y turf-cutters 9";
        assert_eq!(keys(now, before), ["m>t", "t"]);
    }

    #[test]
    fn a_list_of_another_faction_continues_nothing() {
        let other = list_of("bramblestile-steadings", "a orchard-levy 10");
        let now = list("x turf-cutters 8");
        assert_eq!(reuse_entry_keys(&now, &other), now);
    }
}
