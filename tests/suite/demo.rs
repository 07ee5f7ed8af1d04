//! The demo command: loads once, finds again, keeps away from what is not its own.

use std::collections::BTreeSet;
use std::process::{Command, Stdio};

use nix::sys::signal::{Signal, kill};
use nix::unistd::Pid;

use crate::harness::{Database, Season, Server, until};

const CLOCK: &str = "SELECT prosrc FROM pg_proc WHERE proname = 'league_clock'";
const CLUBS: &str =
    "SELECT count(*)::text FROM information_schema.tables WHERE table_name = 'clubs'";

#[test]
fn the_demo_is_loaded_as_a_whole_and_found_by_the_next_start() {
    let database = Database::empty();
    cut_short(&database, Signal::SIGKILL);
    assert!(database.texts(CLOCK)[0].contains("held while the demo is being loaded"));

    let mut server = Server::demo(&database);
    assert_eq!(database.texts(CLOCK), ["select clock_timestamp()"]);
    let guide = server.says_until("Ctrl-C");
    for word in [
        "wennable@example.org",
        "six lanterns on the ford",
        "not reported yet",
        "waits for an answer",
    ] {
        assert!(guide.contains(word), "{word} is not in\n{guide}");
    }
    let season = server.greet("Wennable").only_season();
    let page = season.path.replace("/api/v1", "");
    let opening = format!("Open in a browser:  {}{page}", server.address());
    assert!(guide.contains(&opening), "{opening} is not in\n{guide}");
    a_season_in_its_fifth_week(&season.by(server.visitor()));

    let facts = "SELECT count(*) || ' ' || max(digest::text) FROM trail";
    let before = database.texts(facts);
    server.stop(Signal::SIGTERM);
    let server = Server::demo(&database);
    assert_eq!(database.texts(facts), before);
    let found = server.greet("Wennable").only_season();
    assert_eq!(found.path, season.path);
}

#[test]
fn a_loading_that_is_stopped_takes_everything_away_again() {
    let database = Database::empty();
    cut_short(&database, Signal::SIGTERM);
    assert_eq!(database.texts(CLUBS), ["0"]);
    assert_eq!(database.texts(CLOCK), Vec::<String>::new());
}

#[test]
fn a_database_with_facts_of_others_is_refused_and_left_alone() {
    let database = Database::create();
    Server::start(&database).register("Somebody");
    let strange = Database::empty();
    strange.run("CREATE TABLE harvest (basket text)");
    for database in [&database, &strange] {
        let refused = demo(database).output().unwrap();
        assert!(!refused.status.success());
        let sentence = String::from_utf8(refused.stderr).unwrap();
        assert!(
            sentence.contains("holds something else than the demo"),
            "{sentence}"
        );
    }
    assert_eq!(database.texts("SELECT name FROM accounts"), ["Somebody"]);
    assert_eq!(strange.texts(CLUBS), ["0"]);
}

/// Four weeks are closed, the fifth is paired with one game of each kind of open slip, lists come in
/// for the sixth; every row of the table is the sum of its ledger.
fn a_season_in_its_fifth_week(season: &Season) {
    let weeks = season.weeks().expect(200);
    let phases: Vec<&str> = weeks.iter().map(|week| week.phase.as_str()).collect();
    assert_eq!(
        phases,
        [
            "closed",
            "closed",
            "closed",
            "closed",
            "paired",
            "announced",
            "planned",
            "planned"
        ]
    );
    let games = season.games_of(5).expect(200);
    let meetings = games.iter().filter(|game| !game.is_bye());
    let states: BTreeSet<&str> = meetings.map(|game| game.slip().kind.as_str()).collect();
    let expected = ["awaited", "confirmed", "reported"];
    assert_eq!(states, BTreeSet::from(expected));
    let table = season.standings().expect(200);
    assert_eq!(table.rows.len(), 18);
    for row in &table.rows {
        let ledger = season.ledger(&row.player).expect(200);
        assert_eq!((ledger.total, ledger.sum()), (row.total, row.total));
    }
    for (week, status) in [(5, 200), (6, 200), (7, 404)] {
        season.week(week).scenario().with_status(status);
    }
}

/// Starts loading and sends a signal as soon as the first facts are there.
fn cut_short(database: &Database, with: Signal) {
    let mut child = demo(database).spawn().unwrap();
    until("the demo has begun", || {
        database.texts(CLUBS) == ["1"]
            && database.texts("SELECT slug FROM clubs") == ["lamplit-ford"]
    });
    kill(Pid::from_raw(child.id().cast_signed()), with).unwrap();
    assert!(!child.wait().unwrap().success());
}

fn demo(database: &Database) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tallyhost"));
    command
        .args(["demo", "--listen", "127.0.0.1:0"])
        .env("DATABASE_URL", database.url())
        .env("TALLYHOST_SIGNING_KEY", "7a".repeat(32))
        .stdin(Stdio::null())
        .stdout(Stdio::null());
    command
}
