use tallyhost::demo::data;

use super::window::{Size, Window};
use crate::harness::Stage;

#[test]
fn an_organiser_writes_a_scenario_sheet_and_players_see_it_once_it_is_revealed() {
    let stage = Stage::draft();
    stage.join("Oskrel");
    stage.start();
    let week = stage.week(1);
    let organiser = Window::of(&stage.server, "Wennable", Size::Laptop);
    organiser.go(&week.page(""));
    organiser.follow("Scenario sheet");
    organiser.look("sheet-empty");
    organiser.resize(Size::Laptop);
    organiser.fill(
        "In one sentence",
        "Whoever stands at the ford takes the toll.",
    );
    organiser.fill("What is counted (1)", "Turns holding the ford");
    organiser.choose("All of it is revealed", "when the lists are opened");
    organiser.press("Save");
    organiser.reads("Please look at this again");
    for (label, kept) in [
        ("What is counted (1)", "Turns holding the ford"),
        ("All of it is revealed", "lists_opened"),
    ] {
        assert_eq!(organiser.value(label), kept, "what was typed is kept");
    }
    organiser.look("sheet-refused");
    organiser.resize(Size::Laptop);
    organiser.fill("Title", "Toll at the Ford");
    organiser.fill(
        "Briefing",
        "Deploy along your own edge. The river halves every move.",
    );
    organiser.fill("Points for each", "2");
    organiser.fill("At most", "6");
    organiser.tick("Only one side can hold each");
    organiser.press("Save");
    organiser.reads("Toll at the Ford");
    organiser.reads("players do not know it yet");
    organiser.look("sheet-saved");
    organiser.follow("Scenario sheet");
    assert_eq!(organiser.value("Points for each"), "2");

    organiser.unfold("The whole sheet as data");
    let whole = serde_json::to_string_pretty(&data::sheets().unwrap()[0]).unwrap();
    organiser.set("The sheet as JSON", &whole);
    organiser.choose("All of it is revealed", "when the lists are opened");
    organiser.press("Save");
    organiser.reads("Points of the opposing army destroyed");

    let player = Window::of(&stage.server, "Oskrel", Size::Phone);
    player.go(&week.page(""));
    player.reads("So far only the title is known.");
    assert!(!player.text().contains("Whoever stands at the ford"));
    stage.clock().show("2026-01-12T21:00:00+01:00");
    organiser.go(&stage.season.page("board"));
    organiser.press_if_there("Open all lists now");
    player.go(&week.page(""));
    player.reads("Whoever stands at the ford");
}
