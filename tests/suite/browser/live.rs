//! Pages that bring themselves up to date while somebody reads or types.

use serde_json::json;

use super::window::{Size, Window};
use crate::harness::Player;
use crate::stories::results::week::{FirstWeek, played};

const PAIR: [&str; 2] = ["Oskrel", "Corvanel"];

fn handle(week: &FirstWeek, player: &Player) -> &'static str {
    let place = week.players.iter().position(|known| known.id == player.id);
    PAIR[place.unwrap()]
}

/// Whether it is still the page that was opened, with no other loaded since.
fn is_the_same_page(window: &Window) -> bool {
    window.ask("return window.opened === true") == json!(true)
}

#[test]
fn a_week_follows_its_games_and_leaves_the_readers_place() {
    let week = FirstWeek::paired(&PAIR);
    let window = Window::open(&week.stage.server, Size::Phone);
    window.go(&week.week().page(""));
    window.ask("window.opened = true");
    window.unfold("Corvanel");
    window.ask("document.querySelector('.scroll a').focus(); scrollTo(0, 300)");
    let place = "const focus = document.activeElement.getAttribute('href');
        return [scrollY, focus, document.querySelectorAll('details[open]').length]";
    let before = window.ask(place);
    let [first, second] = week.sides();
    week.report(first, "one", &played((4, 144), (2, 108)))
        .expect(200);
    window.reads("reported");
    week.game().by(second).confirm().expect(200);
    window.reads("confirmed");
    assert_eq!(window.ask(place), before);
    assert!(is_the_same_page(&window));
}

#[test]
fn a_game_asks_the_opponent_as_soon_as_it_is_reported_and_takes_nothing_that_is_typed() {
    let week = FirstWeek::paired(&PAIR);
    let game = week.game().page("");
    let [first, second] = week.sides();
    let [own, other] = [handle(&week, first), handle(&week, second)];
    let typing = Window::of(&week.stage.server, other, Size::Phone);
    typing.go(&game);
    typing.type_into_all(own, "2");
    typing.ask("document.activeElement.blur()");
    let waiting = Window::of(&week.stage.server, other, Size::Laptop);
    waiting.go(&game);
    waiting.ask("window.opened = true");
    week.report(first, "one", &played((4, 144), (2, 108)))
        .expect(200);

    waiting.reads("Is this right?");
    assert!(is_the_same_page(&waiting));
    typing.reads("What you typed is still there.");
    assert!(!typing.text().contains("Is this right?"));
    assert_eq!(typing.value(own), "2");
    typing.look("slip-changed-meanwhile");

    waiting.press("Confirm the result");
    waiting.reads("confirmed");
    typing.reads("confirmed");
    assert_eq!(typing.value(own), "2");
}
