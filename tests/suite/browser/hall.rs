//! What hangs on the wall of the hall, and what is printed for it.

use serde_json::json;

use super::window::{Size, Window};
use crate::harness::{Server, Stage};
use crate::stories::results::week::{FirstWeek, played};

const FOUR: [&str; 4] = ["Oskrel", "Corvanel", "Pellamoor", "Lumeth"];

#[test]
fn the_wall_turns_by_itself_and_shows_what_is_reported_elsewhere() {
    let week = FirstWeek::paired(&FOUR);
    let window = Window::open(&week.stage.server, Size::Laptop);
    let season = &week.stage.season;
    window.go(&season.page("wall"));
    window.look("wall-standings");
    window.resize(Size::Laptop);
    window.reads("Standings after week 1");
    window.reads("Pairings, Week 1");
    window.push("Pause");
    window.look("wall-pairings");
    let [first, second] = week.sides();
    week.report(first, "one", &played((4, 144), (2, 108)))
        .expect(200);
    window.reads("reported");
    week.game().by(second).confirm().expect(200);
    window.reads("confirmed");
}

#[test]
fn the_wall_comes_back_by_itself_after_the_server_was_away() {
    let FirstWeek { stage, players } = FirstWeek::paired(&["Oskrel", "Corvanel"]);
    let window = Window::open(&stage.server, Size::Laptop);
    window.go(&stage.season.page("wall"));
    window.reads("Pairings, Week 1");
    window.push("Pause");
    let Stage {
        server,
        database,
        season,
        ..
    } = stage;
    let address = server.address().to_owned();
    drop(server);
    let server = Server::start_at(&address, &database);
    let season = season.by(server.welcome(&players[0].actor));
    let game = season.games().expect(200).remove(0);
    let result = played((4, 144), (2, 108));
    season.game(&game.id).report("one", &result).expect(200);
    window.reads("reported");
}

#[test]
fn the_wall_moves_nothing_for_whoever_asks_for_less_motion() {
    let week = FirstWeek::paired(&FOUR);
    let window = Window::open(&week.stage.server, Size::Laptop);
    let season = &week.stage.season;
    let moved = "return getComputedStyle(document.querySelector('[data-slide]')).animationName";
    for (wish, animation) in [("no-preference", "arrive"), ("reduce", "none")] {
        window.devtools(
            "Emulation.setEmulatedMedia",
            json!({ "features": [{ "name": "prefers-reduced-motion", "value": wish }] }),
        );
        window.go(&season.page("wall"));
        assert_eq!(window.ask(moved), animation);
    }
}

#[test]
fn paper_leads_to_the_address_that_the_settings_name() {
    let week = FirstWeek::paired(&FOUR);
    let stage = &week.stage;
    let server = Server::launch(|command| {
        command
            .env("DATABASE_URL", stage.database.url())
            .env("TALLYHOST_PUBLIC_URL", "https://league.example/")
    });
    let visitor = server.visitor();
    let path = stage.week(1);
    let sheet = visitor.get(&path.page("print")).with_status(200);
    let opens = format!("aria-label=\"https://league.example{}\"", path.page(""));
    assert!(sheet.text().contains(&opens));
    let cards = visitor.get(&path.page("cards")).with_status(200);
    assert_eq!(
        cards
            .text()
            .matches("aria-label=\"https://league.example/clubs/")
            .count(),
        2
    );
}

#[test]
fn at_the_end_everybody_gets_a_certificate_of_one_page() {
    let week = FirstWeek::ended();
    let window = Window::open(&week.stage.server, Size::Phone);
    let season = &week.stage.season;
    window.go(&season.page("standings"));
    window.follow("Oskrel");
    window.follow("Certificate");
    window.reads("took part in the season");
    window.look("certificate");
    assert_eq!(window.pages_printed("certificate"), 1);
    window.go(&season.page("statistics"));
    window.reads("Most games");
    window.look("statistics-ended");
}
