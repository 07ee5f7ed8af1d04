//! Finds the JSON Pointer of what does not fit a type.
//!
//! Enums tagged by their `kind` are deserialized from a buffer, and serde loses paths within
//! it. So the place is found by trying: what is spoilt *before* the fault changes what serde says of the
//! whole, what is spoilt behind it does not.

use std::marker::PhantomData;

use serde::de::DeserializeOwned;
use serde_json::{Map, Value, json};

/// Most members of one name that are tried; a body has a few.
const MAX_TRIED: usize = 100;

/// The JSON Pointer (RFC 6901) to what keeps `value` from being a `T`, and what serde says of it.
pub(super) fn find<T: DeserializeOwned>(value: Value) -> Option<(String, String)> {
    let fault = serde_path_to_error::deserialize::<_, T>(&value).err()?;
    let floor = pointer(fault.path());
    let said = fault.into_inner().to_string();
    let mut search = Search {
        value,
        said: said.clone(),
        of: PhantomData::<T>,
    };
    Some((search.place(floor), said))
}

fn pointer(path: &serde_path_to_error::Path) -> String {
    use serde_path_to_error::Segment;
    path.iter()
        .filter_map(|segment| match segment {
            Segment::Seq { index } => Some(format!("/{index}")),
            Segment::Map { key } => Some(step(key)),
            Segment::Enum { .. } | Segment::Unknown => None,
        })
        .collect()
}

/// RFC 6901, section 3.
fn step(key: &str) -> String {
    format!("/{}", key.replace('~', "~0").replace('/', "~1"))
}

struct Search<T> {
    value: Value,
    said: String,
    of: PhantomData<T>,
}

impl<T: DeserializeOwned> Search<T> {
    fn place(&mut self, floor: String) -> String {
        let said = self.said.clone();
        let named = |start| said.strip_prefix(start)?.split('`').next();
        if let Some(field) = named("missing field `") {
            self.missing(floor, field)
        } else if let Some(field) = named("unknown field `") {
            self.unknown(floor, field)
        } else if said.starts_with("invalid length") {
            floor
        } else {
            self.deepest_reached(floor)
        }
    }

    /// What serde says once `change` was made to the value at a place.
    fn said_after(&mut self, place: &str, change: impl FnOnce(&mut Value)) -> Option<String> {
        let kept = self.value.pointer(place)?.clone();
        if let Some(at) = self.value.pointer_mut(place) {
            change(at);
        }
        let said = T::deserialize(&self.value)
            .err()
            .map(|cause| cause.to_string());
        if let Some(at) = self.value.pointer_mut(place) {
            *at = kept;
        }
        Some(said.unwrap_or_default())
    }

    fn is_reached(&mut self, place: &str) -> bool {
        [json!({"\u{0}": null}), json!([[]])]
            .into_iter()
            .any(|spoilt| {
                let said = self.said_after(place, |at| *at = spoilt);
                said.is_some_and(|said| said != self.said)
            })
    }

    /// From a place down to the last member that serde looked at.
    fn deepest_reached(&mut self, mut place: String) -> String {
        while let Some(next) = self.last_reached(&place) {
            place = next;
        }
        place
    }

    fn last_reached(&mut self, place: &str) -> Option<String> {
        let steps: Vec<String> = match self.value.pointer(place)? {
            Value::Array(items) => (0..items.len()).map(|at| format!("/{at}")).collect(),
            Value::Object(members) => others(members),
            _ => return None,
        };
        let (mut reached, mut beyond) = (0, steps.len());
        while reached < beyond {
            let middle = usize::midpoint(reached, beyond);
            let is_reached = steps
                .get(middle)
                .is_some_and(|step| self.is_reached(&format!("{place}{step}")));
            if is_reached {
                reached = middle + 1;
            } else {
                beyond = middle;
            }
        }
        match reached.checked_sub(1).and_then(|at| steps.get(at)) {
            Some(step) => Some(format!("{place}{step}")),
            None => Some(format!("{place}/kind")).filter(|kind| self.is_reached(kind)),
        }
    }

    /// The first object on the way that takes such a field and has none.
    fn missing(&mut self, floor: String, field: &str) -> String {
        let unknown = format!("unknown field `{field}`");
        let lacks = |search: &mut Self, place: &str| {
            let Some(Value::Object(members)) = search.value.pointer(place) else {
                return false;
            };
            let absent = !members.contains_key(field);
            let spoilt = json!({"\u{0}": null});
            let said = search.said_after(place, |at| {
                if let Value::Object(members) = at {
                    members.insert(field.to_owned(), spoilt);
                }
            });
            absent && said.is_some_and(|said| said != search.said && !said.starts_with(&unknown))
        };
        let mut place = floor.clone();
        while !lacks(self, &place) {
            match self.last_reached(&place) {
                Some(next) => place = next,
                None => return format!("{floor}{}", step(field)),
            }
        }
        format!("{place}{}", step(field))
    }

    /// The last field of this name without which serde would have gone on.
    fn unknown(&mut self, floor: String, field: &str) -> String {
        if floor.ends_with(&step(field)) {
            return floor;
        }
        let mut holders = Vec::new();
        if let Some(within) = self.value.pointer(&floor) {
            holders_of(field, within, &floor, &mut holders);
        }
        holders.truncate(MAX_TRIED);
        let holder = holders.into_iter().rev().find(|holder| {
            let said = self.said_after(holder, |at| {
                if let Value::Object(members) = at {
                    members.remove(field);
                }
            });
            said.is_some_and(|said| said != self.said)
        });
        holder.map_or(floor, |holder| format!("{holder}{}", step(field)))
    }
}

/// Every member but the `kind`, which serde looks at before the others.
fn others(members: &Map<String, Value>) -> Vec<String> {
    let keys = members.keys().filter(|key| *key != "kind");
    keys.map(|key| step(key)).collect()
}

fn holders_of(field: &str, value: &Value, place: &str, found: &mut Vec<String>) {
    match value {
        Value::Object(members) => {
            if members.contains_key(field) {
                found.push(place.to_owned());
            }
            for (key, member) in members {
                holders_of(field, member, &format!("{place}{}", step(key)), found);
            }
        }
        Value::Array(items) => {
            for (at, item) in items.iter().enumerate() {
                holders_of(field, item, &format!("{place}/{at}"), found);
            }
        }
        _ => {}
    }
}

#[cfg(test)]
mod tests {
    use document::results::TypedResultDocument;
    use document::season::calendar::CapsDocument;

    use super::*;

    fn place<T: DeserializeOwned>(value: Value) -> String {
        find::<T>(value).unwrap().0
    }

    #[test]
    fn a_fault_within_an_enum_has_its_place() {
        let caps = |first: Value, step: Value| json!({"kind": "step", "first": first, "step": step, "weeks": 8});
        assert_eq!(place::<CapsDocument>(caps(json!(250), json!(-1))), "/step");
        assert_eq!(
            place::<CapsDocument>(caps(json!("x"), json!(250))),
            "/first"
        );
        assert_eq!(place::<CapsDocument>(caps(json!({}), json!(250))), "/first");
        assert_eq!(
            place::<CapsDocument>(json!({"kind": "list", "caps": [1, 2, -3, 4]})),
            "/caps/2"
        );
        assert_eq!(
            place::<CapsDocument>(json!({"kind": "lists", "caps": []})),
            "/kind"
        );
        assert_eq!(place::<CapsDocument>(json!({"kind": "list"})), "/caps");
        assert_eq!(place::<CapsDocument>(json!({"caps": []})), "/kind");
        let more = json!({"kind": "list", "caps": [], "weeks": 8});
        assert_eq!(place::<CapsDocument>(more), "/weeks");
        assert_eq!(place::<CapsDocument>(json!(7)), "");
    }

    #[test]
    fn a_count_below_zero_is_found_among_many() {
        for at in 0..20 {
            let side = |spoilt| json!({"items": {"quay": spoilt, "bell": 2}});
            let legs: Vec<Value> = (0..20)
                .map(
                    |leg| json!({"first": side(1), "second": side(if leg == at { -1 } else { 1 })}),
                )
                .collect();
            let typed = json!({"kind": "played", "counts": {"legs": legs}});
            let found = place::<TypedResultDocument>(typed);
            assert_eq!(found, format!("/counts/legs/{at}/second/items/quay"));
        }
    }
}
