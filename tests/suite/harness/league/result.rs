//! Typed results as request bodies.

use serde_json::{Value, json};

/// One side did not come and told nobody.
pub fn no_show(absent: &str) -> Value {
    json!({ "kind": "no_show", "absent": absent, "notice": "not_given" })
}

/// Nobody gets anything.
pub fn double_loss() -> Value {
    json!({ "kind": "double_loss" })
}

/// The game does not count.
pub fn void() -> Value {
    json!({ "kind": "void" })
}
