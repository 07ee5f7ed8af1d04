use serde_json::json;

use super::window::{Size, Window};
use crate::harness::Stage;

#[test]
fn a_player_lets_everybody_read_their_record_and_takes_it_back() {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.start();
    let club = &stage.club;
    let season = &stage.season;
    let window = Window::of(&stage.server, "Oskrel", Size::Phone);
    window.go(&season.player(&oskrel.id).page(""));
    window.follow_in_main("My record over the seasons");
    window.reads("Nobody reads it unless you agree.");
    window.look("record-consent");
    window.resize(Size::Phone);
    window.press("I agree that everybody may read it");
    window.reads("You agreed on");
    window.look("record-consent-given");

    let consent = club.by(&oskrel).record_consent().expect(200);
    let address = consent.address.unwrap();
    let link = "return [...document.links].find((it) => it.textContent.includes('JSON')).pathname";
    assert_eq!(window.ask(link), json!(address));
    let onlooker = stage.server.visitor();
    let record = onlooker.record_at(&address).expect(200);
    assert_eq!(record.places[0].handle, "Oskrel");

    window.resize(Size::Phone);
    window.go(&club.page(""));
    window.follow_in_main("My record over the seasons");
    window.press("Take it back");
    window.reads("Nobody reads it unless you agree.");
    onlooker.record_at(&address).refused(404, "not-found");
}

#[test]
fn a_minor_is_told_that_the_record_stays_within_the_club() {
    let stage = Stage::draft();
    let oskrel = stage.join("Oskrel");
    stage.make_a_minor(&oskrel);
    let club = &stage.club;
    let window = Window::of(&stage.server, "Oskrel", Size::Phone);
    window.go(&club.page("record-consent"));
    window.reads("The record of a minor stays within the club.");
    assert!(!window.text().contains("I agree"));
    window.look("record-consent-minor");
}
