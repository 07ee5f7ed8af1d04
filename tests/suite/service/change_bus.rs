//! A process that has made a change makes its pages from what the change has read: they are the pages
//! that another makes from the database.

use super::{RESOURCES, standings_process, version};
use crate::harness::until;
use crate::stories::results::week::{FirstWeek, LAST_NIGHT, played};

#[test]
fn pages_made_by_whoever_made_the_change_are_those_made_from_the_database() {
    let week = FirstWeek::sealed(&["Oskrel", "Corvanel"]);
    let reader = standings_process(&week.stage.database.url());
    let public = week.season().for_everybody();
    let oskrel = &week.players[0].id;
    let ledger = format!("players/{oskrel}/ledger?week=1");
    let more = ["standings?week=1", ledger.as_str()];
    let all = RESOURCES.into_iter().chain(more);
    let pages: Vec<String> = all.map(|of| public.path(of)).collect();
    let [maker, other] = [week.stage.server.visitor(), reader.visitor()];
    let mut seen = Vec::new();
    let mut look = |act: &str| {
        for page in &pages {
            // The clock makes versions of its own; a change is told to the other process.
            let mut both = Vec::new();
            until("both know the same version", || {
                both = vec![maker.get(page), other.get(page)];
                version(&both[0].json()) == version(&both[1].json())
            });
            let (made, read) = (&both[0], &both[1]);
            assert_eq!(made.body, read.body, "{page} after {act}");
            assert_eq!(made.header("etag"), read.header("etag"));
        }
        seen.push(version(&maker.get(&pages[0]).expect(200)));
    };

    look("sealing");
    let round = week.propose();
    look("proposing");
    week.publish(&round);
    look("publishing");
    week.stage.clock().show(LAST_NIGHT);
    let [first, second] = week.sides();
    week.report(first, "first", &played((3, 90), (1, 40)))
        .expect(200);
    look("reporting");
    week.game().by(second).confirm().expect(200);
    look("confirming");
    week.week().close().expect(204);
    look("closing");
    let point = week.season().adjust(oskrel, 1, 1, "Swept the hall");
    point.expect(200);
    look("giving points in a week that is closed");
    let ruling = week
        .game()
        .rule(&played((4, 90), (1, 40)), "A photo of the table");
    ruling.expect(200);
    look("ruling");
    week.season().player(oskrel).withdraw().expect(200);
    look("leaving");
    assert!(seen.is_sorted_by(|one, next| one < next), "{seen:?}");
}
