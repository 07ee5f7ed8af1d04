//! Who may do what: every operation of the OpenAPI document, asked by every kind of person.

mod bodies;
mod scene;

use reqwest::Method;

use bodies::*;
use scene::Scene;
pub use scene::operations;
use serde_json::Value;

/// Nobody signed in; an account outside the club; then the roles of the club. The player is the only
/// one who plays in the season.
const PEOPLE: [&str; 6] = [
    "visitor",
    "stranger",
    "player",
    "referee",
    "organiser",
    "owner",
];

/// What makes the body of a request of one of them.
type Body = fn(&Scene, &str) -> Value;

/// Operation, which season, body, and the status that each of [`PEOPLE`] gets. They ask one after the
/// other; what one row changes, no other row sees. The season that runs is open to the club alone; the
/// other is a draft.
#[rustfmt::skip] // One row a line, so that columns can be read.
const TABLE: &[(&str, Which, Body, [u16; 6])] = &[
    ("register_account", Running, account, [202; 6]),
    ("find_account", Running, nothing, [401, 200, 200, 200, 200, 200]),
    ("sign_in", Running, credentials, [200; 6]),
    ("refresh_session", Running, no_token, [401; 6]),
    ("sign_out", Running, nothing, [401, 204, 204, 204, 204, 204]),
    ("create_club", Running, named, [401, 201, 201, 201, 201, 201]),
    ("find_club", Running, nothing, [200; 6]),
    ("create_invitation", Running, invitation, [401, 404, 403, 403, 200, 200]),
    ("list_invitations", Running, nothing, [401, 404, 403, 403, 200, 200]),
    ("delete_invitation", Running, nothing, [401, 404, 403, 403, 204, 404]),
    ("accept_invitation", Running, no_code, [401, 404, 404, 404, 404, 404]),
    ("list_members", Running, nothing, [401, 404, 200, 200, 200, 200]),
    ("update_member", Running, role, [401, 404, 403, 403, 403, 204]),
    ("delete_member", Running, nothing, [401, 404, 403, 403, 403, 204]),
    ("find_record_consent", Running, nothing, [401, 404, 200, 200, 200, 200]),
    ("create_record_consent", Running, nothing, [401, 404, 200, 200, 200, 200]),
    ("delete_record_consent", Running, nothing, [401, 404, 204, 204, 204, 204]),
    ("list_public_seasons", Running, nothing, [200; 6]),
    ("find_public_record", Running, nothing, [404; 6]),
    ("find_public_standings", Running, nothing, [404; 6]),
    ("find_public_ledger", Running, nothing, [404; 6]),
    ("list_public_pairings", Running, nothing, [404; 6]),
    ("list_public_results", Running, nothing, [404; 6]),
    ("list_public_weeks", Running, nothing, [404; 6]),
    ("find_public_statistics", Running, nothing, [404; 6]),
    ("list_public_tables", Running, nothing, [404; 6]),
    ("find_public_badge", Running, nothing, [404; 6]),
    ("follow_season", Running, nothing, [404; 6]),
    ("create_catalogue", Running, name, [401, 404, 403, 403, 201, 201]),
    ("list_catalogues", Running, nothing, [401, 404, 200, 200, 200, 200]),
    ("create_catalogue_version", Running, catalogue, [401, 404, 403, 403, 201, 201]),
    ("find_catalogue_version", Running, nothing, [401, 404, 200, 200, 200, 200]),
    ("find_catalogue_changes", Running, nothing, [401, 404, 200, 200, 200, 200]),
    ("create_season", Running, season, [401, 404, 403, 403, 201, 201]),
    ("list_seasons", Running, nothing, [200; 6]),
    ("find_season", Running, nothing, [404, 404, 200, 200, 200, 200]),
    ("find_season", Draft, nothing, [404, 404, 200, 200, 200, 200]),
    ("update_season", Running, nothing, [401, 404, 403, 403, 412, 412]),
    ("list_weeks", Running, nothing, [404, 404, 200, 200, 200, 200]),
    ("find_week", Running, nothing, [404, 404, 200, 200, 200, 200]),
    ("update_week", Running, nothing, [401, 404, 403, 403, 204, 204]),
    ("tell_availability", Running, nights, [401, 404, 204, 404, 404, 404]),
    ("send_reminders", Running, about_lists, [401, 404, 403, 403, 200, 429]),
    ("update_scenario", Draft, sheet, [401, 404, 403, 403, 204, 204]),
    ("find_scenario", Draft, nothing, [404, 404, 404, 404, 200, 200]),
    ("join_season", Draft, place, [401, 404, 201, 201, 201, 201]),
    ("list_players", Running, nothing, [404, 404, 200, 200, 200, 200]),
    ("list_players", Draft, nothing, [404, 404, 200, 200, 200, 200]),
    ("update_player", Running, nights, [401, 404, 403, 403, 200, 200]),
    ("save_draft", Running, list, [401, 404, 200, 404, 404, 404]),
    ("check_list", Running, list, [401, 404, 200, 404, 404, 404]),
    ("read_list", Running, pasted, [401, 404, 200, 404, 404, 404]),
    ("find_fits", Running, list, [401, 404, 200, 404, 404, 404]),
    ("find_changes", Running, list, [401, 404, 200, 404, 404, 404]),
    ("find_collection", Running, nothing, [401, 404, 200, 404, 404, 404]),
    ("seal_list", Running, list, [401, 404, 201, 404, 404, 404]),
    ("find_own_list", Running, nothing, [401, 404, 200, 404, 404, 404]),
    ("list_lists", Running, nothing, [404, 404, 404, 404, 200, 200]),
    ("open_lists", Running, nothing, [401, 404, 403, 403, 409, 409]),
    ("grant_late_leave", Running, leave, [401, 404, 403, 403, 204, 409]),
    ("propose_round", Running, nothing, [401, 404, 403, 403, 409, 409]),
    ("repair_round", Running, shock, [401, 404, 403, 422, 422, 422]),
    ("list_rounds", Running, nothing, [404, 404, 200, 200, 200, 200]),
    ("publish_round", Running, nothing, [401, 404, 403, 403, 409, 409]),
    ("find_fairness", Running, nothing, [404, 404, 200, 200, 200, 200]),
    ("list_games", Running, nothing, [404, 404, 200, 200, 200, 200]),
    ("find_game", Running, nothing, [404, 404, 200, 200, 200, 200]),
    ("preview_score", Running, played, [404, 404, 200, 200, 200, 200]),
    ("confirm_result", Running, nothing, [401, 404, 200, 403, 403, 403]),
    ("dispute_result", Running, objection, [401, 404, 200, 403, 403, 403]),
    ("report_result", Running, played, [401, 404, 200, 403, 403, 403]),
    ("rule_result", Running, ruling, [401, 404, 403, 200, 200, 200]),
    ("adjust_points", Running, penalty, [401, 404, 403, 200, 200, 200]),
    ("claim_painting", Running, paint, [401, 404, 201, 404, 404, 404]),
    ("list_claims", Running, nothing, [404, 404, 200, 200, 200, 200]),
    ("verify_claim", Running, nothing, [401, 404, 200, 409, 409, 409]),
    ("refuse_claim", Running, reason, [401, 404, 200, 409, 409, 409]),
    ("create_photo", Running, nothing, [401, 415, 415, 415, 415, 415]),
    ("find_photo", Running, nothing, [404, 404, 200, 200, 200, 200]),
    ("delete_photo", Running, nothing, [401, 404, 404, 204, 404, 404]),
    ("find_standings", Running, nothing, [404, 404, 200, 200, 200, 200]),
    ("find_ledger", Running, nothing, [404, 404, 200, 200, 200, 200]),
    ("find_what_if", Running, no_suppositions, [404, 404, 200, 200, 200, 200]),
    ("find_reach", Running, nothing, [404, 404, 409, 409, 409, 409]),
    ("find_forecast", Running, nothing, [404, 404, 200, 200, 200, 200]),
    ("find_statistics", Running, nothing, [404, 404, 200, 200, 200, 200]),
    ("list_awards", Running, nothing, [404, 404, 200, 200, 200, 200]),
    ("find_attendance", Running, nothing, [404, 404, 200, 200, 200, 200]),
    ("close_week", Running, nothing, [401, 404, 403, 403, 409, 409]),
    ("list_trail", Running, nothing, [404, 404, 200, 200, 200, 200]),
    ("export_season", Running, nothing, [404, 404, 200, 200, 200, 200]),
    ("archive_season", Running, nothing, [404, 404, 409, 409, 409, 409]),
    ("start_season", Draft, nothing, [401, 404, 403, 403, 200, 409]),
    ("end_season", Running, nothing, [401, 404, 403, 403, 409, 409]),
    ("create_season_from", Running, next_season, [401, 404, 403, 403, 201, 201]),
    ("withdraw_player", Running, nothing, [401, 404, 403, 403, 200, 409]),
];

#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Which {
    Running,
    Draft,
}
use Which::{Draft, Running};

#[test]
fn every_operation_answers_every_kind_of_person_as_the_table_says() {
    let scene = Scene::new();
    // Reading changes nothing.
    let read = scene.open();
    let mut wrong = Vec::new();
    for (operation, season, body, expected) in TABLE {
        let (method, path) = &scene.operations[*operation];
        let own = (*method != Method::GET).then(|| scene.open());
        let server = &own.as_ref().unwrap_or(&read).server;
        let path = scene.fill(path, *season);
        let got = PEOPLE.map(|person| {
            let build = |request: reqwest::blocking::RequestBuilder| {
                let request = request.header("if-match", "\"0\"");
                let request = request.header("idempotency-key", format!("{operation}-{person}"));
                match *method {
                    Method::GET | Method::DELETE => request,
                    _ => request.json(&body(&scene, person)),
                }
            };
            let person = server.welcome(&scene.people[person]);
            person.ask(method.clone(), &path, build).status
        });
        if got != *expected {
            wrong.push(format!(
                "{operation} ({season:?}): expected {expected:?}, got {got:?}"
            ));
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn every_operation_of_the_document_has_a_row() {
    let missing: Vec<String> = operations()
        .into_keys()
        .filter(|name| !TABLE.iter().any(|(operation, ..)| operation == name))
        .collect();
    assert_eq!(missing, Vec::<String>::new());
}
