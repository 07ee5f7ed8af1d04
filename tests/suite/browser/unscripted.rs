//! Everything works without a script; scripts only make it quicker.

use serde_json::json;

use super::window::{Size, Window};
use crate::harness::Stage;
use crate::stories::results::week::FirstWeek;

#[test]
fn a_player_joins_writes_a_list_and_seals_it_without_a_script() {
    let stage = Stage::draft();
    stage.start();
    stage.welcome("Oskrel");
    let window = Window::open(&stage.server, Size::Phone);
    window.without_scripts();
    window.sign_in("Oskrel");
    window.go(&stage.season.page(""));
    window.choose("Faction", "Bramblestile Steadings");
    window.press("Join");
    window.follow("My week");
    window.follow("Write my list");
    window.choose("Add a unit", "Hedge-Reeve");
    window.press("Add");
    window.reads("Hedge-Reeve");
    window.choose("Add a unit", "Orchard Levy");
    window.press("Add");
    window.press("Save and check");
    window.reads("This list is legal for the week.");
    window.press("Seal and hand in");
    window.reads("Your list is sealed and handed in.");
    assert_eq!(
        window.ask("return document.querySelectorAll('[data-left]').length"),
        json!(0),
        "no script ran"
    );
}

#[test]
fn a_result_is_reported_and_confirmed_and_the_wall_is_read_without_a_script() {
    let week = FirstWeek::paired(&["Oskrel", "Corvanel"]);
    let season = &week.stage.season;
    let reporter = Window::open(&week.stage.server, Size::Phone);
    reporter.without_scripts();
    reporter.sign_in("Oskrel");
    reporter.go(&season.page("mine"));
    reporter.follow("Report the result");
    reporter.type_into_all("Oskrel", "4");
    reporter.press("Send the report");
    reporter.reads("reported");
    let game = reporter.path();
    let other = Window::open(&week.stage.server, Size::Phone);
    other.without_scripts();
    other.sign_in("Corvanel");
    other.go(&game);
    other.press("Confirm the result");
    other.reads("confirmed");
    other.go(&season.page("wall"));
    other.reads("Standings after week 1");
    other.reads("Pairings, Week 1");
}
