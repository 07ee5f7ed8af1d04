//! Worlds that are equal but for one player's list look the same to everybody else, through every
//! door that is read.

use std::collections::BTreeMap;

use reqwest::Method;
use serde_json::{Value, json};

use super::lists::{DEADLINE, open, save_draft, seal, without_last_entry};
use super::roles::operations;
use crate::harness::{Actor, Answer, Player, Stage, demo_list};

/// Filters and orders that might tell of something hidden. Where an operation knows none of them, the
/// refusal must not tell either.
const QUERIES: [&str; 4] = ["", "?since=1", "?week=1", "?sort=points"];

/// Conditions and ranges that would be met by the hidden list's own revision or bytes.
const HEADERS: [(&str, &str); 3] = [
    ("if-none-match", "\"1\""),
    ("if-none-match", "*"),
    ("range", "bytes=0-9"),
];

/// What players ask about lists of their own, and what is refused before the deadline.
const POSTS: [&str; 7] = [
    "check_list",
    "read_list",
    "find_fits",
    "find_changes",
    "open_lists",
    "propose_round",
    "close_week",
];

#[test]
fn a_sealed_list_and_a_missing_one_look_the_same_and_so_do_two_different_ones() {
    let cast = Cast::assemble();
    let Cast {
        worlds,
        oskrel,
        people,
        ..
    } = &cast;
    let [_, whole, smaller] = worlds;
    seal(whole, &led(oskrel, whole), 1, &demo_list("Oskrel", 1)).expect(201);
    let list = without_last_entry(demo_list("Oskrel", 1));
    let player = led(oskrel, smaller);
    smaller.clock().show("2026-01-08T18:03:00+01:00");
    save_draft(smaller, &player, None, &list).expect(200);
    seal(smaller, &player, 1, &without_last_entry(list.clone())).expect(201);
    seal(smaller, &player, 1, &list).expect(201);
    for world in worlds {
        world.clock().show("2026-01-08T18:05:00+01:00");
    }

    for (name, person, runs_season) in people {
        let [in_missing, in_whole, in_smaller] = cast.look_in_each(person);
        let other = differences(&in_whole, &in_smaller);
        assert!(other.is_empty(), "{name} sees another list: {other:#?}");
        let present = differences(&in_missing, &in_whole);
        let only_states = |(seen, _): &(&Seen, &Seen)| seen.asked.contains("/weeks/1/lists");
        if *runs_season {
            assert!(
                !present.is_empty(),
                "{name} should see that there is a list"
            );
            assert!(present.iter().all(only_states), "{name}: {present:#?}");
        } else {
            assert!(
                present.is_empty(),
                "{name} sees that there is a list: {present:#?}"
            );
        }
    }
    let [_, in_whole, in_smaller] = cast.look_in_each(&oskrel.actor);
    let own = differences(&in_whole, &in_smaller);
    for door in ["/weeks/1/list", "/collection"] {
        let opens = |(seen, _): &(&Seen, &Seen)| seen.asked.ends_with(door);
        assert!(own.iter().any(opens), "the owner sees {door}");
    }

    for world in [whole, smaller] {
        world.clock().show(DEADLINE);
        open(world, 1).expect(204);
    }
    let lists = format!("{}/lists", whole.week(1));
    let [one, other] = [whole, smaller].map(|world| {
        let visitor = world.server.visitor();
        Seen::new(visitor.get(&lists).with_status(200))
    });
    assert_ne!(one, other, "once opened, everybody sees them");
}

/// A season whose first week is announced, three times over.
struct Cast {
    worlds: [Stage; 3],
    /// Whose list is the secret.
    oskrel: Player,
    /// Everybody else, and whether they run the season and so learn who has a list. Wennable runs it
    /// and plays in it.
    people: Vec<(&'static str, Actor, bool)>,
    operations: BTreeMap<String, (Method, String)>,
}

impl Cast {
    fn assemble() -> Self {
        let stage = Stage::draft();
        let [oskrel, corvanel, _] = ["Oskrel", "Corvanel", "Wennable"].map(|name| stage.join(name));
        let people = vec![
            ("visitor", stage.server.visitor(), false),
            ("stranger", stage.server.register("Stranger"), false),
            ("rival", corvanel.actor.clone(), false),
            ("referee", stage.appoint("Ilkamar", "referee"), false),
            ("organiser", stage.appoint("Kestanby", "organiser"), true),
            ("owner who plays", stage.wennable.clone(), true),
        ];
        stage.start();
        seal(&stage, &corvanel, 1, &demo_list("Corvanel", 1)).expect(201);
        for (_, person, _) in people.iter().skip(1) {
            // Signed in before the worlds part, with a token that holds in all of them.
            person.get("/api/v1/accounts/me").expect(200);
        }
        oskrel.actor.get("/api/v1/accounts/me").expect(200);
        let worlds = stage.worlds();
        Self {
            worlds,
            oskrel,
            people,
            operations: operations(),
        }
    }

    /// What one person sees of each world.
    fn look_in_each(&self, person: &Actor) -> [Vec<Seen>; 3] {
        let look = |world: &Stage| self.look(&world.server.welcome(person));
        self.worlds.each_ref().map(look)
    }

    /// Everything that can be read, in every way.
    fn look(&self, person: &Actor) -> Vec<Seen> {
        let mut seen = Vec::new();
        for (name, (method, path)) in &self.operations {
            let path = self.fill(path);
            if *method == Method::GET {
                for query in QUERIES {
                    seen.push(Seen::new(person.get(&format!("{path}{query}"))));
                }
                for (header, value) in HEADERS {
                    let dress =
                        |request: reqwest::blocking::RequestBuilder| request.header(header, value);
                    seen.push(Seen::new(person.ask(Method::GET, &path, dress)));
                }
                seen.push(Seen::new(
                    person.ask(Method::HEAD, &path, |request| request),
                ));
            } else if POSTS.contains(&name.as_str()) {
                seen.push(Seen::new(person.post(&path, &body(name))));
            }
        }
        seen
    }

    /// A path of the document, led to the secret where it can be.
    fn fill(&self, path: &str) -> String {
        let id = |path: &str| path.rsplit('/').next().unwrap().to_owned();
        let stage = &self.worlds[0];
        let mut filled = path.to_owned();
        let parts = [
            ("{club}", id(&stage.club)),
            ("{season}", id(&stage.season)),
            ("{week}", "1".to_owned()),
            ("{player}", self.oskrel.id.clone()),
            ("{catalogue}", stage.catalogue.clone()),
            ("{number}", "1".to_owned()),
        ];
        for (name, part) in parts {
            filled = filled.replace(name, &part);
        }
        while let Some((before, rest)) = filled.split_once('{') {
            let after = rest.split_once('}').unwrap().1;
            filled = format!("{before}00000000-0000-4000-8000-000000000000{after}");
        }
        filled
    }
}

fn body(operation: &str) -> Value {
    match operation {
        "read_list" => json!({ "text": "Ratchet Pages, 5 models" }),
        "check_list" | "find_fits" | "find_changes" => demo_list("Corvanel", 1),
        _ => json!({}),
    }
}

fn led(player: &Player, world: &Stage) -> Player {
    Player {
        actor: world.server.welcome(&player.actor),
        id: player.id.clone(),
    }
}

/// What is answered differently in two worlds.
fn differences<'a>(one: &'a [Seen], other: &'a [Seen]) -> Vec<(&'a Seen, &'a Seen)> {
    assert_eq!(one.len(), other.len());
    let pairs = one.iter().zip(other);
    pairs.filter(|(one, other)| one != other).collect()
}

/// An answer without what differs in every answer: its date and the id of the request; and without
/// `connection`, which is of the way and not of the answer (RFC 9110, section 7.6.1): it depends on
/// whether a body that nobody reads has arrived yet.
#[derive(Debug, PartialEq)]
struct Seen {
    asked: String,
    status: u16,
    headers: Vec<(String, String)>,
    body: String,
}

impl Seen {
    fn new(answer: Answer) -> Self {
        let headers = answer.headers.iter();
        let headers = headers.filter(|(name, _)| !["date", "connection"].contains(&name.as_str()));
        let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
        let headers = headers.map(|(name, value)| (name.to_string(), text(value.as_bytes())));
        let mut headers: Vec<_> = headers.collect();
        headers.sort();
        let mut body = text(&answer.body);
        if let Ok(Value::Object(mut members)) = serde_json::from_str(&body)
            && members.remove("request_id").is_some()
        {
            body = Value::Object(members).to_string();
        }
        Self {
            asked: answer.asked,
            status: answer.status,
            headers,
            body,
        }
    }
}
