//! The server before the newest migration beside this one, over one database with the newest schema,
//! as while servers are replaced. `tests/compat/run` builds it and says where it is.

use std::env;

use crate::harness::{Database, Season, Server, Stage, until};
use crate::stories::results::week::{FirstWeek, LAST_NIGHT, LISTS_DUE, played};

/// A season that the new server set up is played at both, each act at the other one.
#[test]
#[ignore = "needs the old server: run tests/compat/run"]
fn a_week_is_played_at_the_server_before_the_newest_migration_and_at_this_one() {
    let binary =
        env::var("TALLYHOST_BEFORE").expect("tests/compat/run says where the old server is");
    let database = Database::create();
    let new = Server::start(&database);
    let old = Server::other(binary.as_ref(), &database);
    let week = FirstWeek::sealed_in(Stage::over(database, new, |_| {}), &["Oskrel", "Corvanel"]);
    let stage = &week.stage;
    let at_old = stage.season.by(old.welcome(&stage.owner));

    stage.clock().show(LISTS_DUE);
    at_old.week(1).open_lists().expect(204);
    let round = week.week().propose().expect(201);
    at_old.round(&round.id).publish().expect(200);
    stage.clock().show(LAST_NIGHT);
    let [first, second] = week.sides();
    week.report(first, "first", &played((3, 90), (1, 40)))
        .expect(200);
    let confirming = week.game().by(old.welcome(&second.actor));
    confirming.confirm().expect(200);
    let give_a_point = |season: &Season| {
        let point = season.adjust(&first.id, 1, 1, "Swept the hall");
        point.expect(200);
    };
    give_a_point(week.season());
    at_old.week(1).close().expect(204);
    give_a_point(week.season());
    give_a_point(&at_old);

    stage.until_reveals_are_published();
    let public = stage.season.for_everybody();
    let ledger = format!("players/{}/ledger", first.id);
    for resource in ["standings", "results", "weeks", ledger.as_str()] {
        let read = |server: &Server| public.by(server.visitor()).read(resource).expect(200);
        until(
            "both have heard of all that was done, and tell the same",
            || {
                let (new, old) = (read(&stage.server), read(&old));
                let mut told = old.as_object().unwrap().iter();
                told.all(|(key, value)| new.get(key) == Some(value))
            },
        );
    }
    old.visitor().get("/health/ready").with_status(200);
}
