//! The main jobs by the keyboard alone.

use super::window::{Size, Window};
use crate::stories::results::week::FirstWeek;

#[test]
fn an_onlooker_gets_from_the_club_to_a_ledger_by_the_keyboard() {
    let week = FirstWeek::paired(&["Oskrel", "Corvanel"]);
    let window = Window::open(&week.stage.server, Size::Laptop);
    window.go(&week.stage.club.page(""));
    window.key("Tab");
    assert_eq!(
        window.ask("return document.activeElement.getAttribute('href')"),
        "#main",
        "the first stop leads past the menus"
    );
    window.enter("Autumn at the ford");
    window.enter("Standings");
    window.enter("Oskrel");
    window.reads("The score is the sum of these lines");
}

#[test]
fn a_player_signs_in_and_reports_a_result_by_the_keyboard() {
    let week = FirstWeek::paired(&["Oskrel", "Corvanel"]);
    let season = &week.stage.season;
    let window = Window::open(&week.stage.server, Size::Phone);
    window.go(&season.page("mine"));
    window.tab_to("E-mail address");
    window.type_in("oskrel@example.org");
    window.tab_to("Password");
    window.type_in("six lanterns on the ford");
    window.enter("Sign in");
    window.enter("Report the result");
    window.tab_to("Oskrel");
    window.type_in("4");
    window.enter("Send the report");
    window.reads("reported");
}
