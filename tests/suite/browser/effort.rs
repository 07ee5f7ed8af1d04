//! How much work the two commonest jobs are: counted and told, not judged.

use std::io::Write;

use tallyhost::demo::data;

use super::window::{Effort, Size, Window};
use crate::harness::{Database, List, Player, Server};

const HANDLES: [&str; 4] = ["Oskrel", "Corvanel", "Pellamoor", "Braewick"];

/// Past the capture of the test runner, so that it stands in the output of a test that passes.
fn tell(job: &str, effort: &Effort) {
    let Effort {
        pages,
        inputs,
        seconds,
    } = effort;
    let line =
        format!("effort: {job}: {pages} pages, {inputs} inputs, {seconds:.1} s of a browser\n");
    std::io::stderr().write_all(line.as_bytes()).unwrap();
}

#[test]
fn a_season_is_set_up_from_nothing_to_its_first_round_and_a_result_reported() {
    let database = Database::create();
    let server = Server::start(&database);
    let organiser = Window::open(&server, Size::Phone);
    organiser.begin();
    organiser.go("/register");
    organiser.fill("Name that clubs see", "Wennable");
    organiser.fill("E-mail address", "wennable@example.org");
    organiser.fill("Password", "six lanterns on the ford");
    organiser.press("Register");
    organiser.sign_in("Wennable");
    organiser.fill("Name of the club", "Lamplit Ford gaming circle");
    organiser.fill("Short name for addresses", "lamplit-ford");
    organiser.press("Found a club");
    organiser.reads("Lamplit Ford gaming circle");
    organiser.follow("Catalogues");
    organiser.fill("Name of the catalogue", "Quernlight Reckoning");
    let catalogue = serde_json::to_string(&data::catalogue().unwrap()).unwrap();
    organiser.set("Catalogue as CSV or JSON", &catalogue);
    organiser.press("Import");
    organiser.follow("Lamplit Ford gaming circle");
    organiser.press("Make a code");
    let link = organiser.value("The same as a link");
    organiser.follow("Set up a season");
    organiser.fill("Name of the season", "Autumn at the ford");
    organiser.press("Next");
    organiser.set("First day of week 1", "2026-01-19");
    organiser.fill("First cap", "300");
    for _ in 0..3 {
        organiser.press("Next");
    }
    organiser.press("Save as a draft");
    organiser.reads("This season is being set up.");
    let season = organiser.path();
    let code = link.rsplit('=').next().unwrap();
    let people = data::people().unwrap();
    let players = HANDLES.map(|handle| {
        let actor = server.register(handle);
        actor.accept(code).expect(200);
        let person = people.iter().find(|person| person.handle == handle);
        let season = actor.season_of_page(&season);
        let joined = season.join(handle, &person.unwrap().faction, &["thu"]);
        let id = joined.expect(201).id;
        Player { actor, id }
    });
    let season = players[0].actor.season_of_page(&season);
    organiser.press("Start the season");
    organiser.follow("1");
    organiser.follow("Scenario sheet");
    organiser.fill("Title", "Toll at the Ford");
    organiser.fill(
        "In one sentence",
        "Whoever stands at the ford takes the toll.",
    );
    organiser.fill(
        "Briefing",
        "Deploy along your own edge. The river halves every move.",
    );
    organiser.fill("What is counted (1)", "Turns holding the ford");
    organiser.fill("Points for each", "2");
    organiser.fill("At most", "6");
    organiser.press("Save");

    database.clock().show("2026-01-19T09:00:00+01:00");
    for (handle, player) in HANDLES.iter().zip(&players) {
        let list = List::demo(handle, 1);
        season.week(1).list_of(player).seal(&list).expect(201);
    }
    database.clock().show("2026-01-20T21:00:00+01:00");
    organiser.go(&season.page("board"));
    organiser.press_if_there("Open all lists now");
    organiser.follow("Pair the week");
    organiser.press("Propose a round");
    organiser.press("Publish the round");
    organiser.reads("no result yet");
    tell(
        "season from nothing to a published first round",
        &organiser.effort(),
    );

    database.clock().show("2026-01-22T22:00:00+01:00");
    let player = Window::of(&server, "Oskrel", Size::Phone);
    player.begin();
    player.go(&season.page("mine"));
    player.follow("Report the result");
    player.type_into_all("Oskrel", "4");
    player.press("Send the report");
    player.reads("reported");
    tell("result reported from my week", &player.effort());
}
