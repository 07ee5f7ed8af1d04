//! Forms that did not come from our own pages are refused, and no address that is only looked at
//! changes anything (OWASP ASVS 5.0, 3.5; section number from memory).

use reqwest::Method;
use reqwest::blocking::RequestBuilder;

use crate::harness::{Actor, Answer, Database, Server};
use crate::sources::files;

#[test]
fn no_form_is_taken_without_a_token_of_our_own() {
    let database = Database::create();
    let server = Server::start(&database);
    let visitor = server.visitor();
    let forms = form_addresses();
    assert!(forms.len() > 20, "{forms:?}");
    for address in forms {
        for token in ["", "token=", "token=0123456789abcdef.0123456789abcdef"] {
            let answer = send(&visitor, &address, token, &[("cookie", "__Host-visit=abc")]);
            refused(answer);
        }
    }
}

#[test]
fn a_form_sent_from_another_site_is_refused_even_with_a_genuine_token() {
    let database = Database::create();
    let server = Server::start(&database);
    let visitor = server.visitor();
    let page = visitor.get("/sign-in");
    let cookie = page.header("set-cookie").unwrap().to_owned();
    for part in [
        "__Host-visit=",
        "HttpOnly",
        "Secure",
        "SameSite=Lax",
        "Path=/",
    ] {
        assert!(cookie.contains(part), "{part} is not in {cookie}");
    }
    let secret = cookie.split(';').next().unwrap();
    let text = page.text();
    let (_, rest) = text.split_once("name=\"token\" value=\"").unwrap();
    let token = rest.split('"').next().unwrap();
    let body = format!("token={token}&language=de&back=/sign-in");
    for (name, value) in [
        ("origin", "https://elsewhere.example"),
        ("origin", "null"),
        ("sec-fetch-site", "cross-site"),
        ("sec-fetch-site", "same-site"),
    ] {
        let headers = [("cookie", secret), (name, value)];
        refused(send(&visitor, "/language", &body, &headers));
    }
    let own = [("cookie", secret), ("sec-fetch-site", "same-origin")];
    let answer = send(&visitor, "/language", &body, &own).with_status(303);
    assert_eq!(answer.header("location"), Some("/sign-in"));
    for elsewhere in [
        "//elsewhere.example",
        "/%0B/elsewhere.example",
        "/%00",
        "/%C3%A4",
    ] {
        let foreign = body.replace("back=/sign-in", &format!("back={elsewhere}"));
        let answer = send(&visitor, "/language", &foreign, &own).with_status(303);
        assert_eq!(answer.header("location"), Some("/"), "{elsewhere}");
    }
}

/// A season that a visitor may not see and one that does not exist look the same.
#[test]
fn who_must_be_signed_in_is_asked_to_before_the_season_is_looked_up() {
    let database = Database::create();
    let server = Server::start(&database);
    let visitor = server.visitor();
    let nobody = "00000000-0000-4000-8000-000000000000";
    let season = format!("/clubs/{nobody}/seasons/{nobody}");
    for page in [
        "mine",
        "board",
        "results",
        "points",
        "next",
        "weeks/1/list",
        "weeks/1/list/receipt",
        "weeks/1/list/paste",
        "weeks/1/pairing",
        "weeks/1/repair",
        "weeks/1/sheet",
        "weeks/53/sheet",
    ] {
        visitor.get(&format!("{season}/{page}")).with_status(401);
    }
    let game = format!("games/{nobody}");
    let player = format!("players/{nobody}");
    for page in [
        "standings",
        "painting",
        "end",
        "weeks/1",
        "weeks/53",
        &game,
        &player,
    ] {
        visitor.get(&format!("{season}/{page}")).with_status(404);
    }
}

#[test]
fn pages_speak_the_readers_language() {
    let database = Database::create();
    let server = Server::start(&database);
    let in_german = |request: RequestBuilder| request.header("accept-language", "de-AT, en;q=0.5");
    let page = server
        .visitor()
        .ask(Method::GET, "/", in_german)
        .with_status(200)
        .text();
    assert!(page.contains("<html lang=\"de\">"), "{page}");
    assert!(page.contains("Anmelden"), "{page}");
}

/// Every address that takes a form, with something in the place of its parameters.
fn form_addresses() -> Vec<String> {
    let sources = files("server/web/src/pages", ".rs");
    let lines = sources.iter().flat_map(|source| source.text.lines());
    let addresses = lines.filter_map(|line| line.strip_prefix("#[post(\"")?.strip_suffix("\")]"));
    let nobody = "00000000-0000-0000-0000-000000000000";
    addresses
        .map(|address| {
            let filled = address.replace("{week}", "1");
            let parts = filled
                .split('/')
                .map(|part| if part.starts_with('{') { nobody } else { part });
            parts.collect::<Vec<_>>().join("/")
        })
        .collect()
}

fn send(actor: &Actor, address: &str, body: &str, headers: &[(&str, &str)]) -> Answer {
    actor.ask(Method::POST, address, |request| {
        let request = request
            .header("content-type", "application/x-www-form-urlencoded")
            .body(body.to_owned());
        headers.iter().fold(request, |request, (name, value)| {
            request.header(*name, *value)
        })
    })
}

#[track_caller]
fn refused(answer: Answer) {
    answer.refused(403, "csrf");
}
