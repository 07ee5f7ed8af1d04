//! Worlds that are equal but for one player's list look the same to everybody else, through every
//! door that is read: operations, pages, the public read service, its events, the season's version
//! and the numbers of the process.

mod cast;
mod doors;
mod seen;

use serde_json::Value;

use super::lists::{DEADLINE, open, save_draft, seal, without_last_entry};
use crate::harness::{Follower, Stage, demo_list};
use cast::Cast;
use seen::{Seen, differences};

#[test]
fn a_sealed_list_and_a_missing_one_look_the_same_and_so_do_two_different_ones() {
    let cast = Cast::assemble();
    let [missing, whole, smaller] = &cast.worlds;
    let quiet = [whole, smaller].map(|world| world.database.listen("season_changed"));
    seal_differently(&cast);
    for (world, news) in [whole, smaller].into_iter().zip(quiet) {
        assert_eq!(news.heard(), Vec::<String>::new(), "nothing is told");
        let version = |world: &Stage| {
            let version = "SELECT version || ' ' || changed_at FROM seasons";
            world.database.texts(version)
        };
        assert_eq!(version(world), version(missing));
    }

    for person in &cast.people {
        let name = person.name;
        let [in_missing, in_whole, in_smaller] = cast.look_in_each(person);
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
    let [_, in_whole, in_smaller] = cast.look_in_each(&cast.owner);
    let own = differences(&in_whole, &in_smaller);
    for door in ["/weeks/1/list ", "/collection ", "/weeks/1/list/receipt "] {
        let opens = |(seen, _): &(&Seen, &Seen)| seen.asked.contains(door);
        assert!(own.iter().any(opens), "the owner sees {door}");
    }
}

#[test]
fn the_events_of_a_season_tell_of_lists_when_they_are_opened_and_not_before() {
    let cast = Cast::assemble();
    let public = cast.worlds[0].season.replacen("/api/v1", "/public", 1);
    let mut followers = cast
        .worlds
        .each_ref()
        .map(|world| Follower::of(&world.server, &format!("{public}/events"), None));
    seal_differently(&cast);
    let greeted = followers.each_mut().map(Follower::next);
    assert!(greeted[0].is_some() && greeted.iter().all(|version| *version == greeted[0]));
    for world in &cast.worlds {
        world.clock().show(DEADLINE);
        open(world, 1).expect(204);
    }
    let told = followers.each_mut().map(Follower::next);
    assert_eq!(told, greeted.map(|version| Some(version? + 1)));

    let [_, whole, smaller] = &cast.worlds;
    let lists = format!("{}/lists", whole.week(1));
    let [one, other] = [whole, smaller].map(|world| {
        let visitor = world.server.visitor();
        Seen::new("", &visitor.get(&lists).with_status(200))
    });
    assert_ne!(one, other, "once opened, everybody sees them");
}

#[test]
fn the_numbers_of_the_process_do_not_tell_a_sealed_list_from_a_checked_one() {
    let cast = Cast::assemble();
    let [checked, sealed, drafted] = &cast.worlds;
    let list = demo_list("Oskrel", 1);
    let check = format!("{}/list/check", checked.week(1));
    let oskrel = cast.oskrel_in(checked);
    oskrel.actor.post(&check, &list).expect(200);
    seal(sealed, &cast.oskrel_in(sealed), 1, &list).expect(201);
    save_draft(drafted, &cast.oskrel_in(drafted), None, &list).expect(200);
    let counted = |world: &Stage| -> Vec<String> {
        let numbers = world.server.visitor().get("/metrics").with_status(200);
        let lines = numbers.text();
        let lines = lines
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
fn seal_differently(cast: &Cast) {
    let [_, whole, smaller] = &cast.worlds;
    let list = demo_list("Oskrel", 1);
    seal(whole, &cast.oskrel_in(whole), 1, &list).expect(201);
    let list: Value = without_last_entry(list);
    let player = cast.oskrel_in(smaller);
    smaller.clock().show("2026-01-08T18:03:00+01:00");
    save_draft(smaller, &player, None, &list).expect(200);
    seal(smaller, &player, 1, &without_last_entry(list.clone())).expect(201);
    seal(smaller, &player, 1, &list).expect(201);
    for world in &cast.worlds {
        world.clock().show("2026-01-08T18:05:00+01:00");
    }
}
