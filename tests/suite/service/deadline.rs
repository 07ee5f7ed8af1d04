//! A desk that dies while it opens the lists of a week, and the one that goes on.

use nix::sys::signal::Signal;

use super::fleet::desk;
use crate::harness::{Database, Stage, until};
use crate::stories::results::week::{FirstWeek, LISTS_DUE};

const OPENED: &str = "SELECT 'opened' FROM weeks WHERE lists_opened_at IS NOT NULL";
const TOLD: &str = "SELECT entry_no::text FROM trail WHERE act = 'open_lists'";
const VERSION: &str = "SELECT version::text FROM seasons";

/// Who waits for the head of the trail, having written all else: the last step of opening lists.
const AT_THE_LAST_STEP: &str = "SELECT application_name FROM pg_stat_activity
    WHERE datname = current_database() AND wait_event_type = 'Lock' AND query LIKE '%trail_heads%'";

#[test]
fn a_desk_that_is_killed_while_it_opens_lists_leaves_nothing_half_done_and_the_other_finishes() {
    let database = Database::create();
    let named = |name: &str| desk(&format!("{}&application_name={name}", database.url()));
    let (first, second) = (named("first"), named("second"));
    let week = FirstWeek::sealed_in(
        Stage::over(database, first, |_| {}),
        &["Oskrel", "Corvanel"],
    );
    let stage = &week.stage;
    let before = stage.database.texts(VERSION);

    let hold = stage.database.hold("SELECT FROM trail_heads FOR UPDATE");
    stage.clock().show(LISTS_DUE);
    let mut at_it = Vec::new();
    until("a desk is about to finish", || {
        at_it = stage.database.texts(AT_THE_LAST_STEP);
        !at_it.is_empty()
    });
    let (killed, other) = match at_it[0].as_str() {
        "first" => (&stage.server, &second),
        _ => (&second, &stage.server),
    };
    killed.signal(Signal::SIGKILL);
    assert_eq!(stage.database.texts(OPENED), Vec::<String>::new());
    assert_eq!(stage.database.texts(VERSION), before);
    drop(hold);

    stage
        .database
        .wait_for("the other desk has opened the lists", OPENED);
    assert_eq!(stage.database.texts(TOLD).len(), 1, "they were opened once");
    let lists = stage.week(1).by(other.visitor()).lists().expect(200);
    assert!(lists.opened);
    assert_eq!(lists.lists.len(), 2);
}
