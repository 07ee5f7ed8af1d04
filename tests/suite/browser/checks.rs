use super::window::{Size, Window};
use crate::stories::results::week::FirstWeek;

const PAIR: [&str; 2] = ["Oskrel", "Corvanel"];

#[test]
fn painted_models_are_checked_by_the_opponent_and_refused_by_a_referee_with_a_reason() {
    let week = FirstWeek::paired(&PAIR);
    week.stage.appoint("Ilkamar", "referee");
    let season = &week.stage.season;
    let log = season.page("painting");
    let claim = |painter: &str, finished: &str| {
        let painter = Window::of(&week.stage.server, painter, Size::Phone);
        painter.go(&log);
        painter.fill("bare", "0");
        painter.fill("finished", finished);
        painter.press("Claim");
        painter.reads("to be checked");
        painter
    };
    claim("Oskrel", "1");
    let opponent = Window::of(&week.stage.server, "Corvanel", Size::Phone);
    opponent.go(&log);
    opponent.look("painting-to-check");
    opponent.resize(Size::Phone);
    opponent.unfold("Check: Oskrel");
    opponent.press("I have seen it");
    opponent.reads("checked");
    opponent.look("painting-checked");

    let painter = claim("Corvanel", "5");
    let referee = Window::of(&week.stage.server, "Ilkamar", Size::Laptop);
    referee.go(&season.page("results"));
    referee.follow("Painting to check: 1");
    referee.unfold("Check: Corvanel");
    referee.fill("Reason", "The base is not finished yet");
    referee.press("Refuse");
    referee.reads("refused");
    referee.look("painting-refused");
    painter.go(&log);
    painter.reads("The base is not finished yet");
}
