//! Registering, signing in, staying in, being kept out.

use std::thread;

use chrono::Duration;

use crate::harness::{Actor, Database, Server};

const EMAIL: &str = "oskrel@example.org";
const PASSWORD: &str = "six lanterns on the ford";

/// A server where Oskrel has an account.
fn with_oskrel() -> (Database, Server) {
    let database = Database::create();
    let server = Server::start(&database);
    server.register("Oskrel");
    (database, server)
}

#[test]
fn nothing_tells_a_known_address_from_an_unknown_one() {
    let (_database, server) = with_oskrel();
    let visitor = server.visitor();
    let another = "another password";
    let answers = [(EMAIL, "Somebody"), ("juddeth@example.org", "Juddeth")]
        .map(|(email, name)| visitor.register_as(email, name, another).with_status(202));
    assert_eq!(answers[0].body, answers[1].body);
    visitor
        .sign_in_with(EMAIL, another)
        .refused(401, "invalid-credentials");
    visitor.sign_in_with(EMAIL, PASSWORD).expect(200);

    let wrong = [EMAIL, "nobody@example.org"].map(|email| {
        let answer = visitor.sign_in_with(email, "not the password");
        answer.refused(401, "invalid-credentials").without_id()
    });
    assert_eq!(wrong[0], wrong[1]);
}

#[test]
fn registering_a_known_address_commits_a_row_as_registering_an_unknown_one_does() {
    let (database, server) = with_oskrel();
    let visitor = server.visitor();
    let transaction = "SELECT xmin::text FROM accounts";
    let facts = "SELECT to_jsonb(accounts)::text FROM accounts";
    let (before, known) = (database.texts(transaction), database.texts(facts));
    visitor
        .register_as(EMAIL, "Somebody", "another password")
        .with_status(202);
    assert_ne!(database.texts(transaction), before);
    assert_eq!(database.texts(facts), known);
}

#[test]
fn an_address_is_the_same_in_capitals_and_a_password_is_not() {
    let (_database, server) = with_oskrel();
    let visitor = server.visitor();
    visitor
        .sign_in_with(" OSKREL@Example.org ", PASSWORD)
        .expect(200);
    visitor
        .sign_in_with(EMAIL, &PASSWORD.to_uppercase())
        .refused(401, "invalid-credentials");
}

#[test]
fn a_refresh_token_works_once_and_its_second_use_ends_the_whole_session() {
    let (_database, server) = with_oskrel();
    let visitor = server.visitor();
    let first = visitor.sign_in_with(EMAIL, PASSWORD).expect(200);
    let second = visitor.refresh(&first.refresh).expect(200);
    assert_ne!(first.refresh, second.refresh);
    visitor.holding(&second.access).me().expect(200);

    visitor.refresh(&first.refresh).refused(401, "token-reuse");
    visitor
        .refresh(&second.refresh)
        .refused(401, "invalid-token");
    for tokens in [&first, &second] {
        let holder = visitor.holding(&tokens.access);
        holder.me().refused(401, "invalid-token");
    }
    visitor.sign_in_with(EMAIL, PASSWORD).expect(200);
}

#[test]
fn tokens_run_out_to_the_second() {
    let (database, server) = with_oskrel();
    let visitor = server.visitor();
    let tokens = visitor.sign_in_with(EMAIL, PASSWORD).expect(200);
    let holder = visitor.holding(&tokens.access);
    database.clock().advance(Duration::seconds(15 * 60 - 1));
    holder.me().expect(200);
    database.clock().advance(Duration::seconds(1));
    let refused = holder.me();
    assert_eq!(refused.header("www-authenticate"), Some("Bearer"));
    refused.refused(401, "invalid-token");

    let tokens = visitor.refresh(&tokens.refresh).expect(200);
    database.clock().advance(Duration::days(14));
    visitor
        .refresh(&tokens.refresh)
        .refused(401, "invalid-token");
}

#[test]
fn a_session_lasts_thirty_days_at_the_most_however_busy_it_is() {
    let (database, server) = with_oskrel();
    let visitor = server.visitor();
    let mut tokens = visitor.sign_in_with(EMAIL, PASSWORD).expect(200);
    for _ in 0..2 {
        database.clock().advance(Duration::days(10));
        tokens = visitor.refresh(&tokens.refresh).expect(200);
    }
    database.clock().advance(Duration::days(10));
    visitor
        .refresh(&tokens.refresh)
        .refused(401, "invalid-token");
}

#[test]
fn whoever_signs_out_is_out_at_once() {
    let (_database, server) = with_oskrel();
    let visitor = server.visitor();
    let tokens = visitor.sign_in_with(EMAIL, PASSWORD).expect(200);
    let holder = visitor.holding(&tokens.access);
    holder.sign_out().expect(204);
    holder.me().refused(401, "invalid-token");
    visitor
        .refresh(&tokens.refresh)
        .refused(401, "invalid-token");
}

#[test]
fn after_ten_failures_an_address_waits_a_quarter_of_an_hour_known_or_not() {
    let (database, server) = with_oskrel();
    let visitor = server.visitor();
    for email in [EMAIL, "nobody@example.org"] {
        for _ in 0..10 {
            visitor
                .sign_in_with(email, "not the password")
                .refused(401, "invalid-credentials");
        }
        for password in ["not the password", PASSWORD] {
            let answer = visitor.sign_in_with(email, password);
            assert_eq!(answer.header("retry-after"), Some("900"));
            answer.refused(429, "too-many-attempts");
        }
    }
    database.clock().advance(Duration::minutes(15));
    visitor.sign_in_with(EMAIL, PASSWORD).expect(200);
}

#[test]
fn thirty_wrong_passwords_at_once_are_ten_attempts_like_any_others() {
    let (_database, server) = with_oskrel();
    let visitor = server.visitor();
    let mut statuses: Vec<u16> = thread::scope(|scope| {
        let guess = || visitor.sign_in_with(EMAIL, "not the password").status;
        let guesses: Vec<_> = (0..30).map(|_| scope.spawn(guess)).collect();
        guesses.into_iter().map(|it| it.join().unwrap()).collect()
    });
    statuses.sort_unstable();
    assert_eq!(statuses, [[401; 10].as_slice(), &[429; 20]].concat());
    visitor
        .sign_in_with(EMAIL, PASSWORD)
        .refused(429, "too-many-attempts");
}

#[test]
fn a_role_that_was_taken_away_is_gone_with_the_next_request() {
    let database = Database::create();
    let server = Server::start(&database);
    let [wennable, ilkamar]: [Actor; 2] =
        ["Wennable", "Ilkamar"].map(|handle| server.register(handle));
    let founded = wennable.found_club("Lamplit Ford gaming circle", "lamplit-ford");
    let club = wennable.club_at(founded.location(201));
    let code = club.invite("organiser", 1, 1).expect(200).code;
    ilkamar.accept(&code).expect(200);
    let by_ilkamar = club.by(&ilkamar);
    by_ilkamar.invite("player", 1, 1).expect(200);

    club.appoint(&ilkamar, "player").expect(204);
    by_ilkamar.invite("player", 1, 1).refused(403, "forbidden");
}
