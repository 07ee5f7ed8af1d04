use serde_json::json;
use tallyhost::demo::data;

use super::window::{Size, Window};
use crate::harness::{Actor, Database, Server, Stage, demo_list};

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
    window.tick("Everybody meets everybody");
    window.look("setup-4");
    window.press("Next");
    window.reads("Everybody meets everybody once, by the Berger tables");
    window.press("Back");
    window.tick("Equal scores meet");
    window.press("Next");
    window.reads("In each round equal scores meet");
    window.reads("Tue 20 January 2026, 20:00");
    window.reads("No single unit");
    window.look("setup-5");
    window.press("Save as a draft");
    window.reads("This season is being set up.");
    window.look("season-draft");
    let season = window.path();
    window.press("Start the season");
    window.reads("A season starts with two players at least, not with 0.");
    let owner = server.greet("Wennable");
    let join = |handle: &str, actor: &Actor| {
        let place = json!({ "handle": handle, "faction": "sodwether-moot", "nights": ["thu"] });
        let joined = actor.post(&format!("/api/v1{season}/players"), &place);
        joined.expect(201);
    };
    join("Wennable", &owner);
    let (club, _) = season.split_once("/seasons").unwrap();
    let body = json!({ "role": "player", "uses": 1, "days": 1 });
    let invitations = format!("/api/v1{club}/invitations");
    let code = owner.post(&invitations, &body).expect(200)["code"].clone();
    let oskrel = server.register("Oskrel");
    let accept = oskrel.post("/api/v1/invitations/accept", &json!({ "code": code }));
    accept.expect(200);
    join("Oskrel", &oskrel);
    window.go(&season);
    window.press("Start the season");
    window.reads("Fingerprint of the secret draw");
}

#[test]
fn the_board_shows_who_has_handed_in_and_nothing_of_any_list() {
    let stage = Stage::draft();
    let [oskrel, corvanel, _lumeth] =
        ["Oskrel", "Corvanel", "Lumeth"].map(|handle| stage.join(handle));
    stage.start();
    let list = demo_list("Oskrel", 1);
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

#[test]
fn a_week_is_paired_played_reported_confirmed_and_closed_by_hand() {
    let stage = Stage::draft();
    let handles = ["Oskrel", "Corvanel", "Pellamoor", "Braewick"];
    let players = handles.map(|handle| stage.join(handle));
    let sheet = json!({ "sheet": data::sheets().unwrap()[0] });
    stage
        .wennable
        .put(&format!("{}/scenario", stage.week(1)), &sheet)
        .expect(204);
    stage.start();
    for (handle, player) in handles.iter().zip(&players) {
        let list = demo_list(handle, 1);
        let seal = format!("{}/list/seal", stage.week(1));
        player.actor.post(&seal, &list).expect(201);
    }
    stage.clock().show("2026-01-12T21:00:00+01:00");
    let open = format!("{}/lists/open", stage.week(1));
    stage.wennable.post(&open, &json!({})).expect(204);
    let week = stage.week(1);
    let week = week.strip_prefix("/api/v1").unwrap();

    let organiser = Window::of(&stage.server, "Wennable", Size::Laptop);
    organiser.go(&format!("{week}/pairing"));
    organiser.press("Propose a round");
    organiser.reads("Publish the round");
    organiser.look("pairing-proposed");
    organiser.press("Publish the round");
    organiser.reads("no result yet");
    organiser.look("pairing-published");

    stage.clock().show("2026-01-13T22:00:00+01:00");
    let reporter = Window::of(&stage.server, "Oskrel", Size::Phone);
    reporter.go(week);
    reporter.look("week-paired");
    reporter.go(&format!("{week}/print"));
    reporter.look("print");
    let season = stage.season.strip_prefix("/api/v1").unwrap();
    reporter.go(&format!("{season}/painting"));
    reporter.look("painting-empty");
    reporter.resize(Size::Phone);
    reporter.fill("bare", "0");
    reporter.fill("finished", "1");
    reporter.press("Claim");
    reporter.reads("to be checked");
    reporter.look("painting-claimed");
    reporter.resize(Size::Phone);
    reporter.go(&format!(
        "{}/mine",
        stage.season.strip_prefix("/api/v1").unwrap()
    ));
    reporter.look("mine-paired");
    reporter.follow("Report the result");
    reporter.look("slip-empty");
    reporter.resize(Size::Phone);
    reporter.type_into_all("Oskrel", "4");
    reporter.press("Send the report");
    reporter.reads("reported");
    reporter.look("slip-reported");
    let game = reporter.path();
    for handle in &handles[1..] {
        let other = Window::of(&stage.server, handle, Size::Phone);
        other.go(&game);
        if other.text().contains("Is this right?") {
            other.look("slip-to-confirm");
            other.press("Confirm the result");
            other.reads("confirmed");
            other.look("slip-confirmed");
        }
    }
    organiser.go(&format!("{week}/pairing"));
    organiser.reads("1 without a confirmed result");
    organiser.look("results-desk");
    organiser.follow("Overview");
    organiser.follow("Standings");
    organiser.reads("Standings after week 1");
    organiser.look("standings");
    organiser.follow("Oskrel");
    organiser.reads("The score is the sum of these lines");
    organiser.look("ledger");
}
