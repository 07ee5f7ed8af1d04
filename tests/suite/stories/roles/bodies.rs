//! Bodies of requests, by who sends them.

use serde_json::{Value, json};
use tallyhost::demo::data;

use super::scene::Scene;
use crate::harness::List;

pub fn nothing(_: &Scene, _: &str) -> Value {
    json!({})
}

pub fn account(_: &Scene, person: &str) -> Value {
    json!({ "email": format!("{person}@example.org"), "name": person, "password": data::PASSWORD })
}

pub fn credentials(_: &Scene, _: &str) -> Value {
    json!({ "email": "oskrel@example.org", "password": data::PASSWORD })
}

pub fn no_token(_: &Scene, _: &str) -> Value {
    json!({ "refresh_token": "none" })
}

pub fn named(_: &Scene, person: &str) -> Value {
    json!({ "name": person, "slug": person })
}

pub fn name(_: &Scene, person: &str) -> Value {
    json!({ "name": person })
}

pub fn invitation(_: &Scene, _: &str) -> Value {
    json!({ "role": "player", "uses": 1, "days": 1 })
}

pub fn no_code(_: &Scene, _: &str) -> Value {
    json!({ "code": "none" })
}

pub fn role(_: &Scene, _: &str) -> Value {
    json!({ "role": "player" })
}

pub fn catalogue(_: &Scene, _: &str) -> Value {
    data::catalogue().unwrap()
}

pub fn season(scene: &Scene, _: &str) -> Value {
    json!(scene.season_body)
}

pub fn next_season(_: &Scene, _: &str) -> Value {
    json!({ "name": "Autumn at the ford", "first_day": "2026-09-03" })
}

pub fn nights(_: &Scene, _: &str) -> Value {
    json!({ "nights": ["first"] })
}

pub fn about_lists(_: &Scene, _: &str) -> Value {
    json!({ "about": "lists" })
}

pub fn sheet(_: &Scene, _: &str) -> Value {
    json!({ "sheet": data::sheets().unwrap()[0] })
}

pub fn place(_: &Scene, person: &str) -> Value {
    json!({ "handle": person, "faction": "sodwether-moot", "nights": ["first"] })
}

pub fn shock(_: &Scene, _: &str) -> Value {
    json!({ "reason": "Nothing at all" })
}

pub fn list(_: &Scene, _: &str) -> Value {
    json!(List::demo("Oskrel", 2))
}

pub fn pasted(_: &Scene, _: &str) -> Value {
    json!({ "text": "Hedge-Reeve" })
}

pub fn leave(scene: &Scene, _: &str) -> Value {
    json!({ "player": scene.corvanel.0, "reason": "Power cut" })
}

pub fn played(_: &Scene, _: &str) -> Value {
    result()
}

/// Both sides are equal.
pub fn result() -> Value {
    let side = json!({ "items": { "ford-marker": 3, "destroyed": 90 } });
    json!({ "kind": "played", "counts": { "legs": [{ "first": side, "second": side }] } })
}

pub fn objection(_: &Scene, _: &str) -> Value {
    json!({ "reason": "We counted the ford twice" })
}

pub fn ruling(_: &Scene, _: &str) -> Value {
    json!({ "outcome": { "kind": "void" }, "reason": "The table was not set up as the sheet says" })
}

pub fn penalty(scene: &Scene, _: &str) -> Value {
    json!({ "player": scene.corvanel.0, "week": 1, "amount": -1, "reason": "Three turns an hour" })
}

pub fn no_suppositions(_: &Scene, _: &str) -> Value {
    json!({ "suppositions": [] })
}

pub fn paint(_: &Scene, _: &str) -> Value {
    json!({ "unit": "hedge-reeve-1", "stages": { "finished": 1 } })
}

pub fn reason(_: &Scene, _: &str) -> Value {
    json!({ "reason": "Two bases are bare" })
}
