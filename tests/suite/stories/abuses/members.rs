//! Officers of an organiser's making, and members who were removed.

use reqwest::Method;
use reqwest::blocking::RequestBuilder;
use serde_json::{Value, json};

use super::super::results::week::{Week, played};
use super::told;
use crate::harness::{Actor, demo_list};

fn account(actor: &Actor) -> String {
    let me = actor.get("/api/v1/accounts/me").expect(200);
    me["id"].as_str().unwrap().to_owned()
}

#[test]
fn an_organiser_makes_no_officers_and_officers_read_who_came_in_and_how() {
    let week = Week::sealed(&["Oskrel", "Corvanel"]);
    let stage = &week.stage;
    let kestanby = stage.appoint("Kestanby", "organiser");
    let invitations = format!("{}/invitations", stage.club);
    let invite = |role: &str| {
        let body = json!({ "role": role, "uses": 3, "days": 9 });
        kestanby.post(&invitations, &body)
    };
    for role in ["organiser", "referee"] {
        invite(role).refused(403, "forbidden");
    }
    let made = invite("player").expect(200);
    let open = kestanby.get(&invitations).expect(200);
    let ours = |open: &Value| {
        let open = open.as_array().unwrap();
        open.iter().any(|it| it["id"] == made["id"])
    };
    assert!(ours(&open), "{open}");

    let one = format!("{invitations}/{}", made["id"].as_str().unwrap());
    let delete = || stage.wennable.ask(Method::DELETE, &one, |request| request);
    delete().expect(204);
    delete().refused(404, "not-found");
    assert!(!ours(&kestanby.get(&invitations).expect(200)));
    let guest = stage.server.register("Tamselle");
    guest
        .post(
            "/api/v1/invitations/accept",
            &json!({ "code": made["code"] }),
        )
        .refused(404, "not-found");

    let trail = week.get("trail").to_string();
    for act in ["create_invitation", "delete_invitation", "update_member"] {
        assert!(trail.contains(act), "{act} is for officers to read");
        assert_eq!(
            told(stage, act),
            Vec::<Value>::new(),
            "{act} is for nobody else"
        );
    }
}

#[test]
fn whoever_is_removed_neither_plays_on_nor_comes_back_by_an_old_code() {
    let week = Week::paired(&["Oskrel", "Corvanel"]);
    let stage = &week.stage;
    let body = json!({ "role": "player", "uses": 9, "days": 9 });
    let invitations = format!("{}/invitations", stage.club);
    let code = stage.wennable.post(&invitations, &body).expect(200)["code"].clone();
    let oskrel = &week.players[0];
    let member = format!("{}/members/{}", stage.club, account(&oskrel.actor));
    stage
        .wennable
        .ask(Method::DELETE, &member, |request: RequestBuilder| request)
        .expect(204);

    let result = played((4, 120), (2, 90));
    week.report(oskrel, "one", &result)
        .refused(403, "not-a-participant");
    let second = stage.week(2);
    let list = demo_list("Oskrel", 2);
    let actor = &oskrel.actor;
    actor
        .put(&format!("{second}/list/draft"), &list)
        .refused(404, "not-found");
    actor
        .post(&format!("{second}/list/seal"), &list)
        .refused(404, "not-found");
    let nights = json!({ "nights": ["first"] });
    actor
        .put(&format!("{second}/availability"), &nights)
        .refused(404, "not-found");
    let paint = json!({ "unit": "hedge-reeve-1", "stages": { "finished": 1 } });
    actor
        .post(&format!("{second}/painting"), &paint)
        .refused(404, "not-found");
    actor
        .post("/api/v1/invitations/accept", &json!({ "code": code }))
        .refused(404, "not-found");
}
