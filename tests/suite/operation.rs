//! What those who run the server see of it.

use std::fs;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::mpsc;
use std::thread;

use nix::sys::signal::Signal;
use serde_json::json;

use crate::harness::{Database, Server, Stage, until};
use crate::sources::root;
use crate::stories::results::week::{FirstWeek, LAST_NIGHT, played};

#[test]
fn a_server_is_ready_as_long_as_its_database_answers() {
    let database = Database::create();
    let server = Server::start(&database);
    let probe = server.visitor();
    probe.get("/health/live").with_status(200);
    probe.get("/health/ready").with_status(200);
    drop(database);
    probe.get("/health/live").with_status(200);
    probe.get("/health/ready").refused(503, "unavailable");
}

#[test]
fn a_server_that_is_draining_says_so_and_serves_on() {
    let database = Database::create();
    let server = Server::launch(|command| {
        command
            .env("DATABASE_URL", database.url())
            .args(["--drain", "600"])
    });
    let wennable = server.register("Wennable");
    server.signal(Signal::SIGTERM);
    until("the server is draining", || {
        server.log().contains("draining")
    });
    wennable.get("/health/ready").refused(503, "unavailable");
    wennable.me().expect(200);
    assert!(server.stop(Signal::SIGTERM).success());
}

#[test]
fn requests_are_counted_by_route_and_never_by_what_a_client_typed() {
    let database = Database::create();
    let server = Server::start(&database);
    let visitor = server.visitor();
    visitor.get("/problems/not-found").with_status(200);
    visitor.get("/swordfish").with_status(404);
    let metrics = server.metrics();
    for line in [
        r#"http_requests_total{method="GET",route="/problems/{code}",status="200"} 1"#,
        r#"http_requests_total{method="GET",route="none",status="404"} 1"#,
        r#"database_connections{state="waiting"} "#,
        "process_resident_memory_bytes ",
    ] {
        assert!(metrics.contains(line), "{line} is not in\n{metrics}");
    }
    assert!(!metrics.contains("swordfish"), "{metrics}");
}

#[test]
fn the_numbers_are_on_a_listener_of_their_own_and_nowhere_else() {
    let database = Database::create();
    let server = Server::start(&database);
    server.visitor().get("/metrics").refused(404, "not-found");
    assert!(server.metrics().contains("process_resident_memory_bytes "));
}

#[test]
fn the_numbers_tell_of_requests_cache_pool_notices_replica_calendar_and_pairing() {
    let week = FirstWeek::paired(&["Oskrel", "Corvanel"]);
    let visitor = week.stage.server.visitor();
    let public = week.season().by(&visitor).for_everybody();
    public.standings().expect(200);
    for line in [
        "http_request_seconds_count{",
        r#"standings_pages{event="miss"} 1"#,
        r#"standings_kept{of="seasons"} 1"#,
        r#"database_connections{state="idle"} "#,
        "notice_queue_share ",
        "replica_connected 1",
        "replica_lag_seconds 0",
        r#"calendar_acts_total{act="open_lists"} "#,
        "calendar_done_timestamp_seconds 1",
        r#"pairing_seconds_count{step="solve"} 1"#,
        r#"pairing_seconds_count{step="check"} 1"#,
    ] {
        until(line, || week.stage.server.metrics().contains(line));
    }
    let numbers = week.stage.server.metrics();
    let table = fs::read_to_string(root().join("docker/README.md")).unwrap();
    let kinds = numbers
        .lines()
        .filter_map(|line| line.strip_prefix("# TYPE "));
    for name in kinds.filter_map(|line| line.split(' ').next()) {
        let name = name.split_once("process_").map_or(name, |_| "process_…");
        assert!(table.contains(&format!("`{name}`")), "{name}");
    }
}

#[test]
fn log_lines_carry_the_requests_id_and_no_personal_data() {
    let database = Database::create();
    let server = Server::launch(|command| {
        command
            .env("DATABASE_URL", database.url())
            .args(["--log", "debug"])
    });
    let wennable = server.register("Wennable");
    let problem = wennable
        .get("/api/v1/clubs/swordfish")
        .refused(404, "not-found");
    drop(wennable);
    let log = server.log();
    let line = log
        .lines()
        .find(|line| line.contains(problem.member("request_id").as_str().unwrap()));
    assert!(
        line.is_some_and(|line| line.contains("/api/v1/clubs/{club}")),
        "{log}"
    );
    for secret in [
        "wennable",
        "six lanterns",
        "swordfish",
        "127.0.0.1:0",
        "Bearer",
    ] {
        assert!(!log.contains(secret), "{secret} is in\n{log}");
    }
}

#[test]
fn whoever_changes_too_much_too_fast_must_wait_while_everybody_may_read() {
    let database = Database::create();
    let server = Server::launch(|command| {
        command
            .env("DATABASE_URL", database.url())
            .env("TALLYHOST_CHANGES_PER_SECOND", "1")
    });
    let visitor = server.visitor();
    let wrong = json!({ "email": "nobody@example.org", "password": "none of the words there are" });
    let mut answers = (0..100).map(|_| visitor.post("/api/v1/sessions/refresh", &wrong));
    let refused = answers.find(|answer| answer.status == 429).unwrap();
    let wait = refused
        .header("retry-after")
        .and_then(|wait| wait.parse::<u32>().ok());
    assert!(
        wait.is_some_and(|wait| (1..=2).contains(&wait)),
        "{refused:?}"
    );
    refused.refused(429, "too-many-requests");
    visitor.get("/problems/too-many-requests").with_status(200);
}

#[test]
fn the_log_of_a_whole_week_holds_nothing_that_anybody_typed() {
    let database = Database::create();
    let server = Server::launch(|command| {
        command
            .env("DATABASE_URL", database.url())
            .args(["--log", "debug"])
    });
    let week = FirstWeek::sealed_in(
        Stage::over(database, server, |_| {}),
        &["Oskrel", "Corvanel"],
    );
    week.pair();
    week.stage.clock().show(LAST_NIGHT);
    let [first, second] = week.sides();
    week.report(first, "first", &played((3, 90), (1, 40)))
        .expect(200);
    let objection = week.game().by(second).dispute("We counted the ford twice");
    objection.expect(200);
    let visitor = week.stage.visitor();
    let public = week.season().by(&visitor).for_everybody();
    public.standings().expect(200);
    visitor.directory("?search=swordfish").expect(200);
    let tokens = visitor.sign_in_with("oskrel@example.org", "six lanterns on the ford");
    let tokens = tokens.expect(200);

    let log = week.stage.server.log().to_lowercase();
    assert!(log.contains("/report") && log.contains("/dispute"), "{log}");
    let tokens = [tokens.access.as_str(), &tokens.refresh];
    let typed = [
        "oskrel",
        "corvanel",
        "wennable",
        "example.org",
        "six lanterns",
        "counted the ford",
        "lamplit",
        "quernlight",
        "swordfish",
        "hedge-reeve",
    ];
    for word in typed.into_iter().chain(tokens) {
        assert!(!log.contains(&word.to_lowercase()), "{word} is in\n{log}");
    }
}

/// As a proxy does it: whoever is no longer ready gets nothing new.
#[test]
fn a_server_is_replaced_by_another_and_no_request_is_lost() {
    let database = Database::create();
    let [old, new] = [(); 2].map(|()| {
        Server::launch(|command| {
            command
                .env("DATABASE_URL", database.url())
                .args(["--drain", "600"])
        })
    });
    let people: Vec<_> = (0..4)
        .map(|number| old.register(&format!("Founder{number}")))
        .collect();
    let (founded_at_old, at_old) = mpsc::channel();
    let by_new = AtomicUsize::new(0);
    let by_old = thread::scope(|scope| {
        for (number, person) in people.iter().enumerate() {
            let (old, new, by_new) = (&old, &new, &by_new);
            let founded_at_old = founded_at_old.clone();
            scope.spawn(move || {
                for club in 0.. {
                    let is_ready = old.visitor().get("/health/ready").status == 200;
                    let server = if is_ready { old } else { new };
                    let slug = format!("club-{number}-{club}");
                    let founder = server.welcome(person);
                    let founded = founder.found_club("Lamplit Ford gaming circle", &slug);
                    founded.expect(201);
                    if !is_ready {
                        by_new.fetch_add(1, Ordering::Relaxed);
                        return;
                    }
                    founded_at_old.send(slug).unwrap();
                }
            });
        }
        drop(founded_at_old);
        let by_old = at_old.iter().take(8).count();
        old.signal(Signal::SIGTERM);
        by_old + at_old.iter().count()
    });
    assert!(old.stop(Signal::SIGTERM).success());
    assert_eq!(by_new.load(Ordering::Relaxed), people.len());
    let founded = by_old + people.len();
    assert_eq!(database.texts("SELECT slug FROM clubs").len(), founded);
}
