use std::io::{BufRead, BufReader};
use std::time::Duration;

use nix::sys::signal::Signal;
use reqwest::blocking::{Client, Response};

use super::{Wall, version};

/// Somebody who follows a season.
struct Follower(BufReader<Response>);

impl Follower {
    fn of(wall: &Wall, last: Option<i64>) -> Self {
        let http = Client::builder()
            .no_proxy()
            .timeout(Duration::from_secs(60))
            .build()
            .unwrap();
        let address = wall.stage.server.address();
        let mut request = http.get(format!("{address}{}", wall.path("events")));
        if let Some(last) = last {
            request = request.header("last-event-id", last.to_string());
        }
        let response = request.send().unwrap();
        assert_eq!(response.headers()["content-type"], "text/event-stream");
        Self(BufReader::new(response))
    }

    /// The version of the next event; nothing once the stream has ended.
    fn next(&mut self) -> Option<i64> {
        let mut line = String::new();
        while self.0.read_line(&mut line).unwrap() > 0 {
            if let Some(id) = line.trim_end().strip_prefix("id: ") {
                return id.parse().ok();
            }
            line.clear();
        }
        None
    }
}

#[test]
fn a_follower_hears_of_each_change_and_then_finds_it() {
    let wall = Wall::hang();
    let first = version(&wall.read("standings").expect(200));
    let mut follower = Follower::of(&wall, None);
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
    assert_eq!(Follower::of(&wall, Some(first)).next(), Some(first + 2));
    let mut up_to_date = Follower::of(&wall, Some(first + 2));
    wall.give_a_point();
    assert_eq!(up_to_date.next(), Some(first + 3));
}

#[test]
fn a_server_that_stops_ends_its_streams() {
    let wall = Wall::hang();
    let mut follower = Follower::of(&wall, None);
    assert!(follower.next().is_some());
    let status = wall.stage.server.stop(Signal::SIGTERM);
    assert!(status.success(), "{status}");
    assert_eq!(follower.next(), None);
}
