//! Every page there is, looked at with the demo's season behind it.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::json;

use super::window::{Size, Window};
use crate::harness::{Database, Game, Server};
use crate::sources::files;

/// Every page, as whom it is looked at, and in which test: here, or in the story that leads to it.
#[rustfmt::skip] // One row a line, so that columns can be read.
const PAGES: &[(&str, Seen)] = &[
    ("/", By("Wennable")),
    ("/sign-in", By(NOBODY)),
    ("/register", By(NOBODY)),
    ("/invitations", By("Ilkamar")),
    ("/clubs/{club}", By("Wennable")),
    ("/clubs/{club}/catalogues", By("Wennable")),
    ("/clubs/{club}/record-consent", InStory("record_consent")),
    ("/clubs/{club}/seasons/new", By("Wennable")),
    ("/clubs/{club}/seasons/{season}", By(NOBODY)),
    ("/clubs/{club}/seasons/{season}/standings", By("Corvanel")),
    ("/clubs/{club}/seasons/{season}/statistics", By(NOBODY)),
    ("/clubs/{club}/seasons/{season}/attendance", By(NOBODY)),
    ("/clubs/{club}/seasons/{season}/wall", By(NOBODY)),
    ("/clubs/{club}/seasons/{season}/painting", By("Ilkamar")),
    ("/clubs/{club}/seasons/{season}/mine", By("Corvanel")),
    ("/clubs/{club}/seasons/{season}/board", By("Wennable")),
    ("/clubs/{club}/seasons/{season}/results", By("Ilkamar")),
    ("/clubs/{club}/seasons/{season}/points", By("Ilkamar")),
    ("/clubs/{club}/seasons/{season}/trail", By("Corvanel")),
    ("/clubs/{club}/seasons/{season}/downloads", By(NOBODY)),
    ("/clubs/{club}/seasons/{season}/end", By("Wennable")),
    ("/clubs/{club}/seasons/{season}/next", By("Wennable")),
    ("/clubs/{club}/seasons/{season}/games/{game}", By(NOBODY)),
    ("/clubs/{club}/seasons/{season}/players/{player}", By(NOBODY)),
    ("/clubs/{club}/seasons/{season}/players/{player}/certificate", InStory("hall")),
    ("/clubs/{club}/seasons/{season}/weeks/{week}", By(NOBODY)),
    ("/clubs/{club}/seasons/{season}/weeks/{week}/print", By(NOBODY)),
    ("/clubs/{club}/seasons/{season}/weeks/{week}/cards", By(NOBODY)),
    ("/clubs/{club}/seasons/{season}/weeks/{week}/sheet", By("Wennable")),
    ("/clubs/{club}/seasons/{season}/weeks/{week}/pairing", By("Wennable")),
    ("/clubs/{club}/seasons/{season}/weeks/{week}/rounds", By(NOBODY)),
    ("/clubs/{club}/seasons/{season}/weeks/{week}/repair", By("Wennable")),
    ("/clubs/{club}/seasons/{season}/weeks/{week}/list", By("Corvanel")),
    ("/clubs/{club}/seasons/{season}/weeks/{week}/list/paste", By("Corvanel")),
    ("/clubs/{club}/seasons/{season}/weeks/{week}/list/receipt", By("Corvanel")),
];

enum Seen {
    /// Looked at here by this person.
    By(&'static str),
    /// Looked at in a story of this file.
    InStory(&'static str),
}
use Seen::{By, InStory};

const NOBODY: &str = "";

/// Addresses that are asked for by a page, and are none.
const PARTS: [&str; 4] = [
    "/static/{file}",
    "/clubs/{club}/seasons/{season}/downloads/season.json",
    "/clubs/{club}/seasons/{season}/downloads/season.zip",
    "/clubs/{club}/seasons/{season}/photos/{photo}",
];

#[test]
fn every_page_is_in_the_list() {
    let sources = files("server/web/src/pages", ".rs");
    let lines = sources.iter().flat_map(|source| source.text.lines());
    let routes: BTreeSet<&str> = lines
        .filter_map(|line| line.strip_prefix("#[get(\"")?.strip_suffix("\")]"))
        .filter(|route| !PARTS.contains(route))
        .collect();
    let listed: BTreeSet<&str> = PAGES.iter().map(|(route, _)| *route).collect();
    assert_eq!(routes, listed);
    for (route, seen) in PAGES {
        if let InStory(file) = seen {
            let story = files("tests/suite/browser", &format!("{file}.rs"));
            let last = route.rsplit('/').next().unwrap();
            let looks = format!(".look(\"{last}");
            assert!(story[0].text.contains(&looks), "{route} is not in {file}");
        }
    }
}

#[test]
fn every_page_breaks_no_rule_in_light_and_dark_on_phone_and_laptop() {
    let demo = Demo::open();
    let mut windows: BTreeMap<&str, Window> = BTreeMap::new();
    for (route, seen) in PAGES {
        let By(person) = *seen else { continue };
        let window = windows.entry(person).or_insert_with(|| demo.window(person));
        window.go(&demo.fill(route));
        let name: String = route
            .split('/')
            .filter(|part| !part.is_empty() && !["{club}", "{season}"].contains(part))
            .map(|part| format!("-{}", part.trim_matches(['{', '}'])))
            .collect();
        window.look(&format!("page{name}"));
    }
}

#[test]
fn the_first_view_is_small_and_the_week_fits_on_one_sheet() {
    let demo = Demo::open();
    for (person, route) in [
        (NOBODY, "/clubs/{club}/seasons/{season}"),
        (NOBODY, "/clubs/{club}/seasons/{season}/standings"),
        (NOBODY, "/clubs/{club}/seasons/{season}/weeks/{week}"),
        ("Corvanel", "/clubs/{club}/seasons/{season}/games/{game}"),
        ("Corvanel", "/clubs/{club}/seasons/{season}/mine"),
        ("Corvanel", "/clubs/{club}/seasons/{season}/weeks/6/list"),
    ] {
        let window = demo.window(person);
        window.go(&demo.fill(route));
        let bytes = bytes_loaded(&window);
        assert!(bytes < MAX_BYTES, "{route}: {bytes} bytes");
    }
    let window = demo.window(NOBODY);
    window.go(&demo.fill("/clubs/{club}/seasons/{season}/weeks/{week}/print"));
    assert_eq!(window.pages_printed("week-sheet"), 1);
    window.go(&demo.fill("/clubs/{club}/seasons/{season}/weeks/{week}/cards"));
    assert_eq!(window.pages_printed("table-cards"), 1);
}

#[test]
fn a_painted_share_says_which_entries_count_with_how_many_points() {
    let demo = Demo::open();
    let window = demo.window(NOBODY);
    window.go(&demo.fill("/clubs/{club}/seasons/{season}/players/{player}"));
    window.unfold("94.8 % of the list painted");
    window.look("painted-share");
    let entries = window.ask(
        "const entries = document.querySelectorAll('details.why[open] li .num');
         return [...entries].map((entry) => entry.textContent.match(/[0-9.]+/g).map(Number))",
    );
    let entries = entries.as_array().unwrap();
    let sum = |place: usize| -> f64 {
        let values = entries.iter().map(|entry| entry[place].as_f64().unwrap());
        values.sum()
    };
    let share = 100.0 * sum(0) / sum(1);
    assert!((share - 94.8).abs() < 0.1, "{entries:?}");
}

#[test]
fn a_german_reader_is_told_in_german() {
    let demo = Demo::open();
    let window = demo.window("Wennable");
    window.go("/");
    window.choose("Language", "Deutsch");
    window.press("Change");
    for (name, path, words) in [
        ("season", "", "Listen kommen herein"),
        ("player", "/players/{player}", "am Tisch gewesen"),
        ("standings", "/standings", "nach Woche 5"),
        ("statistics", "/statistics", "zu wenige Partien"),
        ("attendance", "/attendance", "Nicht gekommen"),
        ("week", "/weeks/5", "Eine Partie über 6 Züge."),
        ("wall", "/wall", "nach Woche 5"),
    ] {
        window.go(&demo.fill(&format!("/clubs/{{club}}/seasons/{{season}}{path}")));
        window.reads(words);
        window.look(&format!("german-{name}"));
        assert_eq!(
            window.ask("return document.querySelectorAll('main [lang=en]').length"),
            json!(0),
            "{path} has English parts"
        );
    }
    window.go("/");
    window.press("Abmelden");
    window.go("/sign-in");
    window.fill("E-Mail-Adresse", "wennable@example.org");
    window.fill("Passwort", "seven lanterns on the ford");
    window.press("Anmelden");
    window.reads("E-Mail-Adresse und Passwort passen nicht zusammen.");
    window.look("german-refused");
}

/// What a first view may weigh, style and script included.
const MAX_BYTES: u64 = 60_000;

/// Bytes of the page and all that it loads, as they came over the wire.
fn bytes_loaded(window: &Window) -> u64 {
    let sizes = window.ask(
        "const loaded = [...performance.getEntriesByType('navigation'),
             ...performance.getEntriesByType('resource')];
         return loaded.map((entry) => [entry.name, entry.encodedBodySize, entry.decodedBodySize])",
    );
    let sizes = sizes.as_array().unwrap();
    for part in sizes {
        let (small, large) = (part[1].as_u64().unwrap(), part[2].as_u64().unwrap());
        assert!(small > 0 && small < large, "not compressed: {part}");
    }
    sizes.iter().map(|part| part[1].as_u64().unwrap()).sum()
}

/// The demo, with what stands for the parameters of addresses.
struct Demo {
    server: Server,
    _database: Database,
    names: [(&'static str, String); 5],
}

impl Demo {
    fn open() -> Self {
        let database = Database::empty();
        let server = Server::demo(&database);
        let wennable = server.greet("Wennable");
        let season = wennable.only_season();
        let games = season.games_of(5).expect(200);
        let reported = |game: &Game| game.slip.as_ref().is_some_and(|it| it.kind == "reported");
        let game = games.into_iter().find(reported).unwrap().id;
        let mut players = season.players().expect(200).into_iter();
        let vikkary = players.find(|player| player.handle == "Vikkary");
        Self {
            server,
            _database: database,
            names: [
                ("{club}", season.club().id().to_owned()),
                ("{season}", season.id().to_owned()),
                ("{week}", "5".to_owned()),
                ("{game}", game),
                ("{player}", vikkary.unwrap().id),
            ],
        }
    }

    fn fill(&self, route: &str) -> String {
        let names = self.names.iter();
        names.fold(route.to_owned(), |path, (name, value)| {
            path.replace(name, value)
        })
    }

    fn window(&self, person: &str) -> Window {
        if person == NOBODY {
            Window::open(&self.server, Size::Phone)
        } else {
            Window::of(&self.server, person, Size::Phone)
        }
    }
}
