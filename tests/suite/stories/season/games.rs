//! What is typed on the slips of the eight scenarios.

use serde_json::{Value, json};

/// A report in which one side is ahead; `points` are those of the two lists.
pub fn played(week: u8, first_is_ahead: bool, points: [u64; 2]) -> Value {
    let legs = match week {
        // Attackers are measured by how much of their own list left the table.
        4 => {
            let [first, second] = if first_is_ahead { [7, 3] } else { [3, 7] };
            let one = json!({ "first": side(json!({ "exited": points[0] * first / 10 })), "second": side(json!({})) });
            let other = json!({ "first": side(json!({})), "second": side(json!({ "exited": points[1] * second / 10 })) });
            json!([one, other])
        }
        6 => {
            let run = if first_is_ahead {
                points[0] / 2
            } else {
                points[0] / 10
            };
            json!([{ "first": side(json!({ "run": run, "destroyed": points[1] / 3 })), "second": side(json!({ "destroyed": points[0] / 4 })) }])
        }
        _ => {
            let (ahead, behind) = symmetric(week);
            let (first, second) = if first_is_ahead {
                (ahead, behind)
            } else {
                (behind, ahead)
            };
            json!([{ "first": side(first), "second": side(second) }])
        }
    };
    json!({ "kind": "played", "counts": { "legs": legs } })
}

fn symmetric(week: u8) -> (Value, Value) {
    match week {
        1 => (
            json!({ "ford-marker": 4, "destroyed": 120 }),
            json!({ "ford-marker": 2, "destroyed": 90 }),
        ),
        2 => (
            json!({ "left-lamp": 1, "middle-lamp": 1 }),
            json!({ "right-lamp": 1 }),
        ),
        3 => (json!({ "places": 7, "leader": 1 }), json!({ "places": 4 })),
        5 => (
            json!({ "debt": 1, "quarters": 3 }),
            json!({ "debt": 1, "quarters": 1 }),
        ),
        7 => (
            json!({ "bridges": 3, "first-across": 1 }),
            json!({ "bridges": 1, "last-bridge": 1 }),
        ),
        _ => (
            json!({ "markers": 10, "rival": 1 }),
            json!({ "markers": 6, "leader": 1 }),
        ),
    }
}

fn side(items: Value) -> Value {
    json!({ "items": items })
}
