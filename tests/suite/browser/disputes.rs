use super::window::{Size, Window};
use crate::stories::results::week::FirstWeek;

const PAIR: [&str; 2] = ["Oskrel", "Corvanel"];

/// The pair in the order of their game.
fn sides(week: &FirstWeek) -> [&'static str; 2] {
    let first = week.sides()[0];
    if week.players[0].id == first.id {
        PAIR
    } else {
        [PAIR[1], PAIR[0]]
    }
}

#[test]
fn a_result_is_disputed_by_the_opponent_and_ruled_by_a_referee_with_a_reason() {
    let week = FirstWeek::paired(&PAIR);
    week.stage.appoint("Ilkamar", "referee");
    let [first, second] = sides(&week);
    let game = week.game().page("");

    let reporter = Window::of(&week.stage.server, first, Size::Phone);
    reporter.go(&game);
    reporter.type_into_all(first, "4");
    reporter.press("Send the report");
    reporter.reads("reported");

    let opponent = Window::of(&week.stage.server, second, Size::Phone);
    opponent.go(&game);
    opponent.reads("Is this right?");
    opponent.unfold("Dispute the result");
    opponent.fill("Reason", "We held the ford together on turn three");
    opponent.press("Dispute the result");
    opponent.reads("disputed");
    opponent.look("slip-disputed");

    let referee = Window::of(&week.stage.server, "Ilkamar", Size::Laptop);
    let season = &week.stage.season;
    referee.go(&season.page("results"));
    referee.look("results-disputed");
    referee.follow(&format!("{first} – {second}"));
    referee.type_into_all(first, "9");
    referee.fill("Reason", "Both remember turn three alike");
    referee.press("Rule");
    referee.reads("can be at most 6, not 9");
    referee.look("ruling-refused");
    referee.resize(Size::Laptop);
    referee.type_into_all(first, "3");
    referee.press("Rule");
    referee.reads("ruled");
    referee.reads("Both remember turn three alike");
    referee.look("slip-ruled");
    referee.go(&season.page("trail"));
    referee.reads("Result ruled");
    referee.reads("We held the ford together on turn three");
    referee.look("trail");
}

#[test]
fn a_referee_gives_points_with_a_reason_and_takes_them_back() {
    let week = FirstWeek::paired(&PAIR);
    week.stage.appoint("Ilkamar", "referee");
    let season = &week.stage.season;
    let referee = Window::of(&week.stage.server, "Ilkamar", Size::Phone);
    referee.go(&season.page("results"));
    referee.follow("Points by ruling");
    referee.look("points-empty");
    referee.resize(Size::Phone);
    referee.choose("Player", "Oskrel");
    referee.fill("Points", "5000");
    referee.fill("Reason", "Brought terrain for three tables");
    referee.press("Enter into the ledger");
    referee.reads("From 1 to 1000 points, given or taken.");
    referee.fill("Points", "2");
    referee.press("Enter into the ledger");
    referee.reads("+2");
    referee.follow_beginning("Take back");
    referee.fill("Reason", "It was the terrain of Lumeth");
    referee.look("points-take-back");
    referee.resize(Size::Phone);
    referee.press("Enter into the ledger");
    referee.reads("-2");
    referee.look("points-given");
    referee.follow("Oskrel");
    referee.reads("It was the terrain of Lumeth");
}
