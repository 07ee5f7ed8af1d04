use std::io::Write;
use std::net::{SocketAddrV4, TcpStream};
use std::os::fd::AsRawFd;

use nix::sys::signal::Signal;
use nix::sys::socket::{
    AddressFamily, SockFlag, SockType, SockaddrIn, connect, setsockopt, socket, sockopt::RcvBuf,
};

use super::{Wall, version};
use crate::harness::{Follower, until};

/// Events of far more bytes than the smallest buffer of a client and what waits for it.
const MANY: i64 = 200;

fn follow(wall: &Wall, last: Option<i64>) -> Follower {
    Follower::of(&wall.stage.server, &wall.path("events"), last)
}

/// A client with next to no room, which asks for the events and reads nothing.
fn follow_without_reading(wall: &Wall) -> TcpStream {
    let stream = SockType::Stream;
    let socket = socket(AddressFamily::Inet, stream, SockFlag::empty(), None).unwrap();
    setsockopt(&socket, RcvBuf, &1024).unwrap();
    let address = wall.stage.server.address().trim_start_matches("http://");
    let address: SocketAddrV4 = address.parse().unwrap();
    connect(socket.as_raw_fd(), &SockaddrIn::from(address)).unwrap();
    let mut stream = TcpStream::from(socket);
    let path = wall.path("events");
    write!(stream, "GET {path} HTTP/1.1\r\nHost: {address}\r\n\r\n").unwrap();
    stream
}

/// How many clients the server counts that follow a season.
fn followers(wall: &Wall) -> usize {
    let numbers = wall.stage.server.visitor().get("/metrics").text();
    let mut lines = numbers.lines();
    let count = lines.find_map(|line| line.strip_prefix("standings_kept{of=\"subscribers\"} "));
    count.unwrap().parse().unwrap()
}

#[test]
fn a_follower_hears_of_each_change_and_then_finds_it() {
    let wall = Wall::hang();
    let first = version(&wall.read("standings").expect(200));
    let mut follower = follow(&wall, None);
    assert_eq!(follower.next(), Some(first));
    for change in 1..=5 {
        wall.give_a_point();
        assert_eq!(follower.next(), Some(first + change));
        assert!(version(&wall.read("standings").expect(200)) >= first + change);
    }
}

#[test]
fn whoever_comes_back_hears_what_is_new_and_only_that() {
    let wall = Wall::hang();
    let first = version(&wall.read("standings").expect(200));
    wall.give_a_point();
    wall.give_a_point();
    assert_eq!(follow(&wall, Some(first)).next(), Some(first + 2));
    let mut up_to_date = follow(&wall, Some(first + 2));
    wall.give_a_point();
    assert_eq!(up_to_date.next(), Some(first + 3));
}

#[test]
fn whoever_heard_more_elsewhere_hears_nothing_older_here() {
    let wall = Wall::hang();
    let first = version(&wall.read("standings").expect(200));
    let mut ahead = follow(&wall, Some(first + 2));
    for _ in 0..3 {
        wall.give_a_point();
    }
    assert_eq!(ahead.next(), Some(first + 3));
}

#[test]
fn a_follower_hears_of_what_the_clock_alone_reveals() {
    let wall = Wall::hang();
    let weeks = wall.read("weeks").expect(200);
    let mut follower = follow(&wall, Some(version(&weeks)));
    let announced = weeks["weeks"][1]["announce_at"].as_str().unwrap();
    wall.stage.clock().show(announced);
    assert!(follower.next().unwrap() > version(&weeks));
    wall.stage.until_moments_are_told();
    let told = "SELECT facts::text FROM trail WHERE act = 'reveal' ORDER BY entry_no DESC LIMIT 1";
    let told = &wall.stage.database.texts(told)[0];
    assert!(
        told.contains("\"week\": 2") && told.contains("announcement"),
        "{told}"
    );
    assert_eq!(
        wall.read("weeks").expect(200)["weeks"][1]["phase"],
        "announced"
    );
}

#[test]
fn a_server_that_stops_ends_its_streams() {
    let wall = Wall::hang();
    let mut follower = follow(&wall, None);
    assert!(follower.next().is_some());
    let status = wall.stage.server.stop(Signal::SIGTERM);
    assert!(status.success(), "{status}");
    assert_eq!(follower.next(), None);
}

#[test]
fn whoever_reads_nothing_is_dropped_and_the_others_hear_on() {
    let wall = Wall::hang();
    let first = version(&wall.read("standings").expect(200));
    let mut reader = follow(&wall, None);
    let silent = follow_without_reading(&wall);
    until("both follow", || followers(&wall) == 2);
    for _ in 0..MANY {
        wall.give_a_point();
    }
    until("only the reader follows", || followers(&wall) == 1);
    while reader.next().unwrap() < first + MANY {}
    drop(silent);
}
