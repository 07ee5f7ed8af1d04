//! The directory of public seasons.

use super::ask_with;
use crate::harness::{Answer, Directory, Season, Stage};

/// A draft, a season of the club, and so many public ones that are started one after the other.
fn with_seasons(names: &[&str]) -> Stage {
    let stage = Stage::draft();
    let players = [
        ("Wennable", stage.owner.clone()),
        ("Oskrel", stage.welcome("Oskrel")),
    ];
    let create = |name: &str, visibility: &str| {
        let mut body = stage.season_body();
        body.name(name);
        body.visibility(visibility);
        stage.club.new_season(&body)
    };
    let start = |season: Season| {
        for (handle, player) in &players {
            let joined = season.by(player).join(handle, "sodwether-moot", &["first"]);
            joined.with_status(201);
        }
        season.start().expect(200);
    };
    start(create("Behind closed doors", "club"));
    for name in names {
        stage.clock().advance(chrono::Duration::seconds(1));
        start(create(name, "public"));
    }
    stage
}

fn read(stage: &Stage, query: &str) -> Answer<Directory> {
    stage.visitor().directory(query)
}

#[test]
fn a_search_that_no_name_can_hold_is_refused() {
    let stage = with_seasons(&[]);
    read(&stage, "?search=%00").with_status(400);
    read(&stage, "?search=a%0Ab").with_status(400);
}

#[test]
fn the_directory_lists_what_everybody_may_see_the_newest_first_page_by_page() {
    let stage = with_seasons(&["First light", "Second light", "Third light"]);
    let visitor = stage.visitor();
    let all = read(&stage, "").expect(200);
    assert_eq!(all.names(), ["Third light", "Second light", "First light"]);
    assert_eq!(all.next, None);
    let newest = visitor.public_season_at(&all.seasons[0].address);
    assert_eq!(newest.standings().expect(200).season, "Third light");

    let first = read(&stage, "?limit=2").with_status(200);
    assert_eq!(first.view().names(), ["Third light", "Second light"]);
    let link = first.header("link").unwrap();
    let next = link
        .strip_prefix('<')
        .unwrap()
        .split_once(">; rel=\"next\"")
        .unwrap()
        .0;
    // What begins later does not shift what is read on.
    let last = visitor.get(next).of::<Directory>().with_status(200);
    assert_eq!(last.view().names(), ["First light"]);
    assert_eq!(last.header("link"), None);
}

#[test]
fn the_directory_is_searched_by_the_names_of_season_and_club() {
    let stage = with_seasons(&["First light", "100 % effort"]);
    for (search, found) in [
        ("LIGHT", vec!["First light"]),
        ("gaming%20circle", vec!["100 % effort", "First light"]),
        ("%25", vec!["100 % effort"]),
        ("_", vec![]),
        ("closed", vec![]),
    ] {
        let page = read(&stage, &format!("?search={search}")).expect(200);
        assert_eq!(page.names(), found, "{search}");
    }
}

#[test]
fn the_directory_is_read_as_csv_and_not_sent_twice() {
    let stage = with_seasons(&["First light"]);
    let csv = stage
        .server
        .visitor()
        .get("/public/seasons.csv")
        .with_status(200);
    assert!(csv.text().contains(",First light,false,"), "{}", csv.text());
    assert_eq!(csv.header("access-control-allow-origin"), Some("*"));
    let again = [("if-none-match", csv.etag())];
    let again = again
        .each_ref()
        .map(|(name, value)| (*name, value.as_str()));
    let answer = ask_with(&stage.server.visitor(), "/public/seasons.csv", &again);
    assert!(answer.with_status(304).body.is_empty());
}

#[test]
fn a_place_or_a_number_that_the_directory_does_not_have_is_refused() {
    let stage = Stage::draft();
    for query in ["?limit=0", "?limit=101", "?after=7", "?order=name"] {
        read(&stage, query).refused(400, "invalid-parameter");
    }
}

#[test]
fn the_front_page_leads_to_the_public_seasons() {
    let stage = with_seasons(&["Ford under Lamps"]);
    let page = stage.server.visitor().get("/").text();
    assert!(page.contains("<strong>Ford under Lamps</strong>"), "{page}");
    assert!(!page.contains("Behind closed doors"), "{page}");
    assert!(page.contains("href=\"/public/seasons.csv\""), "{page}");
}
