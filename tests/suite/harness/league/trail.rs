//! An entry of the audit trail as JSON.

use serde::Deserialize;
use serde_json::Value;

/// One act of the trail.
#[derive(Clone, Debug, Deserialize)]
pub struct TrailEntry {
    pub act: String,
    /// What belongs to this kind of act.
    pub facts: Value,
}

impl TrailEntry {
    /// One of its facts; `null` where it has none of that name.
    pub fn fact(&self, name: &str) -> &Value {
        self.facts.get(name).unwrap_or(&Value::Null)
    }
}
