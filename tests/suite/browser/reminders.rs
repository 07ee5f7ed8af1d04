use super::window::{Size, Window};
use crate::harness::{List, Stage};

#[test]
fn the_organiser_reminds_whoever_has_no_list_and_nobody_else() {
    let stage = Stage::draft();
    let [oskrel, _corvanel] = ["Oskrel", "Corvanel"].map(|handle| stage.join(handle));
    stage.start();
    let sealed = stage
        .week(1)
        .list_of(&oskrel)
        .seal(&List::demo("Oskrel", 1));
    sealed.expect(201);
    let season = &stage.season;
    let organiser = Window::of(&stage.server, "Wennable", Size::Laptop);
    organiser.go(&season.page("board"));
    organiser.reads("Without a list: Corvanel");
    let chat = organiser.value("Ready for the club's chat");
    assert!(chat.contains("Monday, 12 January 2026 at 20:00"), "{chat}");
    for handle in ["Oskrel", "Corvanel"] {
        assert!(
            !chat.contains(handle),
            "the chat does not learn who has handed in"
        );
    }
    organiser.look("board-remind");
    organiser.resize(Size::Laptop);
    organiser.press("Remind them");
    organiser.reads("Last reminded");
    organiser.look("board-reminded");

    let mine = season.page("mine");
    let late = Window::of(&stage.server, "Corvanel", Size::Phone);
    late.go(&mine);
    late.reads("Your list is still missing.");
    late.look("mine-reminded");
    let early = Window::of(&stage.server, "Oskrel", Size::Phone);
    early.go(&mine);
    assert!(!early.text().contains("Reminder of"));
}
