use nix::sys::signal::Signal;

use super::{Wall, version};
use crate::harness::Follower;

fn follow(wall: &Wall, last: Option<i64>) -> Follower {
    Follower::of(&wall.stage.server, &wall.path("events"), last)
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
fn a_server_that_stops_ends_its_streams() {
    let wall = Wall::hang();
    let mut follower = follow(&wall, None);
    assert!(follower.next().is_some());
    let status = wall.stage.server.stop(Signal::SIGTERM);
    assert!(status.success(), "{status}");
    assert_eq!(follower.next(), None);
}
