//! Refusals in the language of whoever asks; what a person wrote stays as they wrote it.

use reqwest::Method;
use reqwest::blocking::RequestBuilder;
use serde_json::json;

use crate::harness::{Answer, Player, Stage};

/// Handles that are words of sentences, with what is refused about them: the languages asked for, the
/// one that is answered in, title and detail.
const HANDLES: [&str; 2] = ["nights", "King of week 2"];
const IN_ENGLISH: [&str; 3] = [
    "en",
    "The player has withdrawn",
    "{} does not play in week 1.",
];
const IN_GERMAN: [&str; 3] = [
    "de",
    "Wer ausgestiegen ist, spielt hier nicht mehr",
    "{} spielt in Woche 1 nicht mit.",
];
const IN_FRENCH: [&str; 3] = [
    "fr",
    "Le joueur s’est retiré",
    "{} ne joue pas en semaine 1.",
];

/// A draft with the two players that a season needs.
fn draft_of_two() -> Stage {
    let stage = Stage::draft();
    for handle in ["Juddeth", "Noorwin"] {
        stage.join(handle);
    }
    stage
}

/// Somebody of this handle has withdrawn before the season begins.
fn withdrawn(stage: &Stage, account: &str, handle: &str) -> Player {
    let actor = stage.welcome(account);
    let season = stage.season.by(&actor);
    let joined = season.join(handle, "bramblestile-steadings", &["first"]);
    let id = joined.expect(201).id;
    season.player(&id).withdraw().expect(200);
    Player { actor, id }
}

fn ask_leave(stage: &Stage, player: &Player, languages: Option<&str>) -> Answer {
    let body = json!({ "player": player.id, "reason": "Power cut in Mill Lane" });
    let build = |request: RequestBuilder| {
        let request = request.json(&body);
        match languages {
            Some(languages) => request.header("accept-language", languages),
            None => request,
        }
    };
    stage.week(1).ask(Method::POST, "late-leaves", build)
}

#[test]
fn a_program_is_refused_in_its_language_and_handles_stay_as_they_are() {
    let stage = draft_of_two();
    let leavers = ["Ferrel", "Garrick"];
    let leavers: Vec<(Player, &str)> = leavers
        .into_iter()
        .zip(HANDLES)
        .map(|(account, handle)| (withdrawn(&stage, account, handle), handle))
        .collect();
    stage.start();
    for (asked, [language, title, detail]) in [
        (None, IN_ENGLISH),
        (Some("*"), IN_ENGLISH),
        (Some("it, den;q=0.5"), IN_ENGLISH),
        (Some("en-GB, de;q=0.9"), IN_ENGLISH),
        (Some("de-AT, en;q=0.5"), IN_GERMAN),
        (Some("en;q=0.2, fr-CA;q=0.8"), IN_FRENCH),
    ] {
        for (player, handle) in &leavers {
            let answer = ask_leave(&stage, player, asked);
            assert_eq!(answer.header("content-language"), Some(language));
            let vary = answer.header("vary").unwrap().to_lowercase();
            assert!(vary.contains("accept-language"), "{vary}");
            let problem = answer.refused(409, "player-left");
            assert_eq!(problem.member("title"), title, "{asked:?}");
            assert_eq!(problem.detail, detail.replace("{}", handle), "{asked:?}");
        }
    }
}

#[test]
fn the_faults_of_a_body_are_told_in_the_language_too() {
    let stage = Stage::draft();
    for (language, detail, unknown) in [
        (
            "en",
            "The name has 61 characters; at most 60 are allowed.",
            "`colour` is no field here; known: `name` or `slug`.",
        ),
        (
            "de",
            "Der Name hat 61 Zeichen; höchstens 60 sind erlaubt.",
            "`colour` ist hier kein Feld; bekannt: `name` oder `slug`.",
        ),
        (
            "fr",
            "Le nom a 61 caractères\u{202f}; 60 au plus sont permis.",
            "`colour` n’est pas un champ ici\u{202f}; connus\u{202f}: `name` ou `slug`.",
        ),
    ] {
        let post = |body: serde_json::Value| {
            let build =
                |request: RequestBuilder| request.json(&body).header("accept-language", language);
            stage.season.actor.ask(Method::POST, "/api/v1/clubs", build)
        };
        let long = post(json!({ "name": "x".repeat(61), "slug": "long-name" }));
        assert_eq!(long.refused(422, "invalid-name").fault().detail, detail);
        let strange = post(json!({ "name": "Ford", "slug": "ford", "colour": "red" }));
        assert_eq!(
            strange.refused(422, "unknown-field").fault().detail,
            unknown
        );
    }
}

#[test]
fn a_page_tells_a_refusal_in_its_language_and_handles_stay_as_they_are() {
    let stage = draft_of_two();
    let player = withdrawn(&stage, "Ferrel", "King of week 2");
    stage.start();
    let browser = stage.server.browser("Wennable");
    let board = browser.get(&stage.season.page("board")).with_status(200);
    let board = board.text();
    let (_, rest) = board.split_once("name=\"token\" value=\"").unwrap();
    let token = rest.split('"').next().unwrap();
    let fields = format!("token={token}&player={}&reason=Power+cut", player.id);
    for [language, _, detail] in [IN_ENGLISH, IN_GERMAN, IN_FRENCH] {
        let build = |request: RequestBuilder| {
            request
                .header("accept-language", language)
                .header("content-type", "application/x-www-form-urlencoded")
                .body(fields.clone())
        };
        let path = stage.week(1).page("late-leaves");
        let page = browser.ask(Method::POST, &path, build).with_status(409);
        let page = page.text();
        let told = format!("<li>{}</li>", detail.replace("{}", "King of week 2"));
        assert!(page.contains(&told), "{told} is not in {page}");
    }
}
