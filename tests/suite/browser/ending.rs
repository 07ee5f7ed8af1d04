use serde_json::{Value, json};

use super::window::{Size, Window};
use crate::harness::Stage;
use crate::stories::results::week::{FirstWeek, LAST_NIGHT, played};
use crate::stories::season_end::over::a_season_that_is_over;

#[test]
fn a_season_is_closed_ended_and_taken_home() {
    let stage = Stage::with(|season| season.caps(&[300]));
    let week = FirstWeek::sealed_in(stage, &["Oskrel", "Corvanel"]);
    week.pair();
    week.stage.clock().show(LAST_NIGHT);
    let season = &week.stage.season;
    let organiser = Window::of(&week.stage.server, "Wennable", Size::Laptop);
    organiser.go(&season.page("board"));
    organiser.follow("End the season");
    organiser.reads("First close these weeks:");
    organiser.look("ending-too-early");
    organiser.resize(Size::Laptop);
    let ruling = week.game().rule(&played((4, 144), (2, 0)), "As both said");
    ruling.expect(200);
    organiser.follow("Week 1");
    organiser.press("Close the week");
    organiser.go(&season.page("end"));
    organiser.reads("This cannot be undone.");
    organiser.look("ending-will");
    organiser.resize(Size::Laptop);
    organiser.press("Yes, end the season");
    organiser.reads("The secret itself.");
    organiser.look("ending-done");

    let onlooker = Window::open(&week.stage.server, Size::Phone);
    onlooker.go(&season.page(""));
    onlooker.follow("How the season ended");
    onlooker.reads("The secret itself.");
    onlooker.follow("Downloads");
    onlooker.look("downloads");
    let kept = onlooker.ask_later(
        "const done = arguments[arguments.length - 1];
         const link = document.querySelector('a[download=\"season.json\"]');
         fetch(link.href).then((answer) => answer.json()).then(done)",
    );
    assert!(kept.get("seed").is_some_and(Value::is_string), "{kept}");

    organiser.resize(Size::Laptop);
    organiser.follow("Next season from this one");
    organiser.fill("Name of the season", "Winter at the ford");
    organiser.set("First day of week 1", "2026-02-06");
    organiser.press("Make the draft");
    organiser.reads("Please look at this again");
    assert_eq!(organiser.value("Name of the season"), "Winter at the ford");
    organiser.look("next-season-refused");
    organiser.resize(Size::Laptop);
    organiser.set("First day of week 1", "2026-02-05");
    organiser.press("Make the draft");
    organiser.reads("Winter at the ford");
    organiser.reads("This season is being set up.");
    organiser.reads("2 players");
    organiser.look("next-season-draft");

    let player = Window::of(&week.stage.server, "Oskrel", Size::Phone);
    player.go(&season.page("mine"));
    player.look("mine-ended");
}

#[test]
fn a_member_of_a_season_that_only_the_club_sees_takes_the_archive_home() {
    let week = a_season_that_is_over("club");
    let season = &week.stage.season;
    let member = Window::of(&week.stage.server, "Oskrel", Size::Phone);
    member.go(&season.page("downloads"));
    member.reads("When the season has ended, the same is here row by row");
    week.season().end().expect(200);
    member.go(&season.page("downloads"));
    member.look("downloads-of-the-club");
    let kept = member.ask_later(
        "const done = arguments[arguments.length - 1];
         const link = document.querySelector('a[download=\"season.zip\"]');
         fetch(link.href).then((answer) => answer.text()).then((text) => done(text.slice(0, 2)))",
    );
    assert_eq!(kept, json!("PK"));
    let stranger = Window::open(&week.stage.server, Size::Phone);
    stranger.go(&season.page("downloads/season.zip"));
    stranger.reads("There is nothing here");
}
