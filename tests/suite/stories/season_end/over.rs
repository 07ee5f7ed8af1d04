//! A season that only waits to be ended.

use super::super::results::week::{FirstWeek, played};
use crate::harness::Stage;

const PEOPLE: [&str; 4] = ["Oskrel", "Corvanel", "Pellamoor", "Lumeth"];

/// One week, played to its end; Oskrel's reeve is painted, Pellamoor withdraws, and Lumeth leaves the
/// club. All that is left is to end it.
pub fn a_season_that_is_over(visibility: &str) -> FirstWeek {
    let stage = Stage::with(|season| {
        season.caps(&[300]);
        season.visibility(visibility);
    });
    let week = FirstWeek::sealed_in(stage, &PEOPLE);
    week.pair();
    let [oskrel, _, pellamoor, lumeth] = &week.players[..] else {
        panic!("four people play");
    };
    let claim = week.week().by(oskrel).claim("hedge-reeve-1", 1).expect(201);
    let referee = week.stage.appoint("Ilkamar", "referee");
    let by_referee = week.season().by(&referee);
    by_referee.verify_claim(&claim.id).expect(200);
    week.stage.clock().show("2026-01-18T12:00:00+01:00");
    for game in week.games() {
        let ruling = by_referee.game(&game.id);
        ruling
            .rule(&played((4, 144), (2, 108)), "As both said")
            .expect(200);
    }
    week.week().close().expect(204);
    let place = week.season().player(&pellamoor.id);
    place.by(pellamoor).withdraw().expect(200);
    week.stage.club.remove(&lumeth.actor).expect(204);
    week
}
