//! The acts of the trail keep their names and facts: the digests of entries that are written already
//! depend on every byte.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use document::results::SlipDocument;
use document::trail::{
    ClubRoleDocument, OpenedReceipt, PublishedRound, TablePlace, TrailAct, VisibilityDocument,
    WeekChanges, WeekReveals,
};
use serde_json::{Value, json};
use uuid::Uuid;

const ID: Uuid = Uuid::from_u128(7);

fn check(act: &TrailAct, name: &str, facts: &Value) {
    let parts = act.to_parts().unwrap();
    assert_eq!((parts.0.as_str(), &parts.1), (name, facts));
    assert_eq!(&TrailAct::parse(name, facts).unwrap(), act);
}

fn round() -> PublishedRound {
    PublishedRound {
        week: 2,
        number: 1,
        round: ID,
        pins: vec![[ID, ID]],
        forbidden: vec![],
    }
}

#[test]
fn acts_of_the_club() {
    check(
        &TrailAct::CreateRecordConsent {},
        "create_record_consent",
        &json!({}),
    );
    let role = ClubRoleDocument::Referee;
    let act = TrailAct::CreateInvitation {
        invitation: ID,
        role,
        uses: 3,
    };
    let facts = json!({ "invitation": ID, "role": "referee", "uses": 3 });
    check(&act, "create_invitation", &facts);
    let act = TrailAct::UpdateMember { account: ID, role };
    let facts = json!({ "account": ID, "role": "referee" });
    check(&act, "update_member", &facts);
}

#[test]
fn acts_of_a_season() {
    check(&TrailAct::EndSeason {}, "end_season", &json!({}));
    let act = TrailAct::UpdateSeason {
        name: "Embers".to_owned(),
        places: None,
        visibility: VisibilityDocument::Public,
    };
    let facts = json!({ "name": "Embers", "places": null, "visibility": "public" });
    check(&act, "update_season", &facts);
    let act = TrailAct::UpdateWeek(WeekChanges {
        week: 2,
        cap: Some(700),
        announce: None,
        lists_due: Some("2026-03-01T18:00:00Z".parse().unwrap()),
        play_until: None,
        nights: None,
        catalogue_number: None,
    });
    let facts = json!({ "week": 2, "cap": 700, "lists_due": "2026-03-01T18:00:00Z" });
    check(&act, "update_week", &facts);
    let act = TrailAct::Reveal {
        weeks: vec![WeekReveals {
            week: 1,
            moments: vec!["title".to_owned()],
        }],
    };
    let facts = json!({ "weeks": [{ "week": 1, "moments": ["title"] }] });
    check(&act, "reveal", &facts);
    let act = TrailAct::CloseWeek {
        week: 1,
        table: vec![TablePlace {
            rank: 1,
            player: ID,
            total: 12,
        }],
    };
    let facts = json!({ "week": 1, "table": [{ "rank": 1, "player": ID, "total": 12 }] });
    check(&act, "close_week", &facts);
}

#[test]
fn acts_of_lists_and_rounds() {
    let act = TrailAct::SealList {
        player: ID,
        week: 1,
        late_minutes: None,
        receipt: "ab".to_owned(),
    };
    let facts = json!({ "player": ID, "week": 1, "late_minutes": null, "receipt": "ab" });
    check(&act, "seal_list", &facts);
    let act = TrailAct::OpenLists {
        week: 1,
        receipts: vec![OpenedReceipt {
            player: ID,
            receipt: "ab".to_owned(),
            sealed_at: "2026-03-01T18:00:00Z".parse().unwrap(),
            stands_in: false,
        }],
    };
    let receipt = json!({
        "player": ID, "receipt": "ab", "sealed_at": "2026-03-01T18:00:00Z", "stands_in": false,
    });
    let facts = json!({ "week": 1, "receipts": [receipt] });
    check(&act, "open_lists", &facts);
    let mut facts =
        json!({ "week": 2, "number": 1, "round": ID, "pins": [[ID, ID]], "forbidden": [] });
    check(&TrailAct::PublishRound(round()), "publish_round", &facts);
    facts["version"] = json!(2);
    facts["repairs"] = json!(ID);
    facts["reason"] = json!("Ill");
    let act = TrailAct::PublishRepair {
        round: round(),
        version: 2,
        repairs: ID,
        reason: "Ill".to_owned(),
    };
    check(&act, "publish_repair", &facts);
}

#[test]
fn acts_of_results_and_painting() {
    let act = TrailAct::ReportResult {
        game: ID,
        slip: Box::new(SlipDocument::Awaited),
    };
    let facts = json!({ "game": ID, "slip": { "kind": "awaited" } });
    check(&act, "report_result", &facts);
    let claim = |looks_like| TrailAct::ClaimPainting {
        claim: ID,
        player: ID,
        week: 1,
        looks_like,
    };
    let mut facts = json!({ "claim": ID, "player": ID, "week": 1 });
    check(&claim(None), "claim_painting", &facts);
    facts["looks_like"] = json!([]);
    check(&claim(Some(Vec::new())), "claim_painting", &facts);
}

#[test]
fn an_entry_under_an_old_name_is_read_and_one_that_cannot_be_is_no_act() {
    let facts = json!({ "week": 1, "about": "lists" });
    let read = TrailAct::parse("nudge_players", &facts).unwrap();
    let about = "lists".to_owned();
    assert_eq!(read, TrailAct::SendReminders { week: 1, about });
    assert!(TrailAct::parse("send_reminders", &json!({ "week": "one" })).is_err());
    assert!(TrailAct::parse("juggle", &json!({})).is_err());
}
