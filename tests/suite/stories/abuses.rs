//! What somebody tries who runs the club and plays in it, and why it does not help them.

mod games;
mod lists;
mod members;
mod weeks;

use serde_json::Value;

use crate::harness::Stage;

/// What everybody reads of one kind of act, the newest first.
fn told(stage: &Stage, act: &str) -> Vec<Value> {
    let trail = stage.season.by(stage.visitor()).trail().expect(200);
    trail
        .into_iter()
        .filter(|entry| entry.act == act)
        .map(|entry| entry.facts)
        .collect()
}
