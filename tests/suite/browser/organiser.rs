use tallyhost::demo::data;

use super::window::{Size, Window};
use crate::harness::{Database, Server, Stage};

#[test]
fn an_organiser_sets_up_a_club_and_a_season_by_hand() {
    let database = Database::create();
    let server = Server::start(&database);
    let window = Window::open(&server, Size::Phone);
    window.go("/");
    window.look("home-signed-out");
    window.go("/register");
    window.look("register");
    window.fill("Name that clubs see", "Wennable");
    window.fill("E-mail address", "wennable@example.org");
    window.fill("Password", "six lanterns on the ford");
    window.press("Register");
    window.reads("You can sign in now.");
    window.look("sign-in");
    window.sign_in("Wennable");
    window.look("home-empty");
    window.fill("Name of the club", "Lamplit Ford gaming circle");
    window.fill("Short name for addresses", "lamplit-ford");
    window.press("Found a club");
    window.reads("Lamplit Ford gaming circle");
    window.look("club-new");

    window.follow("Catalogues");
    window.fill("Name of the catalogue", "Quernlight Reckoning");
    let catalogue = serde_json::to_string(&data::catalogue().unwrap()).unwrap();
    window.set("Catalogue as CSV or JSON", &catalogue);
    window.press("Import");
    window.reads("versions: 1");
    window.look("catalogues");
    window.follow("Lamplit Ford gaming circle");

    window.follow("Set up a season");
    window.fill("Name of the season", "Autumn at the ford");
    window.look("setup-1");
    window.press("Next");
    window.set("First day of week 1", "2026-01-19");
    window.look("setup-2");
    window.press("Next");
    window.look("setup-3");
    window.press("Next");
    window.fill(
        "Largest share of the cap for one unit, in percent (empty: no limit)",
        "40",
    );
    window.look("setup-4");
    window.press("Next");
    window.reads("Tue 20 January 2026, 20:00");
    window.reads("No single unit");
    window.look("setup-5");
    window.press("Save as a draft");
    window.reads("This season is being set up.");
    window.look("season-draft");
    window.press("Start the season");
    window.reads("Fingerprint of the secret draw");
}

#[test]
fn the_board_shows_who_has_handed_in_and_nothing_of_any_list() {
    let stage = Stage::draft();
    let [oskrel, corvanel, _lumeth] =
        ["Oskrel", "Corvanel", "Lumeth"].map(|handle| stage.join(handle));
    stage.start();
    let list = crate::harness::demo_list("Oskrel", 1);
    oskrel
        .actor
        .post(&format!("{}/list/seal", stage.week(1)), &list)
        .expect(201);
    corvanel
        .actor
        .put(&format!("{}/list/draft", stage.week(1)), &list)
        .expect(200);
    let window = Window::of(&stage.server, "Wennable", Size::Laptop);
    let season = stage.season.strip_prefix("/api/v1").unwrap();
    window.go(&format!("{season}/board"));
    window.reads("1 / 3 sealed");
    window.look("board");
    window.unfold("Leave to hand in late");
    window.choose("For", "Lumeth");
    window.fill("Reason", "Power cut in the whole street");
    window.press("Give leave");
}
