//! Several processes over one database.

use nix::sys::signal::Signal;

use super::{Wall, standings_process, total, version};
use crate::harness::{Server, until};

#[test]
fn a_process_of_the_standings_needs_no_key_and_has_no_desk() {
    let wall = Wall::hang();
    let reader = standings_process(&wall.stage.database.url());
    let visitor = reader.visitor();
    visitor.get("/health/ready").with_status(200);
    visitor.get(&wall.path("standings")).expect(200);
    visitor.get(&wall.stage.season).refused(404, "not-found");
    let status = reader.stop(Signal::SIGTERM);
    assert!(status.success(), "{status}");
}

#[test]
fn a_process_of_the_desk_reads_nothing_to_everybody() {
    let wall = Wall::hang();
    let desk = Server::launch(|command| {
        command
            .env("DATABASE_URL", wall.stage.database.url())
            .args(["--role", "desk"])
    });
    let visitor = desk.visitor();
    visitor.get(&wall.stage.season).expect(200);
    visitor
        .get(&wall.path("standings"))
        .refused(404, "not-found");
}

#[test]
fn other_processes_hear_of_a_change_and_never_go_back() {
    let wall = Wall::hang();
    let readers = [(); 2].map(|()| standings_process(&wall.stage.database.url()));
    for points in 1..=10 {
        wall.give_a_point();
        for reader in &readers {
            let visitor = reader.visitor();
            let mut newest = 0;
            until("the change is known everywhere", || {
                let table = visitor.get(&wall.path("standings")).expect(200);
                assert!(version(&table) >= newest);
                newest = version(&table);
                total(&table) == points
            });
        }
    }
}

#[test]
fn a_notice_that_is_lost_is_made_good() {
    let wall = Wall::hang();
    let reader = standings_process(&wall.stage.database.url());
    let visitor = reader.visitor();
    let path = wall.path("standings");
    visitor.get(&path).expect(200);
    wall.stage
        .database
        .run("UPDATE seasons SET name = 'Ford under Lamps', version = version + 1");
    until("the change is found without a notice", || {
        visitor.get(&path).expect(200)["season"] == "Ford under Lamps"
    });
}

#[test]
fn a_reader_that_lost_its_database_says_so_and_comes_back() {
    let wall = Wall::hang();
    let reader = standings_process(&wall.stage.database.url());
    let visitor = reader.visitor();
    let path = wall.path("standings");
    visitor.get(&path).expect(200);
    let others = "SELECT pg_terminate_backend(pid)::text FROM pg_stat_activity
        WHERE datname = current_database() AND pid <> pg_backend_pid()";
    wall.stage.database.texts(others);
    wall.give_a_point_when_it_can();
    until("the reader knows the change", || {
        let answer = visitor.get(&path);
        answer.status == 200 && total(&answer.json()) == 1
    });
}

impl Wall {
    /// The desk's connections broke: the first tries may find one of them.
    fn give_a_point_when_it_can(&self) {
        let body = serde_json::json!({
            "player": self.oskrel.id, "week": 1, "amount": 1, "reason": "Swept the hall",
        });
        let adjustments = format!("{}/adjustments", self.stage.season);
        until("the desk has its database again", || {
            self.stage.wennable.post(&adjustments, &body).status == 200
        });
    }
}
