use super::window::{Size, Window};
use crate::harness::{Stage, demo_list};

#[test]
fn the_list_is_checked_while_it_is_changed_and_every_number_says_why() {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.start();
    let draft = format!("{}/list/draft", stage.week(1));
    oskrel
        .actor
        .put(&draft, &demo_list("Oskrel", 1))
        .expect(200);
    let week = stage.week(1);
    let week = week.strip_prefix("/api/v1").unwrap();
    let window = Window::of(&stage.server, "Oskrel", Size::Phone);
    window.go(&format!("{week}/list"));
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
