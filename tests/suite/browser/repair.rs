use super::window::{Size, Window};
use crate::stories::results::week::FirstWeek;

#[test]
fn a_published_round_is_repaired_at_noon_and_everybody_reads_what_changed() {
    let week = FirstWeek::sealed(&["Oskrel", "Corvanel", "Pellamoor", "Braewick"]);
    week.pair();
    let page = week.stage.week(1);
    let organiser = Window::of(&week.stage.server, "Wennable", Size::Phone);
    organiser.go(&page.page("pairing"));
    organiser.follow("Repair the round");
    organiser.look("repair-empty");
    organiser.resize(Size::Phone);
    organiser.tick("Braewick");
    organiser.fill("Reason", "One player less tonight");
    organiser.press("Show what would change");
    organiser.reads("What would change");
    organiser.reads("Braewick is not in the round");
    organiser.look("repair-proposed");
    organiser.resize(Size::Phone);
    organiser.press("Publish the repair");
    organiser.reads("version 2");
    organiser.reads("One player less tonight");
    organiser.look("repair-published");
}
