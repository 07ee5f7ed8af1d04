//! The walls of the house that the compiler cannot see.

use std::collections::BTreeMap;

use crate::imports::Imports;
use crate::sources::{Source, files};

#[test]
fn the_rules_know_no_clock_no_chance_no_world() {
    // A generator that is made from a seed which came in as an argument is no chance.
    let world = [
        "now()",
        "SystemTime",
        "Instant::now",
        "rand::",
        "Rng::new()",
        "getrandom",
        "async ",
        ".await",
        "serde",
        "std::fs",
        "std::net",
        "std::env",
        "std::thread",
        "tokio",
        "println!",
    ];
    no_offence(lines_with(&files("server/league/src", ".rs"), &world));
}

#[test]
fn only_the_store_names_the_database_library() {
    let others = outside(&["server/store"]);
    no_offence(lines_with(&others, &["diesel"]));
}

#[test]
fn only_web_standings_and_main_name_the_http_library() {
    let others = outside(&["server/web", "server/read_service", "server/main"]);
    no_offence(lines_with(&others, &["actix"]));
}

#[test]
fn answers_for_programs_and_pages_for_people_never_import_each_other() {
    let (api, pages): (Vec<_>, Vec<_>) = files("server/web/src", ".rs")
        .into_iter()
        .filter(|file| file.path.contains("/api") || file.path.contains("/pages"))
        .partition(|file| file.path.contains("/api"));
    no_offence(lines_with(&api, &["pages::"]));
    no_offence(lines_with(&pages, &["api::"]));
}

#[test]
fn facts_flow_one_way_through_the_crates() {
    let allowed = BTreeMap::from([
        ("messages", vec![]),
        ("league", vec!["messages"]),
        ("document", vec!["league", "messages"]),
        ("store", vec!["document", "league"]),
        ("app", vec!["document", "league", "messages", "store"]),
        (
            "read_service",
            vec!["app", "document", "league", "messages"],
        ),
        ("web", vec!["app", "document", "league", "messages"]),
        (
            "main",
            vec![
                "app",
                "document",
                "league",
                "messages",
                "read_service",
                "store",
                "web",
            ],
        ),
    ]);
    let mut offences = Vec::new();
    for manifest in files("server", "Cargo.toml") {
        let name = manifest.path.split('/').nth(1).unwrap();
        let wanted: toml::Table = manifest.text.parse().unwrap();
        let wanted = wanted["dependencies"].as_table().unwrap().keys();
        let ours = wanted.filter(|dependency| allowed.contains_key(dependency.as_str()));
        let strange = ours.filter(|dependency| !allowed[name].contains(&dependency.as_str()));
        offences.extend(strange.map(|dependency| format!("{name} must not need {dependency}")));
    }
    no_offence(offences);
}

/// A proof is worth something only if whoever checks it shares nothing with whoever found it.
#[test]
fn the_proof_imports_neither_search_nor_solver() {
    let imports = Imports::read("server/league/src");
    let proof: Vec<&String> = imports.modules_in("pairing::proof").collect();
    assert!(proof.len() > 1, "the proof has moved: {proof:?}");
    let mut offences = Vec::new();
    for module in proof {
        let reached = imports.reachable_from(module).into_iter();
        let finders = reached.filter(|other| {
            other.starts_with("pairing::search") || other.starts_with("pairing::solve")
        });
        offences.extend(finders.map(|other| format!("{module} reaches {other}")));
    }
    no_offence(offences);
    // Paths in the code itself are no imports.
    let named = ["search::", "solve::", "propose"];
    no_offence(lines_with(
        &files("server/league/src/pairing/proof", ".rs"),
        &named,
    ));
}

/// Files that need each other can only be understood together; four at once are enough.
#[test]
fn no_circle_of_more_than_four_files_exists_in_the_rules() {
    let imports = Imports::read("server/league/src");
    let large = imports.circles().into_iter();
    let large = large.filter(|circle| circle.len() > 4);
    no_offence(large.map(|circle| circle.join(", ")).collect());
}

/// Files of `app` in which `<` or `>` stands between two values, each with the reason why no rule of the
/// league is decided there.
const ORDERINGS_IN_APP: [(&str, &str); 2] = [
    ("accounts/refresh_session.rs", "how long a sign-in lasts"),
    ("changes.rs", "how old the data of a replica may be"),
];

/// Which of two facts comes first, or is more, is for the league to judge: `app` compares in order with a
/// constant or a number alone. Rules that ask only whether two facts are the same are not seen by this.
#[test]
fn the_application_puts_no_two_facts_in_order() {
    let mut named = ORDERINGS_IN_APP.map(|(file, _)| (format!("server/app/src/{file}"), false));
    let mut offences = Vec::new();
    for file in files("server/app/src", ".rs") {
        let code = file.text.split("#[cfg(test)]").next().unwrap_or_default();
        for (number, line) in (1..).zip(code.lines()) {
            if !orders_two_values(line) {
                continue;
            }
            match named.iter_mut().find(|(path, _)| *path == file.path) {
                Some((_, is_needed)) => *is_needed = true,
                None => offences.push(format!("{}:{number}: {}", file.path, line.trim())),
            }
        }
    }
    let idle = named.into_iter().filter(|(_, is_needed)| !is_needed);
    offences.extend(idle.map(|(path, _)| format!("{path} orders nothing: take it off the list")));
    no_offence(offences);
}

/// Whether an operator of order in the line has neither a number nor a constant beside it.
fn orders_two_values(line: &str) -> bool {
    let line = line.split("//").next().unwrap_or_default();
    let is_fixed = |word: Option<&str>| {
        let word = word.unwrap_or_default();
        let word = word.trim_matches(|c: char| !c.is_alphanumeric() && c != '_');
        let is_fixed = |c: char| c.is_ascii_uppercase() || c.is_ascii_digit() || c == '_';
        !word.is_empty() && word.chars().all(is_fixed)
    };
    let operators = [" < ", " <= ", " > ", " >= "];
    operators.into_iter().any(|operator| {
        let parts: Vec<&str> = line.split(operator).collect();
        parts.windows(2).any(|sides| {
            let before = sides[0].split_whitespace().next_back();
            let after = sides[1].split_whitespace().next();
            !is_fixed(before) && !is_fixed(after)
        })
    })
}

#[test]
fn an_order_of_two_values_is_told_from_one_with_a_limit() {
    for line in [
        "if now < week.accepted_until() {",
        "at <= now && since.is_none()",
        "    >= other.cap",
    ] {
        assert!(orders_two_values(line), "{line}");
    }
    for line in [
        "if side > MAX_SIDE {",
        "    .filter(|cap| cap.get() > 0)",
        "fn read(pairs: &[Pair]) -> Vec<Pair> { // a < b",
        "Some(_) => x,",
    ] {
        assert!(!orders_two_values(line), "{line}");
    }
}

/// A page that looks its season up by itself would answer 401 and 404 in an order of its own.
#[test]
fn the_season_of_a_page_is_loaded_by_its_extractor_alone() {
    let loads = lines_with(&files("server/web/src", ".rs"), &["SeasonContext::load"]);
    let extractor = "server/web/src/pages/season/season_page.rs:";
    let is_alone = loads.len() == 1 && loads[0].starts_with(extractor);
    assert!(is_alone, "{loads:?}");
}

#[test]
fn only_the_leagues_own_clock_tells_the_time() {
    let machine = [
        "Utc::now",
        "Local::now",
        "SystemTime::now",
        "now()",
        "CURRENT_TIMESTAMP",
    ];
    let mut files = files("migrations", ".sql");
    for folder in ["document", "store", "app"] {
        files.extend(self::files(&format!("server/{folder}/src"), ".rs"));
    }
    no_offence(lines_with(&files, &machine));
}

/// The OpenAPI document keeps one schema for each name.
#[test]
fn no_two_documents_share_a_name() {
    let mut seen: BTreeMap<String, String> = BTreeMap::new();
    let mut offences = Vec::new();
    for folder in ["document", "web"] {
        for file in files(&format!("server/{folder}/src"), ".rs") {
            for line in file.text.lines().map(str::trim) {
                let Some((_, name)) = line
                    .split_once("pub struct ")
                    .or(line.split_once("pub enum "))
                else {
                    continue;
                };
                let name: String = name.chars().take_while(|c| c.is_alphanumeric()).collect();
                if !["Document", "View", "Body", "Word"]
                    .iter()
                    .any(|end| name.ends_with(end))
                {
                    continue;
                }
                if let Some(other) = seen.insert(name.clone(), file.path.clone()) {
                    offences.push(format!("{name} in {other} and {}", file.path));
                }
            }
        }
    }
    no_offence(offences);
}

/// A season's id is looked up with the club that owns it; in two parameters they could be of two seasons.
#[test]
fn a_club_and_a_season_travel_as_one_key() {
    let mut offences = Vec::new();
    for folder in ["store", "app", "read_service", "web"] {
        for file in files(&format!("server/{folder}/src"), ".rs") {
            let dense: String = file.text.split_whitespace().collect();
            if dense.contains("(ClubId,SeasonId") {
                offences.push(format!("{}: a tuple in the place of a key", file.path));
            }
            for signature in signatures(&file.text) {
                if signature.contains("ClubId") && signature.contains("SeasonId") {
                    offences.push(format!("{}: {signature}", file.path));
                }
            }
        }
    }
    no_offence(offences);
}

/// One idea has one name: who searches for a type finds one.
#[test]
fn no_two_public_types_share_a_name() {
    let mut seen: BTreeMap<String, String> = BTreeMap::new();
    let mut offences = Vec::new();
    let files = files("server", ".rs").into_iter();
    for file in files.filter(|file| file.path.contains("/src/")) {
        for line in file.text.lines() {
            let kinds = ["pub struct ", "pub enum ", "pub trait ", "pub type "];
            let Some(rest) = kinds.iter().find_map(|kind| line.strip_prefix(kind)) else {
                continue;
            };
            let name: String = rest.chars().take_while(|c| c.is_alphanumeric()).collect();
            if let Some(other) = seen.insert(name.clone(), file.path.clone()) {
                offences.push(format!("{name} in {other} and {}", file.path));
            }
        }
    }
    no_offence(offences);
}

#[test]
fn every_crate_takes_the_lints_of_the_workspace() {
    let manifests = files("server", "Cargo.toml").into_iter();
    let lax = manifests.filter(|manifest| !manifest.text.contains("[lints]\nworkspace = true"));
    no_offence(lax.map(|manifest| manifest.path).collect());
}

#[test]
fn no_file_is_longer_than_500_lines() {
    let long = rust()
        .into_iter()
        .filter(|file| file.text.lines().count() > 500);
    no_offence(long.map(|file| file.path).collect());
}

#[test]
fn no_room_is_named_after_nothing() {
    let names = [
        "util", "utils", "common", "core", "types", "helper", "helpers", "misc",
    ];
    let rooms = rust().into_iter().filter(|file| {
        let folders = file.path.split('/');
        names.contains(&file.stem()) || folders.into_iter().any(|folder| names.contains(&folder))
    });
    no_offence(rooms.map(|file| file.path).collect());
}

#[test]
fn no_type_is_named_after_nothing() {
    let endings = ["Manager", "Service", "Helper", "Handler", "Util", "Utils"];
    let mut offences = Vec::new();
    for file in rust() {
        for line in file.text.lines() {
            let mut words = line.split(|c: char| !c.is_alphanumeric() && c != '_');
            let defines = words.any(|word| ["struct", "enum", "trait"].contains(&word));
            let name = words.next().unwrap_or_default();
            if defines && endings.iter().any(|ending| name.ends_with(ending)) {
                offences.push(format!("{}: {name}", file.path));
            }
        }
    }
    no_offence(offences);
}

#[test]
fn nothing_is_left_for_later() {
    // In two parts, so that this file does not offend itself.
    let marks = [
        concat!("TO", "DO"),
        concat!("FIX", "ME"),
        concat!("unimplemented", "!"),
    ];
    let left = rust()
        .into_iter()
        .filter(|file| marks.iter().any(|mark| file.text.contains(mark)));
    no_offence(left.map(|file| file.path).collect());
}

#[test]
fn no_test_waits_by_sleeping() {
    let sleep = [concat!("sleep", "(")];
    no_offence(lines_with(&files("tests/suite", ".rs"), &sleep));
}

/// Name, parameters and result of every function in a text.
fn signatures(text: &str) -> impl Iterator<Item = &str> {
    let functions = text.match_indices("fn ").map(|(at, _)| &text[at..]);
    functions.map(|rest| rest.split("{\n").next().unwrap_or(rest))
}

fn rust() -> Vec<Source> {
    let mut all = files("server", ".rs");
    all.extend(files("tests", ".rs"));
    all
}

/// Code and manifests of the server outside these folders.
fn outside(folders: &[&str]) -> Vec<Source> {
    let mut all = files("server", ".rs");
    all.extend(files("server", "Cargo.toml"));
    all.retain(|file| !folders.iter().any(|folder| file.is_in(folder)));
    all
}

fn lines_with(files: &[Source], words: &[&str]) -> Vec<String> {
    files
        .iter()
        .flat_map(|file| file.lines_with(words))
        .collect()
}

fn no_offence(offences: Vec<String>) {
    assert!(offences.is_empty(), "\n{}\n", offences.join("\n"));
}
