use std::io::Write;
use std::net::{SocketAddrV4, TcpStream};
use std::os::fd::AsRawFd;

use nix::sys::signal::Signal;
use nix::sys::socket::{
    AddressFamily, SockFlag, SockType, SockaddrIn, connect, setsockopt, socket, sockopt::RcvBuf,
};

use super::OpenSeason;
use crate::harness::{Follower, until};

/// Events of far more bytes than the smallest buffer of a client and what waits for it.
const MANY: i64 = 200;

fn follow(open: &OpenSeason, last: Option<i64>) -> Follower {
    Follower::of(&open.stage.server, &open.path("events"), last)
}

/// A client with next to no room, which asks for the events and reads nothing.
fn follow_without_reading(open: &OpenSeason) -> TcpStream {
    let stream = SockType::Stream;
    let socket = socket(AddressFamily::Inet, stream, SockFlag::empty(), None).unwrap();
    setsockopt(&socket, RcvBuf, &1024).unwrap();
    let address = open.stage.server.address().trim_start_matches("http://");
    let address: SocketAddrV4 = address.parse().unwrap();
    connect(socket.as_raw_fd(), &SockaddrIn::from(address)).unwrap();
    let mut stream = TcpStream::from(socket);
    let path = open.path("events");
    write!(stream, "GET {path} HTTP/1.1\r\nHost: {address}\r\n\r\n").unwrap();
    stream
}

/// How many clients the server counts that follow a season.
fn followers(open: &OpenSeason) -> usize {
    let numbers = open.stage.server.metrics();
    let mut lines = numbers.lines();
    let count = lines.find_map(|line| line.strip_prefix("standings_kept{of=\"subscribers\"} "));
    count.unwrap().parse().unwrap()
}

#[test]
fn a_follower_hears_of_each_change_and_then_finds_it() {
    let open = OpenSeason::start();
    let first = open.standings().version;
    let mut follower = follow(&open, None);
    assert_eq!(follower.next(), Some(first));
    for change in 1..=5 {
        open.give_a_point();
        assert_eq!(follower.next(), Some(first + change));
        assert!(open.standings().version >= first + change);
    }
}

#[test]
fn whoever_comes_back_hears_what_is_new_and_only_that() {
    let open = OpenSeason::start();
    let first = open.standings().version;
    open.give_a_point();
    open.give_a_point();
    assert_eq!(follow(&open, Some(first)).next(), Some(first + 2));
    let mut up_to_date = follow(&open, Some(first + 2));
    open.give_a_point();
    assert_eq!(up_to_date.next(), Some(first + 3));
}

#[test]
fn whoever_heard_more_elsewhere_hears_nothing_older_here() {
    let open = OpenSeason::start();
    let first = open.standings().version;
    let mut ahead = follow(&open, Some(first + 2));
    for _ in 0..3 {
        open.give_a_point();
    }
    assert_eq!(ahead.next(), Some(first + 3));
}

#[test]
fn a_follower_hears_of_what_the_clock_alone_reveals() {
    let open = OpenSeason::start();
    let weeks = open.public.weeks().expect(200);
    let mut follower = follow(&open, Some(weeks.version));
    open.stage.clock().show(&weeks.weeks[1].announce_at);
    assert!(follower.next().unwrap() > weeks.version);
    open.stage.until_reveals_are_published();
    let told = "SELECT facts::text FROM trail WHERE act = 'reveal' ORDER BY entry_no DESC LIMIT 1";
    let told = &open.stage.database.texts(told)[0];
    assert!(
        told.contains("\"week\": 2") && told.contains("announcement"),
        "{told}"
    );
    let weeks = open.public.weeks().expect(200).weeks;
    assert_eq!(weeks[1].phase, "announced");
}

#[test]
fn a_server_that_stops_ends_its_streams() {
    let open = OpenSeason::start();
    let mut follower = follow(&open, None);
    assert!(follower.next().is_some());
    let status = open.stage.server.stop(Signal::SIGTERM);
    assert!(status.success(), "{status}");
    assert_eq!(follower.next(), None);
}

#[test]
fn whoever_reads_nothing_is_dropped_and_the_others_hear_on() {
    let open = OpenSeason::start();
    let first = open.standings().version;
    let mut reader = follow(&open, None);
    let silent = follow_without_reading(&open);
    until("both follow", || followers(&open) == 2);
    for _ in 0..MANY {
        open.give_a_point();
    }
    until("only the reader follows", || followers(&open) == 1);
    while reader.next().unwrap() < first + MANY {}
    drop(silent);
}
