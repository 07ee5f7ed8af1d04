//! Officers of an organiser's making, and members who were removed.

use serde_json::Value;

use super::super::results::week::{FirstWeek, played};
use super::told;
use crate::harness::{Club, List};

#[test]
fn an_organiser_makes_no_officers_and_officers_read_who_came_in_and_how() {
    let week = FirstWeek::sealed(&["Oskrel", "Corvanel"]);
    let stage = &week.stage;
    let kestanby = stage.appoint("Kestanby", "organiser");
    let by_kestanby = stage.club.by(&kestanby);
    for role in ["organiser", "referee"] {
        by_kestanby.invite(role, 3, 9).refused(403, "forbidden");
    }
    let made = by_kestanby.invite("player", 3, 9).expect(200);
    let is_open = |club: &Club| {
        let open = club.invitations().expect(200);
        open.iter().any(|invitation| invitation.id == made.id)
    };
    assert!(is_open(&by_kestanby));

    stage.club.delete_invitation(&made.id).expect(204);
    stage
        .club
        .delete_invitation(&made.id)
        .refused(404, "not-found");
    assert!(!is_open(&by_kestanby));
    let guest = stage.server.register("Tamselle");
    guest.accept(&made.code).refused(404, "not-found");

    let trail = week.acts();
    for act in ["create_invitation", "delete_invitation", "update_member"] {
        assert!(
            trail.iter().any(|told| told == act),
            "{act} is for officers to read"
        );
        assert_eq!(
            told(stage, act),
            Vec::<Value>::new(),
            "{act} is for nobody else"
        );
    }
}

#[test]
fn whoever_is_removed_neither_plays_on_nor_comes_back_by_an_old_code() {
    let week = FirstWeek::paired(&["Oskrel", "Corvanel"]);
    let club = &week.stage.club;
    let code = club.invite("player", 9, 9).expect(200).code;
    let oskrel = &week.players[0];
    club.remove(&oskrel.actor).expect(204);

    week.report(oskrel, "one", &played((4, 120), (2, 90)))
        .refused(403, "not-a-participant");
    let second = week.stage.week(2).by(oskrel);
    let list = List::demo("Oskrel", 2);
    second
        .list_of(oskrel)
        .draft(&list)
        .refused(404, "not-found");
    second.list_of(oskrel).seal(&list).refused(404, "not-found");
    second.tell_nights(&["first"]).refused(404, "not-found");
    second.claim("hedge-reeve-1", 1).refused(404, "not-found");
    oskrel.actor.accept(&code).refused(404, "not-found");
}
