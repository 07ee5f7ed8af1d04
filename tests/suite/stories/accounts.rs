//! Registering, signing in, staying in, being kept out.

use std::thread;

use chrono::Duration;
use reqwest::Method;
use serde_json::{Value, json};

use crate::harness::{Actor, Answer, Database, Server};

const EMAIL: &str = "oskrel@example.org";
const PASSWORD: &str = "six lanterns on the ford";

#[test]
fn nothing_tells_a_known_address_from_an_unknown_one() {
    let database = Database::create();
    let server = Server::start(&database);
    server.register("Oskrel");
    let visitor = server.visitor();
    let again = json!({ "email": EMAIL, "name": "Somebody", "password": "another password" });
    let new = json!({ "email": "juddeth@example.org", "name": "Juddeth", "password": "another password" });
    let answers =
        [&again, &new].map(|body| visitor.post("/api/v1/accounts", body).with_status(202));
    assert_eq!(answers[0].body, answers[1].body);
    sign_in(&visitor, EMAIL, "another password").refused(401, "invalid-credentials");
    sign_in(&visitor, EMAIL, PASSWORD).expect(200);

    let wrong = [EMAIL, "nobody@example.org"].map(|email| {
        let answer = sign_in(&visitor, email, "not the password");
        without_id(answer.refused(401, "invalid-credentials"))
    });
    assert_eq!(wrong[0], wrong[1]);
}

#[test]
fn an_address_is_the_same_in_capitals_and_a_password_is_not() {
    let database = Database::create();
    let server = Server::start(&database);
    server.register("Oskrel");
    let visitor = server.visitor();
    sign_in(&visitor, " OSKREL@Example.org ", PASSWORD).expect(200);
    sign_in(&visitor, EMAIL, &PASSWORD.to_uppercase()).refused(401, "invalid-credentials");
}

#[test]
fn a_refresh_token_works_once_and_its_second_use_ends_the_whole_session() {
    let database = Database::create();
    let server = Server::start(&database);
    server.register("Oskrel");
    let visitor = server.visitor();
    let first = sign_in(&visitor, EMAIL, PASSWORD).expect(200);
    let second = refresh(&visitor, &first["refresh_token"]).expect(200);
    assert_ne!(first["refresh_token"], second["refresh_token"]);
    me(&visitor, &second["access_token"]).expect(200);

    refresh(&visitor, &first["refresh_token"]).refused(401, "token-reuse");
    refresh(&visitor, &second["refresh_token"]).refused(401, "invalid-token");
    for pair in [&first, &second] {
        me(&visitor, &pair["access_token"]).refused(401, "invalid-token");
    }
    sign_in(&visitor, EMAIL, PASSWORD).expect(200);
}

#[test]
fn tokens_run_out_to_the_second() {
    let database = Database::create();
    let server = Server::start(&database);
    server.register("Oskrel");
    let visitor = server.visitor();
    let pair = sign_in(&visitor, EMAIL, PASSWORD).expect(200);
    database.clock().advance(Duration::seconds(15 * 60 - 1));
    me(&visitor, &pair["access_token"]).expect(200);
    database.clock().advance(Duration::seconds(1));
    let refused = me(&visitor, &pair["access_token"]);
    assert_eq!(refused.header("www-authenticate"), Some("Bearer"));
    refused.refused(401, "invalid-token");

    let pair = refresh(&visitor, &pair["refresh_token"]).expect(200);
    database.clock().advance(Duration::days(14));
    refresh(&visitor, &pair["refresh_token"]).refused(401, "invalid-token");
}

#[test]
fn a_session_lasts_thirty_days_at_the_most_however_busy_it_is() {
    let database = Database::create();
    let server = Server::start(&database);
    server.register("Oskrel");
    let visitor = server.visitor();
    let mut pair = sign_in(&visitor, EMAIL, PASSWORD).expect(200);
    for _ in 0..2 {
        database.clock().advance(Duration::days(10));
        pair = refresh(&visitor, &pair["refresh_token"]).expect(200);
    }
    database.clock().advance(Duration::days(10));
    refresh(&visitor, &pair["refresh_token"]).refused(401, "invalid-token");
}

#[test]
fn whoever_signs_out_is_out_at_once() {
    let database = Database::create();
    let server = Server::start(&database);
    server.register("Oskrel");
    let visitor = server.visitor();
    let pair = sign_in(&visitor, EMAIL, PASSWORD).expect(200);
    let token = pair["access_token"].as_str().unwrap();
    let out = visitor.ask(Method::DELETE, "/api/v1/sessions/current", |request| {
        request.bearer_auth(token)
    });
    out.expect(204);
    me(&visitor, &pair["access_token"]).refused(401, "invalid-token");
    refresh(&visitor, &pair["refresh_token"]).refused(401, "invalid-token");
}

#[test]
fn after_ten_failures_an_address_waits_a_quarter_of_an_hour_known_or_not() {
    let database = Database::create();
    let server = Server::start(&database);
    server.register("Oskrel");
    let visitor = server.visitor();
    for email in [EMAIL, "nobody@example.org"] {
        for _ in 0..10 {
            sign_in(&visitor, email, "not the password").refused(401, "invalid-credentials");
        }
        for password in ["not the password", PASSWORD] {
            let answer = sign_in(&visitor, email, password);
            assert_eq!(answer.header("retry-after"), Some("900"));
            answer.refused(429, "too-many-attempts");
        }
    }
    database.clock().advance(Duration::minutes(15));
    sign_in(&visitor, EMAIL, PASSWORD).expect(200);
}

#[test]
fn thirty_wrong_passwords_at_once_are_ten_attempts_like_any_others() {
    let database = Database::create();
    let server = Server::start(&database);
    server.register("Oskrel");
    let visitor = server.visitor();
    let mut statuses: Vec<u16> = thread::scope(|scope| {
        let guess = || sign_in(&visitor, EMAIL, "not the password").status;
        let guesses: Vec<_> = (0..30).map(|_| scope.spawn(guess)).collect();
        guesses.into_iter().map(|it| it.join().unwrap()).collect()
    });
    statuses.sort_unstable();
    assert_eq!(statuses, [[401; 10].as_slice(), &[429; 20]].concat());
    sign_in(&visitor, EMAIL, PASSWORD).refused(429, "too-many-attempts");
}

#[test]
fn a_role_that_was_taken_away_is_gone_with_the_next_request() {
    let database = Database::create();
    let server = Server::start(&database);
    let [wennable, ilkamar] = ["Wennable", "Ilkamar"].map(|handle| server.register(handle));
    let body = json!({ "name": "Lamplit Ford gaming circle", "slug": "lamplit-ford" });
    let club = wennable.post("/api/v1/clubs", &body).location(201);
    let invitations = format!("{club}/invitations");
    let body = json!({ "role": "organiser", "uses": 1, "days": 1 });
    let code = wennable.post(&invitations, &body).expect(200)["code"].clone();
    let body = json!({ "role": "player", "uses": 1, "days": 1 });
    ilkamar
        .post("/api/v1/invitations/accept", &json!({ "code": code }))
        .expect(200);
    ilkamar.post(&invitations, &body).expect(200);

    let account = ilkamar.get("/api/v1/accounts/me").expect(200)["id"].clone();
    let member = format!("{club}/members/{}", account.as_str().unwrap());
    wennable
        .put(&member, &json!({ "role": "player" }))
        .expect(204);
    ilkamar.post(&invitations, &body).refused(403, "forbidden");
}

fn sign_in(who: &Actor, email: &str, password: &str) -> Answer {
    who.post(
        "/api/v1/sessions",
        &json!({ "email": email, "password": password }),
    )
}

fn refresh(who: &Actor, token: &Value) -> Answer {
    who.post(
        "/api/v1/sessions/refresh",
        &json!({ "refresh_token": token }),
    )
}

fn me(who: &Actor, token: &Value) -> Answer {
    who.ask(Method::GET, "/api/v1/accounts/me", |request| {
        request.bearer_auth(token.as_str().unwrap())
    })
}

fn without_id(mut problem: Value) -> Value {
    problem.as_object_mut().unwrap().remove("request_id");
    problem
}
