use super::window::{Size, Window};
use crate::harness::{Stage, demo_list};

#[test]
fn the_organiser_reminds_whoever_has_no_list_and_nobody_else() {
    let stage = Stage::draft();
    let [oskrel, _corvanel] = ["Oskrel", "Corvanel"].map(|handle| stage.join(handle));
    stage.start();
    let seal = format!("{}/list/seal", stage.week(1));
    let list = demo_list("Oskrel", 1);
    oskrel.actor.post(&seal, &list).expect(201);
    let season = stage.season.strip_prefix("/api/v1").unwrap();
    let organiser = Window::of(&stage.server, "Wennable", Size::Laptop);
    organiser.go(&format!("{season}/board"));
    organiser.reads("Without a list: Corvanel");
    let chat = organiser.value("Ready for the club's chat");
    assert!(chat.contains("Mon 12 January 2026, 20:00"), "{chat}");
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

    let mine = format!("{season}/mine");
    let late = Window::of(&stage.server, "Corvanel", Size::Phone);
    late.go(&mine);
    late.reads("Your list is still missing.");
    late.look("mine-reminded");
    let early = Window::of(&stage.server, "Oskrel", Size::Phone);
    early.go(&mine);
    assert!(!early.text().contains("Reminder of"));
}
