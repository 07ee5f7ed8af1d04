//! Processes that are killed in the middle of their work. What was acknowledged is there afterwards,
//! and nothing is half done. The system's page cache survives a process, so this says nothing about
//! a power cut.

use std::sync::mpsc;
use std::thread;

use nix::sys::signal::{Signal, kill};
use serde_json::json;

use crate::harness::{Actor, Database, Server, open_folder, postmaster_in, until};

const CLIENTS: usize = 8;

#[test]
fn a_killed_server_loses_nothing_that_it_acknowledged_and_leaves_nothing_half_done() {
    let database = Database::create();
    let people = register_people(&Server::start(&database));
    let mut acknowledged = Vec::new();
    for round in 0..10 {
        let server = Server::start(&database);
        let people = people.iter().map(|person| server.welcome(person)).collect();
        acknowledged.extend(found_clubs(people, round, || {
            server.stop(Signal::SIGKILL);
        }));
    }
    let kept = database.texts("SELECT slug FROM clubs");
    let lost: Vec<_> = acknowledged
        .iter()
        .filter(|slug| !kept.contains(slug))
        .collect();
    assert!(lost.is_empty(), "{lost:?}");
    let half = "SELECT slug FROM clubs
        WHERE NOT EXISTS (SELECT FROM memberships WHERE memberships.club_id = clubs.club_id)
        OR NOT EXISTS (SELECT FROM trail WHERE trail.club_id = clubs.club_id)";
    assert_eq!(database.texts(half), Vec::<String>::new());
}

#[test]
fn a_server_whose_database_is_killed_answers_again_and_has_lost_nothing() {
    let folder = open_folder();
    let server = Server::embedded(folder.path());
    let people = register_people(&server);
    let mut acknowledged = Vec::new();
    for round in 0..2 {
        acknowledged.extend(found_clubs(people.clone(), round, || {
            kill(postmaster_in(folder.path()), Signal::SIGKILL).unwrap();
        }));
        until("the server is ready", || {
            server.visitor().get("/health/ready").status == 200
        });
    }
    let mut kept = Vec::new();
    for person in &people {
        let clubs = person.account().clubs.into_iter();
        kept.extend(clubs.map(|club| club.slug));
    }
    let lost: Vec<_> = acknowledged
        .iter()
        .filter(|slug| !kept.contains(slug))
        .collect();
    assert!(lost.is_empty(), "{lost:?}");
}

#[test]
fn a_killed_server_with_an_embedded_database_starts_again_at_once() {
    let folder = open_folder();
    let server = Server::embedded(folder.path());
    let wennable = server.register("Wennable");
    server.stop(Signal::SIGKILL);
    let server = Server::embedded(folder.path());
    assert_eq!(server.welcome(&wennable).account().name, "Wennable");
}

fn register_people(server: &Server) -> Vec<Actor> {
    (0..CLIENTS)
        .map(|number| server.register(&format!("Founder{number}")))
        .collect()
}

/// Everybody founds clubs, one after the other, until the server no longer answers; `disaster`
/// strikes while they are at it. The short names of the clubs that were acknowledged.
fn found_clubs(people: Vec<Actor>, round: usize, disaster: impl FnOnce()) -> Vec<String> {
    let (acknowledge, acknowledged) = mpsc::channel();
    thread::scope(|scope| {
        for (number, person) in people.into_iter().enumerate() {
            let acknowledge = acknowledge.clone();
            scope.spawn(move || {
                for club in 0.. {
                    let slug = format!("club-{round}-{number}-{club}");
                    let body = json!({ "name": "Lamplit Ford gaming circle", "slug": slug });
                    let Some(answer) = person.try_post("/api/v1/clubs", &body) else {
                        return;
                    };
                    if answer.status != 201 {
                        answer.refused(503, "unavailable");
                        return;
                    }
                    acknowledge.send(slug).unwrap();
                }
            });
        }
        drop(acknowledge);
        let mut slugs: Vec<String> = acknowledged.iter().take(3 * CLIENTS).collect();
        disaster();
        slugs.extend(acknowledged);
        slugs
    })
}
