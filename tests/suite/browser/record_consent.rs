use serde_json::json;

use super::window::{Size, Window};
use crate::harness::Stage;

#[test]
fn a_player_lets_everybody_read_their_record_and_takes_it_back() {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.start();
    let club = stage.club.strip_prefix("/api/v1").unwrap();
    let season = stage.season.strip_prefix("/api/v1").unwrap();
    let window = Window::of(&stage.server, "Oskrel", Size::Phone);
    window.go(&format!("{season}/players/{}", oskrel.id));
    window.follow_in_main("My record over the seasons");
    window.reads("Nobody reads it unless you agree.");
    window.look("record-consent");
    window.resize(Size::Phone);
    window.press("I agree that everybody may read it");
    window.reads("You agreed on");
    window.look("record-consent-given");

    let consent = format!("{}/record-consent", stage.club);
    let address = oskrel.actor.get(&consent).expect(200)["address"].clone();
    let address = address.as_str().unwrap();
    let link = "return [...document.links].find((it) => it.textContent.includes('JSON')).pathname";
    assert_eq!(window.ask(link), json!(address));
    let onlooker = stage.server.visitor();
    let record = onlooker.get(address).expect(200);
    assert_eq!(record["places"][0]["handle"], "Oskrel");

    window.resize(Size::Phone);
    window.go(club);
    window.follow_in_main("My record over the seasons");
    window.press("Take it back");
    window.reads("Nobody reads it unless you agree.");
    onlooker.get(address).refused(404, "not-found");
}

#[test]
fn a_minor_is_told_that_the_record_stays_within_the_club() {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    let account = oskrel.actor.get("/api/v1/accounts/me").expect(200)["id"].clone();
    stage.database.run(&format!(
        "UPDATE accounts SET minor = true, guardian_consent = true WHERE account_id = '{}'",
        account.as_str().unwrap()
    ));
    let club = stage.club.strip_prefix("/api/v1").unwrap();
    let window = Window::of(&stage.server, "Oskrel", Size::Phone);
    window.go(&format!("{club}/record-consent"));
    window.reads("The record of a minor stays within the club.");
    assert!(!window.text().contains("I agree"));
    window.look("record-consent-minor");
}
