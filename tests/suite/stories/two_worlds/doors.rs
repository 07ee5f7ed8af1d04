//! Every door that is read, and every way to read it.

use std::collections::BTreeMap;

use reqwest::Method;
use reqwest::blocking::RequestBuilder;
use serde_json::{Value, json};

use super::seen::Seen;
use super::worlds::Person;
use crate::harness::{Answer, List, Stage};
use crate::sources::files;

/// Filters and orders that might tell of something hidden. Where an operation knows none of them, the
/// refusal must not tell either.
const QUERIES: [&str; 3] = ["?since=1", "?week=1", "?sort=points"];

/// Conditions and ranges that would be met by the hidden list's own revision or bytes, and forms of
/// answer.
const HEADERS: [(&str, &str); 4] = [
    ("if-none-match", "\"1\""),
    ("if-modified-since", "Fri, 01 Jan 2100 00:00:00 GMT"),
    ("range", "bytes=0-9"),
    ("accept", "text/csv"),
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

/// What everybody reads of a public season, below its address.
const PUBLIC: [&str; 19] = [
    "standings",
    "standings.json",
    "standings.csv",
    "standings.html",
    "pairings",
    "pairings.csv",
    "results",
    "results.csv",
    "weeks",
    "weeks.json",
    "weeks.csv",
    "players/{player}/ledger",
    "players/{player}/ledger.csv",
    "players/{player}/list",
    "weeks/1/lists",
    "lists",
    "badge.svg",
    "badge.png",
    "nothing",
];

/// Addresses, led to the secret where they can be.
pub struct Doors {
    /// Operations with their methods.
    operations: BTreeMap<String, (Method, String)>,
    /// What is only read.
    read: Vec<String>,
}

impl Doors {
    /// The parts of an address, by their names in braces.
    pub fn new(operations: BTreeMap<String, (Method, String)>, parts: &[(&str, String)]) -> Self {
        let led = |path: &str| fill(path, parts);
        // An answer without an end is followed by a test of its own.
        let operations: BTreeMap<_, _> = operations
            .into_iter()
            .filter(|(name, _)| name != "follow_season")
            .map(|(name, (method, path))| (name, (method, led(&path))))
            .collect();
        let public =
            PUBLIC.map(|path| led(&format!("/public/clubs/{{club}}/seasons/{{season}}/{path}")));
        let read = page_addresses().into_iter().map(|path| led(&path));
        Self {
            operations,
            read: read.chain(public).collect(),
        }
    }

    /// All that a person sees behind them.
    pub fn look(&self, person: &Person, world: &Stage) -> Vec<Seen> {
        let mut seen = Vec::new();
        for (name, (method, path)) in &self.operations {
            let api =
                |method: Method, path: &str, build: &dyn Fn(RequestBuilder) -> RequestBuilder| {
                    world.server.welcome(&person.actor).ask(method, path, build)
                };
            if *method == Method::GET {
                seen.extend(every_way(&api, path));
            } else {
                seen.push(Seen::new(
                    "",
                    &api(Method::OPTIONS, path, &|request| request),
                ));
            }
            if POSTS.contains(&name.as_str()) {
                let body = body(name);
                let answer = api(Method::POST, path, &|request| request.json(&body));
                seen.push(Seen::new("", &answer));
            }
        }
        for path in &self.read {
            let page =
                |method: Method, path: &str, build: &dyn Fn(RequestBuilder) -> RequestBuilder| {
                    match &person.browser {
                        Some(browser) => world.server.browse(browser).ask(method, path, build),
                        None => world.server.visitor().ask(method, path, build),
                    }
                };
            seen.extend(every_way(&page, path));
        }
        seen
    }
}

type Ask<'a> = &'a dyn Fn(Method, &str, &dyn Fn(RequestBuilder) -> RequestBuilder) -> Answer;

/// One address, asked in every way, also with the conditions that its own answer meets.
fn every_way(ask: Ask<'_>, path: &str) -> Vec<Seen> {
    let plain = ask(Method::GET, path, &|request| request);
    let mut seen = vec![Seen::new("", &plain)];
    for query in QUERIES {
        let answer = ask(Method::GET, &format!("{path}{query}"), &|request| request);
        seen.push(Seen::new("", &answer));
    }
    let own = [
        ("if-none-match", "etag"),
        ("if-modified-since", "last-modified"),
    ];
    let own = own
        .into_iter()
        .filter_map(|(condition, of)| Some((condition, plain.header(of)?)));
    for (header, value) in HEADERS.into_iter().chain(own) {
        let answer = ask(Method::GET, path, &|request| request.header(header, value));
        seen.push(Seen::new(&format!("{header}: {value}"), &answer));
    }
    for method in [Method::HEAD, Method::OPTIONS] {
        seen.push(Seen::new("", &ask(method, path, &|request| request)));
    }
    seen
}

/// Every address that is opened in a browser, as its handler declares it.
fn page_addresses() -> Vec<String> {
    let sources = files("server/web/src", ".rs");
    let lines = sources
        .iter()
        .filter(|source| !source.is_in("server/web/src/api"))
        .flat_map(|source| source.text.lines());
    let addresses = lines.filter_map(|line| line.strip_prefix("#[get(\"")?.strip_suffix("\")]"));
    // The numbers of the process have a listener of their own.
    let addresses: Vec<String> = addresses
        .filter(|address| *address != "/metrics")
        .map(str::to_owned)
        .collect();
    assert!(addresses.len() > 20, "{addresses:?}");
    addresses
}

fn fill(path: &str, parts: &[(&str, String)]) -> String {
    let known =
        |path: String, (name, part): &(&str, String)| path.replace(&format!("{{{name}}}"), part);
    let mut filled = parts.iter().fold(path.to_owned(), known);
    while let Some((before, rest)) = filled.split_once('{') {
        let after = rest.split_once('}').unwrap().1;
        filled = format!("{before}00000000-0000-4000-8000-000000000000{after}");
    }
    filled
}

fn body(operation: &str) -> Value {
    match operation {
        "read_list" => json!({ "text": "Ratchet Pages, 5 models" }),
        "check_list" | "find_fits" | "find_changes" => json!(List::demo("Corvanel", 1)),
        _ => json!({}),
    }
}
