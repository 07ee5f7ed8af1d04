//! Armies that grow by the week, and what is wrong with their neighbours. Points are added up here
//! once more, from the catalogue's file alone.

use crate::harness::{Catalogue, Entry, List, Unit};

/// What one faction may field: a leader, then everything that is no leader and no colossus.
pub struct Armoury {
    faction: String,
    units: Vec<Unit>,
}

/// A list that breaks one rule, and what must be said about it.
pub struct Broken {
    pub list: List,
    pub code: &'static str,
    pub limit: u64,
    pub actual: u64,
}

impl Armoury {
    pub fn of(faction: &str) -> Self {
        let mut factions = Catalogue::of_the_demo().factions.into_iter();
        let found = factions.find(|known| known.key == faction).unwrap();
        Self {
            faction: faction.to_owned(),
            units: found.units,
        }
    }

    /// Points of a list.
    pub fn total(&self, list: &List) -> u64 {
        list.entries.iter().map(|entry| self.price(entry)).sum()
    }

    fn price(&self, entry: &Entry) -> u64 {
        let unit = self.units.iter().find(|unit| unit.key == entry.unit);
        let mut sizes = unit.unwrap().sizes.iter();
        let size = sizes.find(|size| size.models == entry.models);
        size.unwrap().points
    }

    fn of_kind(&self, kind: &str) -> Vec<&Unit> {
        let units = self.units.iter();
        units.filter(|unit| unit.kind == kind).collect()
    }

    /// The list of a week: all of the one before, one line unit for every full 250 points, then
    /// whatever fits under the cap. `taste` lets players of one faction differ.
    pub fn grow(&self, last: Option<&List>, cap: u64, taste: usize) -> List {
        let mut list = last.cloned().unwrap_or_else(|| {
            let leader = self.of_kind("leader")[taste % 2];
            List::of(&self.faction, [smallest(leader, 0)])
        });
        let line = self.of_kind("line");
        while count(&list, &line) < cap / 250 {
            let turn = list.entries.len() + taste;
            add(&mut list, line[turn % line.len()]);
        }
        let rest: Vec<&Unit> = ["line", "swift", "heavy", "engine"]
            .iter()
            .flat_map(|kind| self.of_kind(kind))
            .collect();
        loop {
            let room = cap - self.total(&list);
            let turn = list.entries.len() + taste;
            let mut choice = (0..rest.len()).map(|step| rest[(turn + step) % rest.len()]);
            match choice.find(|unit| self.price(&smallest(unit, 0)) <= room) {
                Some(unit) => add(&mut list, unit),
                None => return list,
            }
        }
    }

    /// A list that breaks one rule, another one with each `way`.
    pub fn broken(&self, way: usize, list: &List, last: Option<&List>, cap: u64) -> Broken {
        let mut bad = list.clone();
        let (code, limit, actual) = match (way % 3, last) {
            (0, Some(last)) => {
                let gone = bad.entries.remove(1);
                let before = self.total(last);
                ("list.carry-over", before, before - self.price(&gone))
            }
            (1, _) => {
                add(&mut bad, self.of_kind("leader")[0]);
                ("list.kind-count", 1, 2)
            }
            _ => {
                while self.total(&bad) <= cap {
                    add(&mut bad, self.of_kind("line")[0]);
                }
                ("list.over-cap", cap, self.total(&bad))
            }
        };
        Broken {
            list: bad,
            code,
            limit,
            actual,
        }
    }
}

fn count(list: &List, units: &[&Unit]) -> u64 {
    let among = |entry: &&Entry| units.iter().any(|unit| unit.key == entry.unit);
    list.entries.iter().filter(among).count() as u64
}

fn add(list: &mut List, unit: &Unit) {
    let number = list.entries.len();
    list.entries.push(smallest(unit, number));
}

fn smallest(unit: &Unit, number: usize) -> Entry {
    let key = format!("{}-{number}", unit.key);
    Entry::new(key, &unit.key, unit.sizes[0].models)
}
