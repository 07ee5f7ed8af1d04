//! A player's collection: every unit brought or fielded, with how far it is painted.

use std::collections::BTreeMap;

use crate::catalogue::key::{FactionKey, UnitKey};
use crate::lists::army_list::{ArmyList, Entry, EntryKey, PaintedModels};
use crate::painting::BroughtUnit;
use crate::week::WeekNo;

/// One unit of a collection.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CollectionUnit {
    /// Which unit of the collection.
    pub entry: EntryKey,
    pub faction: FactionKey,
    /// What it is in the catalogue.
    pub unit: UnitKey,
    /// Most models ever fielded.
    pub models: u32,
    /// Finished models, at most all of them: what is painted stays painted.
    pub finished: u32,
    /// The first and the last week it was fielded in; `None` when it was only brought.
    pub fielded: Option<(WeekNo, WeekNo)>,
}

/// Gathers the units that a player brought into the season and those of the lists since, in the order
/// in which they first appeared.
pub fn build_collection<'a>(
    brought: &[BroughtUnit],
    lists: impl IntoIterator<Item = (WeekNo, &'a ArmyList)>,
    painted: &PaintedModels,
) -> Vec<CollectionUnit> {
    let mut units: Vec<CollectionUnit> = brought.iter().map(CollectionUnit::brought).collect();
    for (week, list) in lists {
        for entry in list.entries() {
            let known = units.iter_mut().find(|unit| {
                unit.entry == entry.key
                    && unit.unit == entry.unit
                    && &unit.faction == list.faction()
            });
            if let Some(unit) = known {
                unit.models = unit.models.max(entry.models);
                let (first, last) = unit.fielded.unwrap_or((week, week));
                unit.fielded = Some((first.min(week), last.max(week)));
            } else {
                units.push(CollectionUnit {
                    entry: entry.key.clone(),
                    faction: list.faction().clone(),
                    unit: entry.unit.clone(),
                    models: entry.models,
                    finished: 0,
                    fielded: Some((week, week)),
                });
            }
        }
    }
    for unit in &mut units {
        let finished = painted.get(&unit.entry).copied().unwrap_or(0);
        unit.finished = finished.min(unit.models);
    }
    units
}

/// The brought units of a faction as if they were a list: what a first list can go on with. `None`
/// where nothing was brought.
pub fn brought_list(brought: &[BroughtUnit], faction: &FactionKey) -> Option<ArmyList> {
    let own = brought.iter().filter(|unit| unit.faction == *faction);
    let entries: Vec<Entry> = own
        .map(|unit| Entry {
            key: unit.entry.clone(),
            unit: unit.unit.clone(),
            models: unit.models,
            options: BTreeMap::new(),
            joins: None,
        })
        .collect();
    (!entries.is_empty())
        .then(|| ArmyList::new(faction.clone(), entries).ok())
        .flatten()
}

impl CollectionUnit {
    fn brought(unit: &BroughtUnit) -> Self {
        Self {
            entry: unit.entry.clone(),
            faction: unit.faction.clone(),
            unit: unit.unit.clone(),
            models: unit.models,
            finished: 0,
            fielded: None,
        }
    }
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;
    use crate::ids::PlayerId;
    use crate::lists::samples::list;

    #[test]
    fn a_unit_keeps_its_largest_size_its_weeks_and_its_paint() {
        let lists = [
            list("a turf-cutters 8, b rushlight-kin 6"),
            list("a turf-cutters 12"),
            list("a turf-cutters 10, c stilt-waders 4"),
        ];
        let weeks = (1..).filter_map(WeekNo::new);
        let painted = [("a", 9), ("c", 7)]
            .map(|(key, models)| (EntryKey::new(key).unwrap(), models))
            .into();
        let found: Vec<_> = build_collection(&[], weeks.zip(&lists), &painted)
            .iter()
            .map(|unit| {
                let weeks = unit.fielded.map(|(a, b)| (a.number(), b.number()));
                (unit.entry.to_string(), unit.models, unit.finished, weeks)
            })
            .collect();
        assert_eq!(
            found,
            [
                ("a".into(), 12, 9, Some((1, 3))),
                ("b".into(), 6, 0, Some((1, 1))),
                ("c".into(), 4, 4, Some((3, 3))),
            ]
        );
    }

    #[test]
    fn a_unit_brought_from_an_earlier_season_is_there_before_it_is_fielded() {
        let brought = BroughtUnit {
            player: PlayerId(Uuid::from_u128(1)),
            entry: EntryKey::new("a").unwrap(),
            faction: FactionKey::new("sodwether-moot").unwrap(),
            unit: UnitKey::new("turf-cutters").unwrap(),
            models: 12,
            stages: None,
        };
        let painted = [(EntryKey::new("a").unwrap(), 12)].into();
        let before = build_collection(std::slice::from_ref(&brought), [], &painted);
        assert_eq!(before.len(), 1);
        assert_eq!((before[0].finished, before[0].fielded), (12, None));
        let list = list("a turf-cutters 8");
        let after = build_collection(&[brought], [(WeekNo::FIRST, &list)], &painted);
        assert_eq!(after.len(), 1);
        assert_eq!(after[0].models, 12);
        assert_eq!(after[0].fielded, Some((WeekNo::FIRST, WeekNo::FIRST)));
    }
}
