use super::window::{Size, Window};
use crate::harness::{List, Stage};

#[test]
fn the_list_is_checked_while_it_is_changed_and_every_number_says_why() {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.start();
    let week = stage.week(1);
    let draft = week.list_of(&oskrel).draft(&List::demo("Oskrel", 1));
    draft.expect(200);
    let window = Window::of(&stage.server, "Oskrel", Size::Phone);
    window.go(&week.page("list"));
    let before = window.text();
    window.choose_last("Orchard Levy");
    window.reads("over the cap");
    assert!(!before.contains("over the cap"));
    window.unfold("How this adds up");
    window.look("list-live-check");
    window.resize(Size::Phone);
    window.press("Seal and hand in");
    window.reads("over the cap of 300");
    window.look("list-seal-refused");
}
