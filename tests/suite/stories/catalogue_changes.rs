//! A new version of a catalogue: what it changes, and who may know whose lists that touches.

use super::lists::DEADLINE;
use crate::harness::{Actor, Catalogue, CatalogueChanges, List, Stage, TouchedEntry};

#[test]
fn a_new_version_says_what_changed_and_tells_each_only_of_lists_that_they_may_know() {
    let stage = Stage::draft();
    let [oskrel, corvanel] = ["Oskrel", "Corvanel"].map(|handle| stage.join(handle));
    let ilkamar = stage.appoint("Ilkamar", "referee");
    stage.start();
    let [by_oskrel, by_corvanel] = [&oskrel, &corvanel].map(|player| stage.week(1).list_of(player));
    let list = List::demo("Oskrel", 1);
    by_oskrel.seal(&list).expect(201);
    let half = list.without_last_entry().without_last_entry();
    by_oskrel.draft(&half).expect(200);
    by_corvanel.seal(&List::demo("Corvanel", 1)).expect(201);
    stage.catalogue.import(&next_version()).expect(201);

    let own = changes(&stage, &oskrel.actor);
    assert_eq!(own.summary, "1 unit dearer, 1 gone");
    let units = own.units.iter();
    let units: Vec<_> = units
        .map(|unit| (unit.unit.as_str(), unit.difference.as_str()))
        .collect();
    assert_eq!(units, [("furrow-hares", "dearer"), ("threshers", "gone")]);
    let [touched] = &own.own[..] else {
        panic!("the draft has no hares: {own:?}");
    };
    assert_eq!((touched.week, touched.sealed), (1, true));
    assert_eq!(
        touched.entries,
        [TouchedEntry::of(
            "furrow-hares-1",
            "Furrow Hares",
            70,
            Some(75)
        )]
    );

    for other in [&corvanel.actor, &ilkamar, &stage.owner] {
        let seen = changes(&stage, other);
        assert!(seen.own.is_empty() && seen.opened.is_empty(), "{seen:?}");
    }
    stage.clock().show(DEADLINE);
    stage.week(1).open_lists().expect(204);
    let seen = changes(&stage, &stage.owner);
    let [opened] = &seen.opened[..] else {
        panic!("one season runs: {seen:?}");
    };
    assert_eq!((opened.lists, opened.touched), (2, 1));
    assert!(changes(&stage, &ilkamar).opened.is_empty());
}

#[test]
fn a_comparison_needs_two_versions_that_there_are() {
    let stage = Stage::draft();
    let catalogue = &stage.catalogue;
    let same = catalogue.changes(1, 1).expect(200);
    assert_eq!(same.summary, "no unit changed");
    catalogue.changes(1, 2).refused(404, "not-found");
    catalogue
        .changes_as(1, "")
        .refused(400, "invalid-parameter");
}

/// Furrow Hares cost 5 points more at every size, and the Threshers are gone.
fn next_version() -> Catalogue {
    let mut catalogue = Catalogue::of_the_demo();
    catalogue.remove_unit("threshers");
    for size in &mut catalogue.unit("furrow-hares").sizes {
        size.points += 5;
    }
    catalogue
}

fn changes(stage: &Stage, by: &Actor) -> CatalogueChanges {
    stage.catalogue.by(by).changes(2, 1).expect(200)
}
