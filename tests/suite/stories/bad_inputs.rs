//! Requests that must be refused: the right problem, the field, limit and actual value, and nothing
//! written.

use reqwest::Method;
use reqwest::blocking::RequestBuilder;
use serde_json::{Value, json};

use crate::harness::{Actor, Answer, Player, Stage, demo_list};

/// What one fault must say: code, pointer, limit, actual.
type Said<'a> = (&'a str, &'a str, Value, Value);

#[test]
fn a_list_that_breaks_the_week_is_refused_with_every_breach() {
    let scene = Scene::set();
    let seal = |list: &Value| {
        scene
            .oskrel
            .actor
            .post(&format!("{}/list/seal", scene.stage.week(1)), list)
    };
    let cases: [(&str, Value, &str, &[Said<'_>]); 6] = [
        (
            "one point over the cap",
            steadings(&[
                ("hedge-reeve", 1, &["thorn-crook"]),
                ("orchard-levy", 10, &[]),
                ("orchard-levy", 20, &[]),
                ("threshers", 4, &[]),
            ]),
            "points-cap-exceeded",
            &[("list.over-cap", "", json!(300), json!(301))],
        ),
        (
            "a unit that nobody knows",
            steadings(&[
                ("hedge-reeve", 1, &[]),
                ("orchard-levy", 10, &[]),
                ("moon-hares", 6, &[]),
            ]),
            "list-breaks-rules",
            &[("list.unknown-unit", "/entries/2", Value::Null, Value::Null)],
        ),
        (
            "an option of another unit",
            steadings(&[
                ("hedge-reeve", 1, &["spare-bell"]),
                ("orchard-levy", 10, &[]),
            ]),
            "list-breaks-rules",
            &[(
                "list.unknown-option",
                "/entries/0",
                Value::Null,
                Value::Null,
            )],
        ),
        (
            "no models, and more than any army has",
            steadings(&[
                ("hedge-reeve", 1, &[]),
                ("orchard-levy", 0, &[]),
                ("orchard-levy", u32::MAX, &[]),
            ]),
            "list-breaks-rules",
            &[
                ("list.unit-size", "/entries/1", json!(10), json!(0)),
                ("list.unit-size", "/entries/2", json!(20), json!(u32::MAX)),
            ],
        ),
        (
            "another faction",
            demo_list("Corvanel", 1),
            "list-breaks-rules",
            &[("list.faction-lock", "", Value::Null, Value::Null)],
        ),
        (
            "nothing at all",
            steadings(&[]),
            "list-breaks-rules",
            &[
                ("list.kind-count", "", json!(1), json!(0)),
                ("list.kind-count", "", json!(1), json!(0)),
            ],
        ),
    ];
    for (name, list, code, expected) in cases {
        let problem = scene.nothing_written(name, || seal(&list).refused(422, code));
        assert_eq!(said(&problem), expected, "{name}: {problem}");
    }
}

#[test]
fn a_body_that_is_none_is_refused_by_its_place() {
    let scene = Scene::set();
    let over = "x".repeat(61);
    let cases: [(&str, &str, u16, &str, &[&str]); 17] = [
        (
            "negative",
            r#"{"faction":"a","entries":[{"key":"a","unit":"b","models":-3}]}"#,
            422,
            "validation",
            &["/entries/0/models"],
        ),
        (
            "2^32",
            r#"{"faction":"a","entries":[{"key":"a","unit":"b","models":4294967296}]}"#,
            422,
            "validation",
            &["/entries/0/models"],
        ),
        (
            "a text for a number",
            r#"{"faction":"a","entries":[{"key":"a","unit":"b","models":"8"}]}"#,
            422,
            "validation",
            &["/entries/0/models"],
        ),
        (
            "a fraction",
            r#"{"faction":"a","entries":[{"key":"a","unit":"b","models":8.0}]}"#,
            422,
            "validation",
            &["/entries/0/models"],
        ),
        (
            "an exponent",
            r#"{"faction":"a","entries":[{"key":"a","unit":"b","models":1e2}]}"#,
            422,
            "validation",
            &["/entries/0/models"],
        ),
        (
            "not a number",
            r#"{"faction":"a","entries":[{"key":"a","unit":"b","models":NaN}]}"#,
            400,
            "malformed-json",
            &[],
        ),
        (
            "a time of one's own",
            r#"{"faction":"a","entries":[],"submitted_at":"2026-01-01T00:00:00Z"}"#,
            422,
            "unknown-field",
            &["/submitted_at"],
        ),
        (
            "a field too few",
            r#"{"faction":"a"}"#,
            422,
            "validation",
            &[""],
        ),
        (
            "the same key twice",
            r#"{"faction":"a","entries":[{"key":"a","unit":"b","models":1},{"key":"a","unit":"b","models":1}]}"#,
            422,
            "validation",
            &["/entries/1/key"],
        ),
        (
            "keys that are none",
            r#"{"faction":"A B","entries":[{"key":"","unit":"../x","models":1}]}"#,
            422,
            "validation",
            &["/faction", "/entries/0/key", "/entries/0/unit"],
        ),
        (
            "U+0000",
            "{\"faction\":\"a\\u0000\",\"entries\":[]}",
            422,
            "validation",
            &["/faction"],
        ),
        (
            "half a surrogate pair",
            r#"{"faction":"\ud800","entries":[]}"#,
            400,
            "malformed-json",
            &[],
        ),
        (
            "a doubled name",
            r#"{"faction":"a","faction":"b","entries":[]}"#,
            400,
            "malformed-json",
            &[],
        ),
        (
            "more after the end",
            r#"{"faction":"a","entries":[]} {}"#,
            400,
            "malformed-json",
            &[],
        ),
        (
            "a byte order mark",
            "\u{feff}{\"faction\":\"a\",\"entries\":[]}",
            400,
            "malformed-json",
            &[],
        ),
        (
            "cut off",
            r#"{"faction":"a","entries":["#,
            400,
            "malformed-json",
            &[],
        ),
        ("nothing", "", 400, "malformed-json", &[]),
    ];
    let path = format!("{}/list/seal", scene.stage.week(1));
    for (name, body, status, code, places) in cases {
        let problem = scene.nothing_written(name, || {
            json_text(&scene.oskrel.actor, Method::POST, &path, body).refused(status, code)
        });
        assert_eq!(pointers(&problem), places, "{name}: {problem}");
    }
    let many = json!({ "faction": "a", "entries": vec![json!({ "key": over, "unit": "b", "models": 1 }); 201] });
    let problem = scene.nothing_written("201 entries", || {
        scene
            .oskrel
            .actor
            .post(&path, &many)
            .refused(422, "validation")
    });
    assert_eq!(pointers(&problem).len(), 201);
}

#[test]
fn texts_keep_their_lengths_and_hide_nothing() {
    let scene = Scene::set();
    let clubs = "/api/v1/clubs";
    let leaves = format!("{}/late-leaves", scene.stage.week(1));
    let reason = |text: String| json!({ "player": scene.oskrel.id, "reason": text });
    let named = |name: &str| json!({ "name": name, "slug": "another" });
    let cases: [(&str, &str, Value, &str, &str); 9] = [
        (
            "61 letters",
            clubs,
            named(&"x".repeat(61)),
            "invalid-name",
            "/name",
        ),
        (
            "no letter",
            clubs,
            named(" \u{a0} "),
            "invalid-name",
            "/name",
        ),
        (
            "U+0000 in a name",
            clubs,
            named("Lamplit\0Ford"),
            "invalid-name",
            "/name",
        ),
        (
            "right to left override",
            clubs,
            named("Lamplit\u{202e}Ford"),
            "invalid-name",
            "/name",
        ),
        (
            "a tower of marks",
            clubs,
            named(&format!("x{}", "\u{316}".repeat(10_000))),
            "invalid-name",
            "/name",
        ),
        (
            "a short name with capitals",
            clubs,
            json!({ "name": "Lamplit Ford", "slug": "Lamplit" }),
            "validation",
            "/slug",
        ),
        (
            "4,001 letters",
            &leaves,
            reason("x".repeat(4_001)),
            "invalid-text",
            "/reason",
        ),
        (
            "U+0000 in a text",
            &leaves,
            reason("power\0cut".to_owned()),
            "invalid-text",
            "/reason",
        ),
        (
            "no reason",
            &leaves,
            reason(String::new()),
            "invalid-text",
            "/reason",
        ),
    ];
    for (name, path, body, code, place) in cases {
        let problem = scene.nothing_written(name, || {
            scene.stage.wennable.post(path, &body).refused(422, code)
        });
        assert_eq!(pointers(&problem), [place], "{name}: {problem}");
    }
}

#[test]
fn numbers_out_of_range_are_told_with_their_limit() {
    let scene = Scene::set();
    let (club, week) = (&scene.stage.club, scene.stage.week(2));
    let invitations = format!("{club}/invitations");
    let seasons = format!("{club}/seasons");
    let cases: [(&str, Method, &str, Value, &[Said<'_>]); 5] = [
        (
            "an invitation for nobody, for ever",
            Method::POST,
            &invitations,
            json!({ "role": "player", "uses": 0, "days": 91 }),
            &[
                ("validation", "/uses", json!(1), json!(0)),
                ("validation", "/days", json!(90), json!(91)),
            ],
        ),
        (
            "a grace of more than a day, and one place",
            Method::POST,
            &seasons,
            scene.season(|body| {
                body["grace_minutes"] = json!(1441);
                body["places"] = json!(1);
            }),
            &[
                ("validation", "/grace_minutes", json!(1440), json!(1441)),
                ("validation", "/places", json!(2), json!(1)),
            ],
        ),
        (
            "a falling cap",
            Method::POST,
            &seasons,
            scene.season(|body| body["caps"] = json!({ "kind": "list", "caps": [300, 400, 399] })),
            &[("season.caps", "/caps/caps/2", json!(400), json!(399))],
        ),
        (
            "no cap, and an absurd one",
            Method::POST,
            &seasons,
            scene.season(|body| body["caps"] = json!({ "kind": "list", "caps": [0, 100_001] })),
            &[
                ("season.caps", "/caps/caps/0", json!(1), json!(0)),
                (
                    "season.caps",
                    "/caps/caps/1",
                    json!(100_000),
                    json!(100_001),
                ),
            ],
        ),
        (
            "a catalogue version that is to come",
            Method::PATCH,
            &week,
            json!({ "catalogue_number": 2 }),
            &[("validation", "/catalogue_number", json!(1), json!(2))],
        ),
    ];
    for (name, method, path, body, expected) in cases {
        let ask = |request: RequestBuilder| request.json(&body);
        let problem = scene.nothing_written(name, || {
            scene
                .stage
                .wennable
                .ask(method.clone(), path, ask)
                .refused(422, "validation")
        });
        assert_eq!(said(&problem), expected, "{name}: {problem}");
    }
}

#[test]
fn times_and_zones_that_do_not_exist_are_refused() {
    let scene = Scene::set();
    let seasons = format!("{}/seasons", scene.stage.club);
    let zone = |zone: &str| scene.season(|body| body["zone"] = json!(zone));
    // In the last night of March 2026 the clocks of Berlin go from two to three.
    let skipped = scene.season(|body| {
        body["calendar"]["first_day"] = json!("2026-03-25");
        body["calendar"]["lists_due"]["time"] = json!("02:30:00");
    });
    let cases: [(&str, Value, &str, &str); 8] = [
        ("an offset", zone("GMT+25"), "unknown-zone", "/zone"),
        (
            "a path",
            zone("../../etc/localtime"),
            "unknown-zone",
            "/zone",
        ),
        ("no zone", zone(""), "unknown-zone", "/zone"),
        (
            "a skipped hour",
            skipped,
            "invalid-local-time",
            "/calendar/lists_due",
        ),
        (
            "no such day",
            scene.season(|body| body["calendar"]["first_day"] = json!("2026-02-30")),
            "validation",
            "/calendar/first_day",
        ),
        (
            "the year 300000",
            scene.season(|body| body["calendar"]["first_day"] = json!("300000-01-01")),
            "validation",
            "/calendar/first_day",
        ),
        (
            "a 61st second",
            scene.season(|body| body["calendar"]["lists_due"]["time"] = json!("20:00:61")),
            "validation",
            "/calendar/lists_due/time",
        ),
        (
            "a deadline after the games",
            scene.season(|body| body["calendar"]["lists_due"]["day"] = json!(8)),
            "validation",
            "/calendar/nights",
        ),
    ];
    for (name, body, code, place) in cases {
        let problem = scene.nothing_written(name, || {
            scene
                .stage
                .wennable
                .post(&seasons, &body)
                .refused(422, code)
        });
        assert_eq!(pointers(&problem), [place], "{name}: {problem}");
    }
}

#[test]
fn people_and_passwords_are_held_to_the_rules() {
    let scene = Scene::set();
    let account = |change: &dyn Fn(&mut Value)| {
        let mut body = json!({ "email": "new@example.org", "name": "New", "password": "six lanterns on the ford" });
        change(&mut body);
        body
    };
    let cases: [(&str, Value, &str, &[Said<'_>]); 6] = [
        (
            "14 characters",
            account(&|body| body["password"] = json!("fourteen chars")),
            "password-too-short",
            &[("password-too-short", "/password", json!(15), json!(14))],
        ),
        (
            "257 characters",
            account(&|body| body["password"] = json!("x".repeat(257))),
            "validation",
            &[("validation", "/password", json!(256), json!(257))],
        ),
        (
            "a common one",
            account(&|body| body["password"] = json!("passwordpassword")),
            "password-compromised",
            &[(
                "password-compromised",
                "/password",
                Value::Null,
                Value::Null,
            )],
        ),
        (
            "no address",
            account(&|body| body["email"] = json!("new.example.org")),
            "validation",
            &[("validation", "/email", Value::Null, Value::Null)],
        ),
        (
            "a minor alone",
            account(&|body| body["minor"] = json!(true)),
            "guardian-consent-required",
            &[(
                "guardian-consent-required",
                "/guardian_consent",
                Value::Null,
                Value::Null,
            )],
        ),
        (
            "a role of one's own",
            account(&|body| body["role"] = json!("owner")),
            "unknown-field",
            &[("unknown-field", "/role", Value::Null, Value::Null)],
        ),
    ];
    let visitor = scene.stage.server.visitor();
    for (name, body, code, expected) in cases {
        let problem = scene.nothing_written(name, || {
            visitor.post("/api/v1/accounts", &body).refused(422, code)
        });
        assert_eq!(said(&problem), expected, "{name}: {problem}");
    }
}

#[test]
fn a_body_must_have_its_type_and_its_size() {
    let scene = Scene::set();
    let (oskrel, wennable) = (&scene.oskrel.actor, &scene.stage.wennable);
    let check = format!("{}/list/check", scene.stage.week(1));
    let list = demo_list("Oskrel", 1).to_string();
    for kind in [
        "text/plain",
        "application/json; charset=utf-16",
        "application/xml",
        "",
    ] {
        let typed =
            |request: RequestBuilder| request.header("content-type", kind).body(list.clone());
        oskrel
            .ask(Method::POST, &check, typed)
            .refused(415, "unsupported-media-type");
    }
    let untyped = |request: RequestBuilder| request.body(list.clone());
    oskrel
        .ask(Method::POST, &check, untyped)
        .refused(415, "unsupported-media-type");

    let limit = 64 * 1024;
    let padded = |bytes: usize| format!("{}{list}", " ".repeat(bytes - list.len()));
    json_text(oskrel, Method::POST, &check, &padded(limit)).expect(200);
    let problem = json_text(oskrel, Method::POST, &check, &padded(limit + 1))
        .refused(413, "payload-too-large");
    assert_eq!(problem["limit"], limit);

    let catalogue = wennable
        .get(&format!("{}/catalogues", scene.stage.club))
        .expect(200)[0]["id"]
        .clone();
    let versions = format!(
        "{}/catalogues/{}/versions",
        scene.stage.club,
        catalogue.as_str().unwrap()
    );
    let limit = 4 * 1024 * 1024;
    let problem = scene.nothing_written("a huge catalogue", || {
        json_text(wennable, Method::POST, &versions, &" ".repeat(limit + 1))
            .refused(413, "payload-too-large")
    });
    assert_eq!(problem["limit"], limit);
    let negative = json!({ "factions": [{ "key": "f", "name": "F", "units": [
        { "key": "u", "name": "U", "kind": "line", "sizes": [{ "models": 1, "points": -5 }], "minutes_per_model": 1 }
    ]}]});
    let problem = scene.nothing_written("negative points", || {
        wennable
            .post(&versions, &negative)
            .refused(422, "invalid-catalogue")
    });
    assert_eq!(pointers(&problem), ["/factions/0/units/0/sizes/0/points"]);
}

#[test]
fn what_is_not_there_and_what_is_not_allowed_are_told_apart() {
    let scene = Scene::set();
    let (club, season) = (&scene.stage.club, &scene.stage.season);
    let oskrel = &scene.oskrel.actor;
    for path in [
        "/nowhere",
        "/api/v1/nowhere",
        "/api/v1/clubs/1",
        "/api/v1/clubs/00000000-0000-0000-0000-000000000000",
        &format!("{club}/seasons/none"),
        &format!("{season}/weeks/0"),
        &format!("{season}/weeks/9"),
        &format!("{season}/weeks/300"),
        &format!("{season}/weeks/-1"),
        &format!("{season}/weeks/1.0"),
    ] {
        oskrel.get(path).refused(404, "not-found");
    }
    for (method, path, allowed) in [
        (Method::DELETE, club.clone(), "GET"),
        (Method::PUT, format!("{season}/weeks/1/list/seal"), "POST"),
        (Method::TRACE, format!("{season}/weeks/1"), "GET, PATCH"),
    ] {
        let answer = oskrel.ask(method, &path, |request| request);
        let mut allow: Vec<&str> = answer.header("allow").unwrap().split(", ").collect();
        allow.sort_unstable();
        assert_eq!(allow.join(", "), allowed);
        answer.refused(405, "method-not-allowed");
    }
    for query in [
        "limit=0",
        "limit=101",
        "limit=ten",
        "limit=1&limit=2",
        "sort=points",
    ] {
        oskrel
            .get(&format!("{season}/trail?{query}"))
            .refused(400, "invalid-parameter");
    }
}

#[test]
fn a_token_that_is_not_ours_opens_nothing() {
    let scene = Scene::set();
    let stranger = scene.stage.server.visitor();
    let header = "eyJhbGciOiJub25lIiwidHlwIjoiYXQrand0In0";
    let claims = "eyJpc3MiOiJ0YWxseWhvc3QiLCJhdWQiOiJ0YWxseWhvc3QiLCJzdWIiOiIwMDAwMDAwMC0wMDAwLTAwMDAtMDAwMC0wMDAwMDAwMDAwMDAiLCJleHAiOjQwMDAwMDAwMDB9";
    for authorization in [
        format!("Bearer {header}.{claims}."),
        format!("Bearer {header}.{claims}.AAAA"),
        "Bearer ".to_owned(),
        "Bearer x".to_owned(),
        "Basic b3NrcmVsOng=".to_owned(),
    ] {
        let with =
            |request: RequestBuilder| request.header("authorization", authorization.as_str());
        for path in ["/api/v1/accounts/me", &scene.stage.season] {
            let answer = stranger.ask(Method::GET, path, with);
            assert_eq!(
                answer.header("www-authenticate"),
                Some("Bearer"),
                "{authorization}"
            );
            answer.refused(401, "invalid-token");
        }
    }
    stranger
        .get("/api/v1/accounts/me")
        .refused(401, "sign-in-needed");
}

#[test]
fn a_change_says_which_version_it_changes() {
    let scene = Scene::set();
    let wennable = &scene.stage.wennable;
    let rename = |tag: Option<&str>| {
        let dress = |request: RequestBuilder| {
            let request = request.json(&json!({ "name": "Winter at the ford" }));
            match tag {
                Some(tag) => request.header("if-match", tag),
                None => request,
            }
        };
        wennable.ask(Method::PATCH, &scene.stage.season, dress)
    };
    rename(None).refused(428, "precondition-required");
    rename(Some("1")).refused(400, "invalid-parameter");
    rename(Some("\"0\"")).refused(412, "version-mismatch");
    let current = wennable.get(&scene.stage.season).with_status(200);
    rename(current.header("etag")).expect(200);
}

/// A started season with a player.
struct Scene {
    stage: Stage,
    oskrel: Player,
}

impl Scene {
    fn set() -> Self {
        let stage = Stage::draft();
        let oskrel = stage.join("Oskrel");
        stage.start();
        // Whose token has run out gets another, and that is written.
        for person in [&stage.wennable, &oskrel.actor] {
            person.get("/api/v1/accounts/me").expect(200);
        }
        Self { stage, oskrel }
    }

    /// The body of another season.
    fn season(&self, change: impl FnOnce(&mut Value)) -> Value {
        let mut body = self.stage.season_body();
        change(&mut body);
        body
    }

    /// The answer to a request that leaves every table as it was.
    #[track_caller]
    fn nothing_written(&self, name: &str, ask: impl FnOnce() -> Value) -> Value {
        let before = self.facts();
        let answer = ask();
        let after = self.facts();
        let changed: Vec<_> = after.iter().filter(|fact| !before.contains(fact)).collect();
        assert!(changed.is_empty(), "{name} wrote: {changed:?}");
        answer
    }

    /// A digest of every table.
    fn facts(&self) -> Vec<String> {
        let tables = self.stage.database.texts(
            "SELECT table_name::text FROM information_schema.tables
            WHERE table_schema = 'public' ORDER BY 1",
        );
        let digests: Vec<String> = tables
            .iter()
            .map(|table| format!("SELECT '{table} ' || coalesce(md5(string_agg(t::text, E'\\n' ORDER BY t::text)), '') FROM {table} t"))
            .collect();
        self.stage.database.texts(&digests.join(" UNION ALL "))
    }
}

fn steadings(units: &[(&str, u32, &[&str])]) -> Value {
    let entries = units.iter().enumerate().map(|(place, (unit, models, options))| {
        let options: Value = options.iter().map(|option| ((*option).to_owned(), json!(1))).collect();
        json!({ "key": format!("unit-{place}"), "unit": unit, "models": models, "options": options })
    });
    json!({ "faction": "bramblestile-steadings", "entries": entries.collect::<Vec<_>>() })
}

fn json_text(who: &Actor, method: Method, path: &str, text: &str) -> Answer {
    let dress = |request: RequestBuilder| {
        request
            .header("content-type", "application/json")
            .body(text.to_owned())
    };
    who.ask(method, path, dress)
}

fn faults(problem: &Value) -> &[Value] {
    problem["errors"].as_array().map_or(&[], Vec::as_slice)
}

fn pointers(problem: &Value) -> Vec<&str> {
    faults(problem)
        .iter()
        .map(|fault| fault["pointer"].as_str().unwrap())
        .collect()
}

fn said(problem: &Value) -> Vec<Said<'_>> {
    faults(problem)
        .iter()
        .map(|fault| {
            (
                fault["code"].as_str().unwrap(),
                fault["pointer"].as_str().unwrap(),
                fault["limit"].clone(),
                fault["actual"].clone(),
            )
        })
        .collect()
}
