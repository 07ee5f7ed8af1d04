use super::window::{Size, Window};
use crate::harness::Stage;

#[test]
fn a_player_joins_writes_a_list_and_seals_it_on_a_phone() {
    let stage = Stage::draft();
    stage.start();
    stage.welcome("Oskrel");
    let season = &stage.season;
    let window = Window::of(&stage.server, "Oskrel", Size::Phone);
    window.look("home-member");
    window.go(&season.page(""));
    window.look("season-joining");
    window.choose("Faction", "Bramblestile Steadings");
    window.press("Join");
    window.reads("Write my list");
    window.follow("My week");
    window.look("mine-missing");
    window.follow("Write my list");
    window.reads("Add a first unit, or paste a list.");
    window.look("list-empty");
    window.choose("Add a unit", "Hedge-Reeve");
    window.press("Add");
    window.choose("Add a unit", "Threshers");
    window.press("Add");
    window.look("list-breach");
    window.resize(Size::Phone);
    window.follow("Paste a list");
    window.look("paste-empty");
    window.resize(Size::Phone);
    let list = "Bramblestile Steadings\n\
        Hedge-Reeve, thorn crook: 75\n\
        2x Orchard Levy, 10 models, scarecrow standrd\n\
        Stile Keepers 7 models\n\
        three geese\n";
    window.set("List as text", list);
    window.press("Read it");
    window.look("paste-read");
    window.resize(Size::Phone);
    window.press("Use this list");
    window.look("list-pasted");
    window.resize(Size::Phone);
    window.press("Seal and hand in");
    window.reads("Your list is sealed and handed in.");
    window.look("receipt");
    window.follow("My week");
    window.look("mine-sealed");
    window.tick("first: Tuesday, 13 January 2026 at 19:00");
    window.press("Save nights");
}
