//! Several processes over one database.

use nix::sys::signal::Signal;

use super::{OpenSeason, standings_process, total};
use crate::harness::{Server, until};

#[test]
fn a_process_of_the_standings_needs_no_key_and_has_no_desk() {
    let open = OpenSeason::start();
    let reader = standings_process(&open.stage.database.url());
    let visitor = reader.visitor();
    visitor.get("/health/ready").with_status(200);
    visitor.get(&open.path("standings")).expect(200);
    visitor
        .get(&open.stage.season.path)
        .refused(404, "not-found");
    let status = reader.stop(Signal::SIGTERM);
    assert!(status.success(), "{status}");
}

#[test]
fn a_process_of_the_desk_reads_nothing_to_everybody() {
    let open = OpenSeason::start();
    let desk = Server::launch(|command| {
        command
            .env("DATABASE_URL", open.stage.database.url())
            .args(["--role", "desk"])
    });
    let visitor = desk.visitor();
    visitor.get(&open.stage.season.path).expect(200);
    visitor
        .get(&open.path("standings"))
        .refused(404, "not-found");
}

#[test]
fn other_processes_hear_of_a_change_and_never_go_back() {
    let open = OpenSeason::start();
    let readers = [(); 2].map(|()| standings_process(&open.stage.database.url()));
    for points in 1..=10 {
        open.give_a_point();
        for reader in &readers {
            let public = open.public.by(reader.visitor());
            let mut newest = 0;
            until("the change is known everywhere", || {
                let table = public.standings().expect(200);
                assert!(table.version >= newest);
                newest = table.version;
                total(&table) == points
            });
        }
    }
}

#[test]
fn a_notice_that_is_lost_is_made_good() {
    let open = OpenSeason::start();
    let reader = standings_process(&open.stage.database.url());
    let public = open.public.by(reader.visitor());
    public.standings().expect(200);
    open.stage
        .database
        .run("UPDATE seasons SET name = 'Ford under Lamps', version = version + 1");
    until("the change is found without a notice", || {
        public.standings().expect(200).season == "Ford under Lamps"
    });
}

#[test]
fn a_reader_that_lost_its_database_says_so_and_comes_back() {
    let open = OpenSeason::start();
    let reader = standings_process(&open.stage.database.url());
    let public = open.public.by(reader.visitor());
    public.standings().expect(200);
    let others = "SELECT pg_terminate_backend(pid)::text FROM pg_stat_activity
        WHERE datname = current_database() AND pid <> pg_backend_pid()";
    open.stage.database.texts(others);
    open.give_a_point_when_it_can();
    until("the reader knows the change", || {
        let answer = public.standings();
        answer.status == 200 && total(&answer.view()) == 1
    });
}

impl OpenSeason {
    /// The desk's connections broke: the first tries may find one of them.
    fn give_a_point_when_it_can(&self) {
        until("the desk has its database again", || {
            self.try_to_give_a_point_at(&self.stage.server).status == 200
        });
    }
}
