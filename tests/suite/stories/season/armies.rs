//! Armies that grow by the week, and what is wrong with their neighbours. Points are added up here
//! once more, from the catalogue's file alone.

use serde_json::{Value, json};
use tallyhost::demo::data;

/// What one faction may field: a leader, then everything that is no leader and no colossus.
pub struct Armoury {
    faction: String,
    units: Vec<Value>,
}

impl Armoury {
    pub fn of(faction: &str) -> Self {
        let catalogue = data::catalogue().unwrap();
        let factions = catalogue["factions"].as_array().unwrap();
        let found = factions
            .iter()
            .find(|known| known["key"] == faction)
            .unwrap();
        Self {
            faction: faction.to_owned(),
            units: found["units"].as_array().unwrap().clone(),
        }
    }

    /// Points of a list.
    pub fn total(&self, list: &Value) -> u64 {
        entries(list).iter().map(|entry| self.price(entry)).sum()
    }

    fn price(&self, entry: &Value) -> u64 {
        let unit = self
            .units
            .iter()
            .find(|unit| unit["key"] == entry["unit"])
            .unwrap();
        let sizes = unit["sizes"].as_array().unwrap();
        let size = sizes
            .iter()
            .find(|size| size["models"] == entry["models"])
            .unwrap();
        size["points"].as_u64().unwrap()
    }

    fn of_kind(&self, kind: &str) -> Vec<&Value> {
        self.units
            .iter()
            .filter(|unit| unit["kind"] == kind)
            .collect()
    }

    /// The list of a week: all of the one before, one line unit for every full 250 points, then
    /// whatever fits under the cap. `taste` lets players of one faction differ.
    pub fn grow(&self, last: Option<&Value>, cap: u64, taste: usize) -> Value {
        let mut list = last.cloned().unwrap_or_else(|| {
            let leader = self.of_kind("leader")[taste % 2];
            json!({ "faction": self.faction, "entries": [smallest(leader, 0)] })
        });
        let line = self.of_kind("line");
        while self.count(&list, &line) < cap / 250 {
            let turn = entries(&list).len() + taste;
            add(&mut list, line[turn % line.len()]);
        }
        let rest: Vec<&Value> = ["line", "swift", "heavy", "engine"]
            .iter()
            .flat_map(|kind| self.of_kind(kind))
            .collect();
        loop {
            let room = cap - self.total(&list);
            let turn = entries(&list).len() + taste;
            let mut choice = (0..rest.len()).map(|step| rest[(turn + step) % rest.len()]);
            match choice.find(|unit| self.price(&smallest(unit, 0)) <= room) {
                Some(unit) => add(&mut list, unit),
                None => return list,
            }
        }
    }

    fn count(&self, list: &Value, units: &[&Value]) -> u64 {
        let among = |entry: &&Value| units.iter().any(|unit| unit["key"] == entry["unit"]);
        entries(list).iter().filter(among).count() as u64
    }

    /// A list that breaks one rule, and what must be said about it: code, limit, actual.
    pub fn broken(
        &self,
        way: usize,
        list: &Value,
        last: Option<&Value>,
        cap: u64,
    ) -> (Value, &'static str, u64, u64) {
        let mut bad = list.clone();
        match (way % 3, last) {
            (0, Some(last)) => {
                let gone = entries(&bad)[1].clone();
                bad["entries"].as_array_mut().unwrap().remove(1);
                let before = self.total(last);
                (bad, "list.carry-over", before, before - self.price(&gone))
            }
            (1, _) => {
                add(&mut bad, self.of_kind("leader")[0]);
                (bad, "list.kind-count", 1, 2)
            }
            _ => {
                while self.total(&bad) <= cap {
                    add(&mut bad, self.of_kind("line")[0]);
                }
                let total = self.total(&bad);
                (bad, "list.over-cap", cap, total)
            }
        }
    }
}

fn add(list: &mut Value, unit: &Value) {
    let number = entries(list).len();
    list["entries"]
        .as_array_mut()
        .unwrap()
        .push(smallest(unit, number));
}

fn entries(list: &Value) -> &[Value] {
    list["entries"].as_array().unwrap()
}

fn smallest(unit: &Value, number: usize) -> Value {
    let key = unit["key"].as_str().unwrap();
    json!({ "key": format!("{key}-{number}"), "unit": key, "models": unit["sizes"][0]["models"] })
}
