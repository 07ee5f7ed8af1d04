use super::window::{Size, Window};
use crate::harness::Stage;

#[test]
fn an_onlooker_reads_club_season_and_week_without_an_account() {
    let stage = Stage::draft();
    let _players = ["Oskrel", "Corvanel", "Lumeth", "Wennable"].map(|handle| stage.join(handle));
    stage.start();
    let window = Window::open(&stage.server, Size::Phone);
    let club = &stage.club;
    window.go(&club.page(""));
    window.look("club-onlooker");
    window.follow("Autumn at the ford");
    window.look("season-announced");
}
