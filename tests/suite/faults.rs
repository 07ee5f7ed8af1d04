//! A database that stalls, is cut off, is busy or has no room: requests are refused for the moment, none
//! hangs, and all goes on as soon as the database does. The patience of the test's clients is the bound.

mod collisions;
mod no_room;

use std::fs;
use std::thread;

use nix::sys::signal::{Signal, kill};
use nix::unistd::Pid;

use crate::harness::{Actor, Answer, Database, Server, open_folder, postmaster_in};

#[test]
fn a_database_that_stalls_makes_requests_fail_for_the_moment_and_then_serves_them() {
    let folder = open_folder();
    let server = Server::embedded(folder.path());
    let wennable = server.register("Wennable");
    let stalled = Stalled::processes_of(postmaster_in(folder.path()));
    try_in_parallel(&wennable, "stalled", 6);
    drop(stalled);
    found_club(&wennable, "lamplit-ford").expect(201);
}

#[test]
fn a_pool_whose_connections_all_wait_refuses_for_the_moment_and_recovers() {
    let database = Database::create();
    let server = Server::start(&database);
    let wennable = server.register("Wennable");
    let lock = database.hold("LOCK TABLE clubs IN ACCESS EXCLUSIVE MODE");
    try_in_parallel(&wennable, "locked", 6);
    drop(lock);
    found_club(&wennable, "lamplit-ford").expect(201);
    assert_eq!(database.texts("SELECT slug FROM clubs"), ["lamplit-ford"]);
}

#[test]
fn connections_that_are_cut_between_two_requests_are_replaced() {
    let database = Database::create();
    let server = Server::start(&database);
    let wennable = server.register("Wennable");
    database.run(
        "SELECT pg_terminate_backend(pid) FROM pg_stat_activity
            WHERE datname = current_database() AND pid <> pg_backend_pid()",
    );
    found_club(&wennable, "lamplit-ford").expect(201);
}

fn found_club(person: &Actor, slug: &str) -> Answer {
    let founded = person.found_club("Lamplit Ford gaming circle", slug);
    founded.of()
}

/// More requests at once than the server has connections; each is refused for the moment.
fn try_in_parallel(person: &Actor, slug: &str, requests: usize) {
    thread::scope(|scope| {
        for number in 0..requests {
            scope.spawn(move || {
                let answer = found_club(person, &format!("{slug}-{number}"));
                assert!(answer.header("retry-after").is_some(), "{answer:?}");
                answer.refused(503, "unavailable");
            });
        }
    });
}

/// Processes that stand still until this is dropped.
struct Stalled(Vec<Pid>);

impl Stalled {
    /// A postmaster and its sessions.
    fn processes_of(postmaster: Pid) -> Self {
        let children = format!("/proc/{postmaster}/task/{postmaster}/children");
        let children = fs::read_to_string(children).unwrap();
        let children = children
            .split_whitespace()
            .map(|pid| Pid::from_raw(pid.parse().unwrap()));
        let stalled = Self(std::iter::once(postmaster).chain(children).collect());
        for pid in &stalled.0 {
            kill(*pid, Signal::SIGSTOP).unwrap();
        }
        stalled
    }
}

impl Drop for Stalled {
    fn drop(&mut self) {
        for pid in &self.0 {
            // A session may have ended meanwhile.
            let _ = kill(*pid, Signal::SIGCONT);
        }
    }
}
