//! Texts, numbers, times and passwords.

use reqwest::Method;
use reqwest::blocking::RequestBuilder;
use serde_json::{Value, json};

use super::Started;
use crate::harness::{Said, SeasonBody};

#[test]
fn texts_keep_their_lengths_and_hide_nothing() {
    let started = Started::start();
    let clubs = "/api/v1/clubs";
    let leaves = started.stage.week(1).at("late-leaves");
    let reason = |text: String| json!({ "player": started.oskrel.id, "reason": text });
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
        let problem = started.nothing_written(name, || {
            started.stage.owner.post(path, &body).refused(422, code)
        });
        assert_eq!(problem.pointers(), [place], "{name}: {problem}");
    }
}

#[test]
fn numbers_out_of_range_are_told_with_their_limit() {
    let started = Started::start();
    let (club, week) = (&started.stage.club, started.stage.week(2).path.clone());
    let [invitations, seasons] = ["invitations", "seasons"].map(|part| club.at(part));
    let adjustments = started.stage.season.at("adjustments");
    let season = |change: &dyn Fn(&mut SeasonBody)| json!(started.season(change));
    let cases: [(&str, Method, &str, Value, &[Said<'_>]); 10] = [
        (
            "a week of no days with fifteen nights, one of them without a table",
            Method::POST,
            &seasons,
            season(&|body| {
                body.set("/calendar/days_per_week", 0);
                let night = |no: u8| json!({ "key": format!("n{no}"), "day": 5, "time": "19:00:00", "tables": no });
                body.set("/calendar/nights", (0..15).map(night).collect::<Value>());
            }),
            &[
                ("season.days", "/calendar/days_per_week", json!(1), json!(0)),
                ("season.nights", "/calendar/nights", json!(14), json!(15)),
                ("season.nights", "/calendar/nights", json!(1), json!(0)),
            ],
        ),
        (
            "silence for a month, and coming to the table costs",
            Method::POST,
            &seasons,
            season(&|body| {
                body.set("/policy/confirm_within_hours", 720);
                body.set("/policy/scoring/attendance", -1);
            }),
            &[
                (
                    "scoring.amount",
                    "/policy/scoring/attendance",
                    json!(0),
                    json!(-1),
                ),
                (
                    "policy.confirm",
                    "/policy/confirm_within_hours",
                    json!(336),
                    json!(720),
                ),
            ],
        ),
        (
            "a cap below that of the week before",
            Method::PATCH,
            &week,
            json!({ "cap": 299 }),
            &[("validation", "/cap", json!(300), json!(299))],
        ),
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
            season(&|body| {
                body.set("/grace_minutes", 1441);
                body.set("/places", 1);
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
            season(&|body| body.caps(&[300, 400, 399])),
            &[("season.caps", "/caps/caps/2", json!(400), json!(399))],
        ),
        (
            "no cap, and an absurd one",
            Method::POST,
            &seasons,
            season(&|body| body.caps(&[0, 100_001])),
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
        (
            "more points than a number can lose its sign of",
            Method::POST,
            &adjustments,
            json!({ "player": started.oskrel.id, "week": 1, "amount": i32::MIN, "reason": "x" }),
            &[("validation", "/amount", json!(-1000), json!(i32::MIN))],
        ),
        (
            "more points than a ruling gives",
            Method::POST,
            &adjustments,
            json!({ "player": started.oskrel.id, "week": 1, "amount": 1001, "reason": "x" }),
            &[("validation", "/amount", json!(1000), json!(1001))],
        ),
    ];
    for (name, method, path, body, expected) in cases {
        let ask = |request: RequestBuilder| request.json(&body);
        let problem = started.nothing_written(name, || {
            started
                .stage
                .owner
                .ask(method.clone(), path, ask)
                .refused(422, "validation")
        });
        assert_eq!(problem.said(), expected, "{name}: {problem}");
    }
}

#[test]
fn times_and_zones_that_do_not_exist_are_refused() {
    let started = Started::start();
    let zone = |zone: &str| started.season(|body| body.set("/zone", zone));
    // In the last night of March 2026 the clocks of Berlin go from two to three.
    let skipped = started.season(|body| {
        body.set("/calendar/first_day", "2026-03-25");
        body.set("/calendar/lists_due/time", "02:30:00");
    });
    let cases: [(&str, SeasonBody, &str, &str); 8] = [
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
            started.season(|body| body.set("/calendar/first_day", "2026-02-30")),
            "validation",
            "/calendar/first_day",
        ),
        (
            "the year 300000",
            started.season(|body| body.set("/calendar/first_day", "300000-01-01")),
            "validation",
            "/calendar/first_day",
        ),
        (
            "a 61st second",
            started.season(|body| body.set("/calendar/lists_due/time", "20:00:61")),
            "validation",
            "/calendar/lists_due/time",
        ),
        (
            "a deadline after the games",
            started.season(|body| body.set("/calendar/lists_due/day", 8)),
            "validation",
            "/calendar/nights",
        ),
    ];
    for (name, body, code, place) in cases {
        let problem = started.nothing_written(name, || {
            let created = started.stage.club.create_season(&body);
            created.refused(422, code)
        });
        assert_eq!(problem.pointers(), [place], "{name}: {problem}");
    }
}

#[test]
fn a_week_is_moved_to_no_time_that_never_comes_and_its_nights_have_plain_names() {
    let started = Started::start();
    let week = started.stage.week(3);
    let night = |key: &str| json!({ "nights": [{ "key": key, "begins": "2026-01-27T19:00:00", "tables": 4 }] });
    let mut cases: Vec<(Value, &str, &str)> = [
        "-9999-01-01T00:00:00",
        "0000-01-01T00:00:00",
        "9999-01-01T00:00:00",
        "+262000-01-01T00:00:00",
        "2026-01-25T23:59:60",
    ]
    .map(|time| {
        (
            json!({ "announce": time }),
            "invalid-local-time",
            "/announce",
        )
    })
    .into();
    for key in ["a\0b", "a\u{202e}b", "a\r\nb", "Tue", ""] {
        cases.push((night(key), "validation", "/nights/0/key"));
    }
    for (body, code, place) in cases {
        let problem = started.nothing_written("a week", || week.update(&body).refused(422, code));
        assert_eq!(problem.pointers(), [place], "{body}: {problem}");
    }
}

#[test]
fn nobody_plays_under_a_name_that_passes_for_another() {
    let started = Started::start();
    let newcomer = started.stage.welcome("Juddeth");
    let season = started.stage.season.by(&newcomer);
    let join = |handle| season.join(handle, "bramblestile-steadings", &["first"]);
    for (handle, status, code) in [
        ("oskrel", 409, "handle-taken"),
        ("\u{41e}skr\u{435}l", 409, "handle-taken"),
        ("\u{ff2f}skrel", 409, "handle-taken"),
        ("Oskrel\u{fe0f}", 422, "invalid-name"),
        ("Oskrel\u{17b4}", 422, "invalid-name"),
        ("\u{2800}", 422, "invalid-name"),
    ] {
        let problem = started.nothing_written(handle, || join(handle).refused(status, code));
        assert_eq!(problem.pointers(), ["/handle"], "{handle}: {problem}");
    }
    join("Oskrella").expect(201);
}

#[test]
fn people_and_passwords_are_held_to_the_rules() {
    let started = Started::start();
    let account = |member: &str, value: Value| {
        let mut body = json!({ "email": "new@example.org", "name": "New", "password": "six lanterns on the ford" });
        let members = body.as_object_mut().unwrap();
        members.insert(member.to_owned(), value);
        body
    };
    let cases: [(&str, Value, &str, &[Said<'_>]); 6] = [
        (
            "14 characters",
            account("password", json!("fourteen chars")),
            "password-too-short",
            &[("password-too-short", "/password", json!(15), json!(14))],
        ),
        (
            "257 characters",
            account("password", json!("x".repeat(257))),
            "validation",
            &[("validation", "/password", json!(256), json!(257))],
        ),
        (
            "a common one",
            account("password", json!("passwordpassword")),
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
            account("email", json!("new.example.org")),
            "validation",
            &[("validation", "/email", Value::Null, Value::Null)],
        ),
        (
            "a minor alone",
            account("minor", json!(true)),
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
            account("role", json!("owner")),
            "unknown-field",
            &[("unknown-field", "/role", Value::Null, Value::Null)],
        ),
    ];
    let visitor = started.stage.server.visitor();
    for (name, body, code, expected) in cases {
        let problem = started.nothing_written(name, || {
            visitor.post("/api/v1/accounts", &body).refused(422, code)
        });
        assert_eq!(problem.said(), expected, "{name}: {problem}");
    }
}
