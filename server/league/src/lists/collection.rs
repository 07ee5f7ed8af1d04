//! A player's growing collection: every unit ever fielded, with how far it is painted.

use crate::catalogue::key::{FactionKey, UnitKey};
use crate::lists::army_list::{ArmyList, EntryKey};
use crate::lists::check::PaintedModels;
use crate::week::WeekNo;

/// One unit of a collection.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CollectionUnit {
    /// Which unit of the collection.
    pub entry: EntryKey,
    /// Its faction.
    pub faction: FactionKey,
    /// What it is in the catalogue.
    pub unit: UnitKey,
    /// Most models ever fielded.
    pub models: u32,
    /// Finished models, at most all of them: what is painted stays painted.
    pub finished: u32,
    /// The first week it was fielded in.
    pub first_week: WeekNo,
    /// The last week it was fielded in.
    pub last_week: WeekNo,
}

/// Gathers the units of a player's lists, in the order in which they first appeared.
pub fn collection<'a>(
    lists: impl IntoIterator<Item = (WeekNo, &'a ArmyList)>,
    painted: &PaintedModels,
) -> Vec<CollectionUnit> {
    let mut units: Vec<CollectionUnit> = Vec::new();
    for (week, list) in lists {
        for entry in list.entries() {
            let known = units.iter_mut().find(|unit| {
                unit.entry == entry.key
                    && unit.unit == entry.unit
                    && &unit.faction == list.faction()
            });
            if let Some(unit) = known {
                unit.models = unit.models.max(entry.models);
                unit.first_week = unit.first_week.min(week);
                unit.last_week = unit.last_week.max(week);
            } else {
                units.push(CollectionUnit {
                    entry: entry.key.clone(),
                    faction: list.faction().clone(),
                    unit: entry.unit.clone(),
                    models: entry.models,
                    finished: 0,
                    first_week: week,
                    last_week: week,
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

#[cfg(test)]
mod tests {
    use super::*;
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
        let told: Vec<_> = collection(weeks.zip(&lists), &painted)
            .iter()
            .map(|unit| {
                let weeks = (unit.first_week.number(), unit.last_week.number());
                (unit.entry.to_string(), unit.models, unit.finished, weeks)
            })
            .collect();
        assert_eq!(
            told,
            [
                ("a".into(), 12, 9, (1, 3)),
                ("b".into(), 6, 0, (1, 1)),
                ("c".into(), 4, 4, (3, 3)),
            ]
        );
    }
}
