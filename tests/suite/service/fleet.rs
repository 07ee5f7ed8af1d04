//! Two desks and three readers over a primary and a streaming replica of it.

use std::sync::atomic::{AtomicBool, Ordering};
use std::thread;

use super::{OpenSeason, ask_with, standings_process, total, version};
use crate::harness::{
    Database, Follower, PRIMARY, PublicTable, REPLICA, Replica, Server, Stage, until,
};

/// A desk over a database.
pub fn desk(url: &str) -> Server {
    Server::launch(|command| command.env("DATABASE_URL", url).args(["--role", "desk"]))
}

struct Fleet {
    open: OpenSeason,
    desks: [Server; 2],
    readers: [Server; 3],
}

impl Fleet {
    /// One reader at the primary, two at the replica.
    fn start() -> Self {
        let open = wall_at_the_primary();
        let database = &open.stage.database;
        let at_replica = REPLICA.url_of(database.name());
        Self {
            desks: [(); 2].map(|()| desk(&database.url())),
            readers: [database.url(), at_replica.clone(), at_replica]
                .map(|url| standings_process(&url)),
            open,
        }
    }
}

fn wall_at_the_primary() -> OpenSeason {
    let database = Database::create_in(&PRIMARY);
    let server = desk(&database.url());
    OpenSeason::over(Stage::over(database, server, |_| {}))
}

/// The table at this version or a newer one; until the reader has got so far, a 503 that says when to
/// come again.
fn table_at_least(open: &OpenSeason, reader: &Server, seen: i64) -> PublicTable {
    let public = open.public.by(reader.visitor());
    let mut table = None;
    until("the reader has got to the version", || {
        let answer = public.standings_from(seen);
        if answer.status == 200 {
            table = Some(answer.view());
            return true;
        }
        assert!(answer.header("retry-after").is_some(), "{answer:?}");
        answer.refused(503, "unavailable");
        false
    });
    let table = table.unwrap();
    assert!(table.version >= seen, "{table:?}");
    table
}

#[test]
fn what_one_desk_was_told_is_read_from_every_process_by_whoever_knows_its_version() {
    let fleet = Fleet::start();
    let mut seen = 0;
    for points in 1..=6 {
        let desk = &fleet.desks[points % 2];
        let made = fleet.open.give_a_point_at(desk);
        assert!(made > seen, "two desks make one row of versions");
        seen = made;
        for reader in &fleet.readers {
            let table = table_at_least(&fleet.open, reader, seen);
            assert_eq!(total(&table), i64::try_from(points).unwrap());
        }
    }
}

/// As through a proxy that sends each request elsewhere: the tags of a reader's own answers are enough.
#[test]
fn a_reader_who_is_sent_from_process_to_process_never_goes_back() {
    let fleet = Fleet::start();
    let path = fleet.open.path("standings");
    let over = AtomicBool::new(false);
    let hop = || {
        let (mut newest, mut held) = (0, None);
        for reader in fleet.readers.iter().cycle() {
            let headers: Vec<(&str, &str)> = held
                .iter()
                .map(|tag: &String| ("if-none-match", tag.as_str()))
                .collect();
            let answer = ask_with(&reader.visitor(), &path, &headers);
            match answer.status {
                200 => {
                    assert!(version(&answer.json()) >= newest, "{answer:?}");
                    newest = version(&answer.json());
                    held = Some(answer.etag());
                }
                304 => assert_eq!(Some(answer.etag()), held),
                _ => drop(answer.refused(503, "unavailable")),
            }
            if over.load(Ordering::Acquire) {
                return newest;
            }
        }
        newest
    };
    let (newest, made) = thread::scope(|scope| {
        let reader = scope.spawn(hop);
        let points = (0..20).map(|write| fleet.open.give_a_point_at(&fleet.desks[write % 2]));
        let made = points.max().unwrap();
        over.store(true, Ordering::Release);
        (reader.join().unwrap(), made)
    });
    assert!(newest <= made);
}

/// The primary writes on and clears away each part of its log that nobody waits for.
const FILL_AND_TIDY: &str = "
    SELECT pg_switch_wal(); CHECKPOINT; SELECT pg_switch_wal(); CHECKPOINT;
    SELECT pg_switch_wal(); CHECKPOINT";

#[test]
fn a_replica_that_lags_stops_and_returns_says_so_and_catches_up() {
    let mut replica = Replica::follow();
    let open = wall_at_the_primary();
    let reader = standings_process(&replica.url_of(open.stage.database.name()));
    let visitor = reader.visitor();
    let path = open.path("standings");
    let first = open.give_a_point_at(&open.stage.server);
    assert_eq!(total(&table_at_least(&open, &reader, first)), 1);
    let ready = || visitor.get("/health/ready");
    until("it has replayed all", || {
        ready().text() == "ready, following the primary, 0.0 s behind\n"
    });

    replica.pause();
    let second = open.give_a_point_at(&open.stage.server);
    let behind = visitor.get(&format!("{path}?at_least={second}"));
    assert_eq!(behind.header("retry-after"), Some("1"));
    behind.refused(503, "unavailable");
    assert_eq!(
        version(&visitor.get(&path).expect(200)),
        first,
        "others are served"
    );
    until("the lag is told to proxies", || {
        let ready = ready().text();
        ready.starts_with("ready, following") && !ready.contains(" 0.0 s")
    });
    until("the lag is measured", || lag(&reader.metrics()) > 0.0);
    replica.resume();
    assert_eq!(total(&table_at_least(&open, &reader, second)), 2);
    until("the lag is over", || lag(&reader.metrics()) == 0.0);

    replica.stop();
    until("nothing is served that nobody confirms", || {
        visitor.get(&path).status == 503
    });
    ready().refused(503, "unavailable");
    visitor.get("/health/live").with_status(200);
    let third = open.give_a_point_at(&open.stage.server);
    PRIMARY.run("postgres", FILL_AND_TIDY);
    replica.start();
    assert_eq!(total(&table_at_least(&open, &reader, third)), 3);
    until("it is ready again", || ready().status == 200);
}

#[test]
fn what_a_replica_that_is_cut_off_shows_is_served_only_as_long_as_one_may_wait() {
    let replica = Replica::follow();
    let open = wall_at_the_primary();
    let url = replica.url_of(open.stage.database.name());
    let [strict, patient] = ["2", "86400"].map(|seconds| reader_for(&url, seconds));
    let path = open.path("standings");
    let first = open.give_a_point_at(&open.stage.server);
    for reader in [&strict, &patient] {
        assert_eq!(total(&table_at_least(&open, reader, first)), 1);
    }
    let mut follower = Follower::of(&strict, &open.path("events"), None);
    assert_eq!(follower.next(), Some(first));

    let way_back = replica.cut_off();
    let second = open.give_a_point_at(&open.stage.server);
    until("the strict reader serves nothing", || {
        strict.visitor().get(&path).status == 503
    });
    assert_eq!(follower.next(), None, "who follows is sent elsewhere");
    for closed in [&path, "/public/seasons", "/health/ready"] {
        strict.visitor().get(closed).refused(503, "unavailable");
    }
    until("the numbers say so", || {
        strict.metrics().contains("replica_connected 0")
    });
    until("the patient reader tells how old its table may be", || {
        let answer = patient.visitor().get(&path).with_status(200);
        assert_eq!(version(&answer.json()), first);
        let age = answer.header("age").map(|age| age.parse::<u64>().unwrap());
        age.is_some_and(|age| age > 1)
    });
    let ready = patient.visitor().get("/health/ready").with_status(200);
    assert!(ready.text().contains("cut off from the primary"));

    replica.reconnect(way_back);
    for reader in [&strict, &patient] {
        assert_eq!(total(&table_at_least(&open, reader, second)), 2);
        until("it is ready", || {
            reader.visitor().get("/health/ready").status == 200
        });
    }
}

/// A process of the standings that serves what may be so old.
fn reader_for(url: &str, seconds: &str) -> Server {
    Server::launch(|command| {
        command
            .env("DATABASE_URL", url)
            .env_remove("TALLYHOST_SIGNING_KEY")
            .args(["--role", "standings", "--stale-after", seconds])
    })
}

fn lag(metrics: &str) -> f64 {
    let mut lines = metrics.lines();
    let line = lines.find_map(|line| line.strip_prefix("replica_lag_seconds "));
    line.unwrap().parse().unwrap()
}
