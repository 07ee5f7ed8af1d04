//! The request body of a season.

use serde::Serialize;
use serde_json::{Value, json};

/// What a season is created from. Parts are named by JSON pointer, as in refusals.
#[derive(Clone, Debug, Serialize)]
#[serde(transparent)]
pub struct SeasonBody(Value);

impl SeasonBody {
    pub(in crate::harness) fn new(body: Value) -> Self {
        Self(body)
    }

    /// Sets a part; a last member that is not there yet is added.
    #[track_caller]
    pub fn set(&mut self, pointer: &str, value: impl Into<Value>) {
        let (whole, member) = pointer.rsplit_once('/').unwrap();
        let whole = self.part(whole);
        match whole.as_array_mut() {
            Some(items) => items[member.parse::<usize>().unwrap()] = value.into(),
            None => whole[member] = value.into(),
        }
    }

    /// Appends to a part that is a list.
    #[track_caller]
    pub fn push(&mut self, pointer: &str, value: impl Into<Value>) {
        let items = self.part(pointer).as_array_mut().unwrap();
        items.push(value.into());
    }

    #[track_caller]
    pub fn part(&mut self, pointer: &str) -> &mut Value {
        self.0.pointer_mut(pointer).expect(pointer)
    }

    pub fn name(&mut self, name: &str) {
        self.set("/name", name);
    }

    pub fn visibility(&mut self, visibility: &str) {
        self.set("/visibility", visibility);
    }

    /// One week for each cap.
    pub fn caps(&mut self, caps: &[u32]) {
        self.set("/caps", json!({ "kind": "list", "caps": caps }));
    }

    /// So many weeks whose caps rise by a step.
    pub fn rising_caps(&mut self, first: u32, step: u32, weeks: u8) {
        let caps = json!({ "kind": "step", "first": first, "step": step, "weeks": weeks });
        self.set("/caps", caps);
    }

    pub fn rounds(&mut self, rounds: Value) {
        self.set("/policy/rounds", rounds);
    }

    pub fn list_rules(&mut self, rules: Value) {
        self.set("/policy/list_rules", rules);
    }

    /// Rules for more weeks than the season has are refused: a shorter season has the demo's as far as
    /// it goes.
    pub(in crate::harness) fn keep_to_its_weeks(&mut self) {
        let caps = self.part("/caps");
        let weeks = caps.get("weeks").and_then(Value::as_u64);
        let last = weeks.unwrap_or_else(|| caps["caps"].as_array().unwrap().len() as u64);
        let rules = self.part("/policy/list_rules").as_array_mut().unwrap();
        rules.retain_mut(|rule| {
            let Some(weeks) = rule.get_mut("weeks").and_then(Value::as_array_mut) else {
                return true;
            };
            weeks.retain(|week| week.as_u64().unwrap() <= last);
            !weeks.is_empty()
        });
        let scoring = self.part("/policy/scoring");
        let best = scoring.get("best_weeks").and_then(Value::as_u64);
        if best.is_some_and(|best| best > last) {
            self.set("/policy/scoring/best_weeks", Value::Null);
        }
    }
}
