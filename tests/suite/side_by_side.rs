//! The server before the newest migration beside this one, over one database with the newest schema,
//! as while servers are replaced. `tests/compat/run` builds it and says where it is.

use std::env;

use serde_json::{Value, json};

use crate::harness::{Database, Server, Stage, until};
use crate::stories::results::week::{LAST_NIGHT, LISTS_DUE, Week, played};

/// A season that the new server set up is played at both, each act at the other one.
#[test]
#[ignore = "needs the old server: run tests/compat/run"]
fn a_week_is_played_at_the_server_before_the_newest_migration_and_at_this_one() {
    let binary =
        env::var("TALLYHOST_BEFORE").expect("tests/compat/run says where the old server is");
    let database = Database::create();
    let new = Server::start(&database);
    let old = Server::other(binary.as_ref(), &database);
    let week = Week::sealed_in(Stage::over(database, new, |_| {}), &["Oskrel", "Corvanel"]);
    let stage = &week.stage;
    let organiser = old.welcome(&stage.wennable);
    let at_old =
        |path: &str, body: &Value| organiser.post(&format!("{}/{path}", stage.season), body);

    stage.clock().show(LISTS_DUE);
    at_old("weeks/1/lists/open", &json!({})).expect(204);
    let round = week.act("weeks/1/rounds", &json!({})).expect(201);
    let publish = format!("rounds/{}/publish", round["id"].as_str().unwrap());
    at_old(&publish, &json!({})).expect(200);
    stage.clock().show(LAST_NIGHT);
    let [first, second] = week.sides();
    week.report(first, "first", &played((3, 90), (1, 40)))
        .expect(200);
    let confirm = format!("{}/confirm", week.game());
    old.welcome(&second.actor)
        .post(&confirm, &json!({}))
        .expect(200);
    let point = json!({ "player": first.id, "week": 1, "amount": 1, "reason": "Swept the hall" });
    week.act("adjustments", &point).expect(200);
    at_old("weeks/1/close", &json!({})).expect(204);
    week.act("adjustments", &point).expect(200);
    at_old("adjustments", &point).expect(200);

    stage.until_moments_are_told();
    let public = stage.season.replacen("/api/v1", "/public", 1);
    let ledger = format!("players/{}/ledger", first.id);
    for resource in ["standings", "results", "weeks", ledger.as_str()] {
        let path = format!("{public}/{resource}");
        let read = |server: &Server| server.visitor().get(&path).expect(200);
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
