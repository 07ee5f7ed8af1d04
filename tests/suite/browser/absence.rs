use super::window::{Size, Window};
use crate::harness::Stage;

#[test]
fn a_player_misses_a_week_comes_after_all_and_withdraws_on_a_phone() {
    let stage = Stage::draft();
    stage.join("Braewick");
    stage.start();
    let season = &stage.season;
    let window = Window::of(&stage.server, "Braewick", Size::Phone);
    window.go(&season.page("mine"));
    let nights = [
        "first: Tuesday, 13 January 2026 at 19:00",
        "second: Thursday, 15 January 2026 at 19:00",
    ];
    for night in nights {
        window.tick(night);
    }
    window.press("Save nights");
    window.reads("You are excused for this week.");
    window.look("mine-excused");
    window.resize(Size::Phone);
    window.tick(nights[1]);
    window.press("Save nights");
    assert!(!window.text().contains("You are excused"));
    window.unfold("Withdraw from the season");
    window.look("mine-withdrawing");
    window.resize(Size::Phone);
    window.press("Yes, withdraw");
    window.reads("withdrew");
    window.look("mine-withdrawn");
}
