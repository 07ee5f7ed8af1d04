use serde_json::json;

use super::window::{Size, Window};
use crate::harness::Stage;
use crate::stories::results::week::{FirstWeek, LAST_NIGHT, LISTS_DUE, played};

#[test]
fn a_round_is_paired_around_the_organisers_orders_published_explained_played_and_closed() {
    let week = FirstWeek::sealed(&["Oskrel", "Corvanel", "Pellamoor", "Braewick"]);
    week.stage.clock().show(LISTS_DUE);
    let page = week.stage.week(1);
    let organiser = Window::of(&week.stage.server, "Wennable", Size::Laptop);
    let season = &week.stage.season;
    organiser.go(&season.page("board"));
    organiser.press_if_there("Open all lists now");
    organiser.follow("Pair the week");
    organiser.look("pairing-empty");
    organiser.resize(Size::Laptop);
    organiser.press("Propose a round");
    organiser.reads("Proven: no pairing gives up less.");
    organiser.unfold("An order about another pair");
    organiser.choose("Player", "Oskrel");
    organiser.choose("and", "Oskrel");
    organiser.press("Solve again");
    organiser.reads("Name two players of the season.");
    organiser.choose("and", "Corvanel");
    organiser.press("Solve again");
    organiser.reads("The organiser fixed this.");
    organiser.look("pairing-pinned");
    organiser.resize(Size::Laptop);
    organiser.choose_about(["Oskrel", "Corvanel"], "Must not be");
    organiser.press("Solve again");
    organiser.reads("Must not be");
    organiser.look("pairing-forbidden");
    organiser.resize(Size::Laptop);
    organiser.press("Publish the round");
    organiser.reads("no result yet");

    let player = Window::of(&week.stage.server, "Oskrel", Size::Phone);
    player.go(&page.page(""));
    player.follow("Why these pairings");
    player.reads("Proven: no pairing gives up less.");
    player.reads("Orders of the organiser");
    player.look("why-pairings");

    week.stage.clock().show(LAST_NIGHT);
    organiser.press("Close the week");
    organiser.reads("2 games of the week are open or disputed.");
    organiser.look("week-not-closed");
    organiser.resize(Size::Laptop);
    for game in week.games() {
        let game = week.season().game(&game.id);
        game.rule(&played((4, 0), (2, 0)), "As both said")
            .expect(200);
    }
    organiser.go(&page.page("pairing"));
    organiser.press("Close the week");
    organiser.reads("This week is closed.");
    organiser.look("week-closed");
}

#[test]
fn a_second_round_of_a_week_is_proposed_and_published_after_the_first() {
    let stage = Stage::with(|season| season.rounds(json!({ "kind": "by_score", "per_week": 2 })));
    let week = FirstWeek::sealed_in(stage, &["Oskrel", "Corvanel", "Pellamoor", "Braewick"]);
    for player in &week.players {
        week.tell(player, &["first", "second"]).expect(204);
    }
    let first = week.propose();
    let page = week.stage.week(1);
    let organiser = Window::of(&week.stage.server, "Wennable", Size::Phone);
    organiser.go(&page.page("pairing"));
    organiser.reads("Round 1 of 2 in this week");
    week.publish(&first);
    organiser.go(&page.page("pairing"));
    organiser.reads("Round 2 of 2 in this week");
    organiser.press("Propose a round");
    organiser.reads("Proven: no pairing gives up less.");
    organiser.look("pairing-second-round");
    organiser.resize(Size::Phone);
    organiser.press("Publish the round");
    organiser.reads("4 without a confirmed result");
    assert!(!organiser.text().contains("Propose a round"));
    assert!(!organiser.text().contains("in this week"));
}
