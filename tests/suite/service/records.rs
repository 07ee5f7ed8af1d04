//! A player's record over the seasons of a club, as far as the player agrees.

use super::OpenSeason;
use crate::harness::{Answer, Club, Record};

/// Lets everybody read one's record, and says where.
fn agree(club: &Club) -> String {
    club.open_record().expect(200).address.unwrap()
}

fn read(open: &OpenSeason, address: &str) -> Answer<Record> {
    open.stage.visitor().record_at(address)
}

#[test]
fn nobodys_record_is_open_unless_they_agree_and_only_as_long() {
    let open = OpenSeason::start();
    let club = open.stage.club.by(&open.oskrel);
    let before = club.record_consent().with_status(200);
    assert_eq!(before.text(), r#"{"agreed":false}"#);

    let address = agree(&club);
    assert_eq!(agree(&club), address, "agreeing twice changes nothing");
    let record = read(&open, &address).expect(200);
    assert_eq!(record.places.len(), 1);
    assert_eq!(record.places[0].handle, "Oskrel");
    open.give_a_point();
    assert_eq!(read(&open, &address).expect(200).places[0].total, 1);
    let csv = read(&open, &format!("{address}.csv")).with_status(200);
    assert!(csv.text().contains(",Oskrel,"), "{}", csv.text());

    club.close_record().expect(204);
    club.close_record().with_status(404);
    read(&open, &address).refused(404, "not-found");
    assert_ne!(
        agree(&club),
        address,
        "what was withdrawn leads nowhere again"
    );
    read(&open, &address).refused(404, "not-found");
}

#[test]
fn a_record_tells_of_public_seasons_alone() {
    let open = OpenSeason::start();
    for (name, visibility) in [("Behind closed doors", "club"), ("Second light", "public")] {
        let mut body = open.stage.season_body();
        body.name(name);
        body.visibility(visibility);
        let season = open.stage.club.new_season(&body);
        let join = |handle, who| season.by(who).join(handle, "sodwether-moot", &["first"]);
        join("Oskrel the Old", &open.oskrel.actor).with_status(201);
        join("Wennable", &open.stage.owner).with_status(201);
        season.start().expect(200);
    }
    let address = agree(&open.stage.club.by(&open.oskrel));
    let record = read(&open, &address).expect(200);
    let [newer, older] = &record.places[..] else {
        panic!("two public seasons: {record:?}");
    };
    assert_eq!(
        (newer.name.as_str(), newer.handle.as_str()),
        ("Second light", "Oskrel the Old")
    );
    assert_eq!(older.handle, "Oskrel");
}

#[test]
fn whoever_leaves_the_club_takes_the_record_along() {
    let open = OpenSeason::start();
    let club = open.stage.club.by(&open.oskrel);
    let address = agree(&club);
    club.remove(&open.oskrel.actor).expect(204);
    read(&open, &address).refused(404, "not-found");
}

#[test]
fn the_record_of_a_minor_stays_within_the_club() {
    let open = OpenSeason::start();
    open.stage.make_a_minor(&open.oskrel);
    let club = open.stage.club.by(&open.oskrel);
    club.open_record().refused(403, "forbidden");
}
