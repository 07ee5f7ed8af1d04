//! What the database lets a process of the standings read: what it serves, and no secret.

use std::fs;

use super::{RESOURCES, standings_process};
use crate::harness::{List, refused_at, texts_at};
use crate::sources::root;
use crate::stories::results::week::{FirstWeek, LISTS_DUE};

/// SQLSTATE of PostgreSQL, appendix A.
const INSUFFICIENT_PRIVILEGE: &str = "42501";

const REFUSED: [&str; 9] = [
    "SELECT seed FROM season_seeds",
    "SELECT password_hash FROM accounts",
    "SELECT email FROM accounts",
    "SELECT token_digest FROM refresh_tokens",
    "SELECT page_digest FROM sessions",
    "SELECT code_digest FROM invitations",
    "SELECT draft FROM lists",
    "SELECT facts FROM trail",
    "UPDATE seasons SET version = version + 1",
];

#[test]
fn a_process_of_the_standings_serves_all_with_rights_to_no_secret() {
    let week = FirstWeek::sealed(&["Oskrel", "Corvanel"]);
    let stage = &week.stage;
    stage.clock().show(LISTS_DUE);
    week.week().open_lists().expect(204);
    stage.clock().show("2026-01-15T18:00:00+01:00");
    let second = stage.week(2).list_of(&week.players[0]);
    second.seal(&List::demo("Oskrel", 2)).expect(201);
    stage.until_reveals_are_published();

    let rights = fs::read_to_string(root().join("docker/standings.sql")).unwrap();
    stage.database.run(&rights);
    // The clock of the tests is a table of theirs.
    stage
        .database
        .run("GRANT SELECT ON test_clock TO standings");
    let url = stage
        .database
        .url()
        .replacen("//tallyhost@", "//standings@", 1);
    for query in REFUSED {
        assert_eq!(refused_at(&url, query), INSUFFICIENT_PRIVILEGE, "{query}");
    }
    let readable = texts_at(
        &url,
        "SELECT DISTINCT week_no::text FROM lists WHERE sealed IS NOT NULL",
    );
    assert_eq!(
        readable,
        ["1"],
        "a list that is still sealed is no row to it"
    );

    let reader = standings_process(&url);
    let public = stage.season.for_everybody();
    let ledger = format!("players/{}/ledger", week.players[0].id);
    for resource in RESOURCES
        .into_iter()
        .chain([ledger.as_str(), "badge.svg", "standings.html"])
    {
        let path = public.path(resource);
        let [ours, theirs] = [&reader, &stage.server]
            .map(|server| server.visitor().get(&path).with_status(200).text());
        assert_eq!(ours, theirs, "{resource}");
    }
    let directory = reader.visitor().directory("").expect(200);
    assert_eq!(directory.seasons.len(), 1);
    stage.database.run("UPDATE seasons SET visibility = 'club'");
    for table in ["seasons", "weeks", "players", "games", "lists"] {
        let rows = texts_at(&url, &format!("SELECT season_id::text FROM {table}"));
        assert_eq!(
            rows,
            Vec::<String>::new(),
            "{table} of a season for the club alone"
        );
    }
}
