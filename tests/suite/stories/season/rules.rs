//! What a list of the story must be like.

use serde_json::{Value, json};

pub fn list_rules() -> Value {
    json!([
        { "rule": { "kind": "faction_lock" } },
        { "rule": { "kind": "kind_count", "unit_kind": "leader", "least": { "kind": "fixed", "count": 1 }, "most": { "kind": "fixed", "count": 1 } } },
        { "rule": { "kind": "kind_count", "unit_kind": "line", "least": { "kind": "per_points", "points": 250 } } },
        { "rule": { "kind": "largest_unit", "most": { "kind": "share", "part": 40, "whole": 100 } } },
        { "rule": { "kind": "carry_over", "returning": { "part": 1, "whole": 1 } }, "weeks": [2, 3, 4, 5, 6, 7, 8] },
    ])
}
