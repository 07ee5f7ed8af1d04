//! Worlds that are equal but for one player's list look the same to everybody else, through every
//! door that is read: operations, pages, the public read service, its events, the season's version
//! and the numbers of the process.

mod doors;
mod seen;
mod worlds;

use super::lists::DEADLINE;
use crate::harness::{Follower, List, Stage};
use seen::{Seen, differences};
use worlds::Worlds;

#[test]
fn a_sealed_list_and_a_missing_one_look_the_same_and_so_do_two_different_ones() {
    let worlds = Worlds::new();
    let [missing, whole, smaller] = &worlds.stages;
    let quiet = [whole, smaller].map(|world| world.database.listen("season_changed"));
    seal_differently(&worlds);
    for (world, news) in [whole, smaller].into_iter().zip(quiet) {
        assert_eq!(news.heard(), Vec::<String>::new(), "nothing is told");
        let version = |world: &Stage| {
            let version = "SELECT version || ' ' || changed_at FROM seasons";
            world.database.texts(version)
        };
        assert_eq!(version(world), version(missing));
    }

    for person in &worlds.people {
        let name = person.name;
        let [in_missing, in_whole, in_smaller] = worlds.look_in_each(person);
        let other = differences(&in_whole, &in_smaller);
        assert!(other.is_empty(), "{name} sees another list: {other:#?}");
        let present = differences(&in_missing, &in_whole);
        let only_states = |(seen, _): &(&Seen, &Seen)| {
            let tells = ["/weeks/1/lists", "/board"];
            tells.iter().any(|door| seen.asked.contains(door))
        };
        if person.runs_season {
            assert!(present.len() > 1, "{name} should see that there is a list");
            assert!(present.iter().all(only_states), "{name}: {present:#?}");
        } else {
            assert!(
                present.is_empty(),
                "{name} sees that there is a list: {present:#?}"
            );
        }
    }
    let [_, in_whole, in_smaller] = worlds.look_in_each(&worlds.owner);
    let own = differences(&in_whole, &in_smaller);
    for door in ["/weeks/1/list ", "/collection ", "/weeks/1/list/receipt "] {
        let opens = |(seen, _): &(&Seen, &Seen)| seen.asked.contains(door);
        assert!(own.iter().any(opens), "the owner sees {door}");
    }
}

#[test]
fn the_events_of_a_season_tell_of_lists_when_they_are_opened_and_not_before() {
    let worlds = Worlds::new();
    let events = worlds.stages[0].season.public("events");
    let mut followers = worlds
        .stages
        .each_ref()
        .map(|world| Follower::of(&world.server, &events, None));
    seal_differently(&worlds);
    let greeted = followers.each_mut().map(Follower::next);
    assert!(greeted[0].is_some() && greeted.iter().all(|version| *version == greeted[0]));
    for world in &worlds.stages {
        world.clock().show(DEADLINE);
        world.week(1).open_lists().expect(204);
    }
    let told = followers.each_mut().map(Follower::next);
    assert_eq!(told, greeted.map(|version| Some(version? + 1)));

    let [_, whole, smaller] = &worlds.stages;
    let [one, other] = [whole, smaller].map(|world| {
        let lists = world.week(1).by(world.visitor()).get("lists");
        Seen::new("", &lists.with_status(200))
    });
    assert_ne!(one, other, "once opened, everybody sees them");
}

#[test]
fn the_numbers_of_the_process_do_not_tell_a_sealed_list_from_a_checked_one() {
    let worlds = Worlds::new();
    let [checked, sealed, drafted] = &worlds.stages;
    let list = List::demo("Oskrel", 1);
    worlds.own_list_in(checked).check(&list).expect(200);
    worlds.own_list_in(sealed).seal(&list).expect(201);
    worlds.own_list_in(drafted).draft(&list).expect(200);
    let counted = |world: &Stage| -> Vec<String> {
        let numbers = world.server.metrics();
        let lines = numbers
            .lines()
            .filter(|line| line.starts_with("http_requests_total{") || line.contains("_count{"));
        lines.map(str::to_owned).collect()
    };
    let numbers = counted(checked);
    assert!(!numbers.is_empty());
    assert_eq!(counted(sealed), numbers);
    assert_eq!(counted(drafted), numbers);
}

/// Nothing in the first world, Oskrel's list in the second, and in the third a draft and two other
/// lists one after the other.
fn seal_differently(worlds: &Worlds) {
    let [_, whole, smaller] = &worlds.stages;
    let list = List::demo("Oskrel", 1);
    worlds.own_list_in(whole).seal(&list).expect(201);
    let list = list.without_last_entry();
    let own = worlds.own_list_in(smaller);
    smaller.clock().show("2026-01-08T18:03:00+01:00");
    own.draft(&list).expect(200);
    own.seal(&list.clone().without_last_entry()).expect(201);
    own.seal(&list).expect(201);
    for world in &worlds.stages {
        world.clock().show("2026-01-08T18:05:00+01:00");
    }
}
