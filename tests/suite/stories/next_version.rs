//! Rules from week to week where the catalogue has changed in between: last week's list keeps its
//! version, this week's is held against its own, and nobody is bound by what is no longer offered.

use serde_json::json;

use super::lists::{DEADLINE, SECOND_WEEK, opened};
use crate::harness::{Catalogue, Entry, List, Player, Stage, TouchedEntry};

#[test]
fn a_sealed_list_keeps_its_points_and_the_next_draft_says_what_has_changed() {
    let (stage, oskrel) = second_week_pinned_to_another_version();
    let first = opened(&stage, 1);
    let sealed = first.of(&oskrel).sealed();
    assert_eq!((sealed.points, sealed.catalogue_number), (300, 1));
    let own = stage.week(2).list_of(&oskrel);
    let found = own.changes(&List::demo("Oskrel", 1)).expect(200);
    assert_eq!(found.since, Some(1));
    let catalogue = found.catalogue.as_ref().unwrap();
    assert_eq!((catalogue.before, catalogue.now), (1, 2));
    assert_eq!(
        catalogue.touched,
        [
            TouchedEntry::of("hedge-reeve-1", "Hedge-Reeve", 100, Some(105)),
            TouchedEntry::of("orchard-levy-1", "Orchard Levy", 70, None),
            TouchedEntry::of("furrow-hares-1", "Furrow Hares", 70, None),
            TouchedEntry::of("orchard-levy-2", "Orchard Levy", 60, None),
        ]
    );
    let told = found.told();
    assert_eq!(told[0], ("hedge-reeve-1", "repriced"));
    assert_eq!(told[2], ("furrow-hares-1", "gone"));

    let browser = stage.server.browser("Oskrel");
    let page = browser.get(&stage.week(2).page("list"));
    let text = page.with_status(200).text();
    for told in [
        "Hedge-Reeve: 100 → 105",
        "Furrow Hares: no longer offered as it was",
    ] {
        assert!(text.contains(told), "{told} is not in {text}");
    }
}

#[test]
fn what_is_no_longer_offered_need_not_return_and_all_the_rest_must() {
    let (stage, oskrel) = second_week_pinned_to_another_version();
    let own = stage.week(2).list_of(&oskrel);
    let unchanged = own.check(&List::demo("Oskrel", 1)).expect(200).report;
    assert_eq!(
        unchanged.codes(),
        [
            "list.unit-size",
            "list.unknown-option",
            "list.unknown-unit",
            "list.unknown-option"
        ],
        "last week's list as it was is not offered, but nothing of it is missing"
    );
    let rest = List::of(
        "bramblestile-steadings",
        [
            Entry::new("hedge-reeve-1", "hedge-reeve", 1).with(&["ram-mount", "thorn-crook"]),
            Entry::new("orchard-levy-1", "orchard-levy", 11),
            Entry::new("orchard-levy-2", "orchard-levy", 10),
        ],
    );
    let accepted = own.check(&rest).expect(200).report;
    assert_eq!((accepted.accepted, accepted.total), (true, 105 + 55 + 50));

    let without = rest.clone().without_last_entry();
    let refused = own.seal(&without).refused(422, "list-breaks-rules");
    let fault = refused.fault();
    assert_eq!(
        (fault.code.as_str(), &fault.limit, &fault.actual),
        ("list.carry-over", &json!(205), &json!(155)),
        "at last week's points: 100 for the reeve, 55 and 50 for what is offered of the levies"
    );
    assert_eq!(own.seal(&rest).expect(201).report.total, 210);
}

/// Oskrel's list of week 1 is opened; week 2 is announced, with a version in which the Hedge-Reeve's
/// mount is dearer, the Orchard Levy has no standard and no size above 11, and there are no hares.
fn second_week_pinned_to_another_version() -> (Stage, Player) {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.start();
    let list = List::demo("Oskrel", 1);
    stage.week(1).list_of(&oskrel).seal(&list).expect(201);
    stage.catalogue.import(&next_version()).expect(201);
    let pin = json!({ "catalogue_number": 2 });
    stage.week(1).update(&pin).refused(409, "season-fixed");
    stage.week(2).update(&pin).expect(204);
    stage.clock().show(DEADLINE);
    stage.week(1).open_lists().expect(204);
    stage.clock().show(SECOND_WEEK);
    (stage, oskrel)
}

fn next_version() -> Catalogue {
    let mut catalogue = Catalogue::of_the_demo();
    catalogue.remove_unit("furrow-hares");
    let levy = catalogue.unit("orchard-levy");
    levy.options.clear();
    levy.sizes.retain(|size| size.models <= 11);
    let reeve = catalogue.unit("hedge-reeve");
    let mut options = reeve.options.iter_mut();
    let mount = options.find(|option| option.key == "ram-mount").unwrap();
    mount.points = 30;
    catalogue
}
