use serde_json::json;
use tallyhost::demo::data;

use super::window::{Size, Window};
use crate::harness::{Actor, Database, List, Server, Stage};

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
    window.reads("Tuesday, 20 January 2026 at 20:00");
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
        let season = actor.season_of_page(&season);
        let joined = season.join(handle, "sodwether-moot", &["thu"]);
        joined.expect(201);
    };
    join("Wennable", &owner);
    let club = owner.season_of_page(&season).club();
    let code = club.invite("player", 1, 1).expect(200).code;
    let oskrel = server.register("Oskrel");
    oskrel.accept(&code).expect(200);
    join("Oskrel", &oskrel);
    window.go(&season);
    window.press("Start the season");
    window.reads("Fingerprint of the secret draw");
}

#[test]
fn the_board_shows_who_has_handed_in_and_nothing_of_any_list() {
    let stage = Stage::draft();
    let [oskrel, corvanel, lumeth] =
        ["Oskrel", "Corvanel", "Lumeth"].map(|handle| stage.join(handle));
    stage.start();
    let list = List::demo("Oskrel", 1);
    let week = stage.week(1);
    week.list_of(&oskrel).seal(&list).expect(201);
    week.list_of(&corvanel).draft(&list).expect(200);
    let window = Window::of(&stage.server, "Wennable", Size::Laptop);
    let season = &stage.season;
    window.go(&season.page("board"));
    window.reads("1 / 3 sealed");
    window.look("board");
    window.unfold("Late list");
    window.choose("For", "Lumeth");
    window.fill("Reason", "Power cut in the whole street");
    window.press("Allow a late list");
    window.go(&season.page("trail"));
    window.reads("Late list allowed");
    window.reads("Power cut in the whole street");
    stage.clock().show("2026-01-12T21:30:00+01:00");
    let late = week.list_of(&lumeth).seal(&List::demo("Lumeth", 1));
    assert_eq!(late.expect(201).late_minutes, Some(30));
}

#[test]
fn a_week_is_paired_played_reported_confirmed_and_closed_by_hand() {
    let stage = Stage::draft();
    let handles = ["Oskrel", "Corvanel", "Pellamoor", "Braewick"];
    let players = handles.map(|handle| stage.join(handle));
    let sheet = json!({ "sheet": data::sheets().unwrap()[0] });
    stage.week(1).set_scenario(&sheet).expect(204);
    stage.start();
    for (handle, player) in handles.iter().zip(&players) {
        let list = List::demo(handle, 1);
        stage.week(1).list_of(player).seal(&list).expect(201);
    }
    stage.clock().show("2026-01-12T21:00:00+01:00");
    stage.week(1).open_lists().expect(204);
    let week = stage.week(1);

    let organiser = Window::of(&stage.server, "Wennable", Size::Laptop);
    organiser.go(&week.page("pairing"));
    organiser.press("Propose a round");
    organiser.reads("Publish the round");
    organiser.look("pairing-proposed");
    organiser.press("Publish the round");
    organiser.reads("no result yet");
    organiser.look("pairing-published");

    stage.clock().show("2026-01-13T22:00:00+01:00");
    let reporter = Window::of(&stage.server, "Oskrel", Size::Phone);
    reporter.go(&week.page(""));
    reporter.look("week-paired");
    reporter.go(&week.page("print"));
    reporter.look("print");
    let season = &stage.season;
    reporter.go(&season.page("painting"));
    reporter.look("painting-empty");
    reporter.resize(Size::Phone);
    reporter.fill("bare", "0");
    reporter.fill("finished", "1");
    reporter.press("Claim");
    reporter.reads("to be checked");
    reporter.look("painting-claimed");
    reporter.resize(Size::Phone);
    reporter.go(&stage.season.page("mine"));
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
    organiser.go(&week.page("pairing"));
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
