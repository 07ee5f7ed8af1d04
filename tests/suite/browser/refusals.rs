use serde_json::json;

use super::window::{Size, Window};
use crate::harness::{Database, Server, Stage};

#[test]
fn a_form_that_is_refused_as_a_whole_says_what_to_do() {
    let database = Database::create();
    let server = Server::start(&database);
    server.register("Wennable");
    let window = Window::of(&server, "Wennable", Size::Phone);
    window.fill("Name of the club", "Lamplit Ford gaming circle");
    window.fill("Short name for addresses", "lamplit-ford");
    window.forget();
    window.press("Found a club");
    window.reads("This form was too old or came from elsewhere.");
    window.reads("Nothing was changed.");
    window.look("refused-form");
    window.follow("What this means");
    assert_eq!(window.path(), "/problems/csrf");
}

#[test]
fn a_german_reader_is_told_in_german_what_is_wrong_with_each_part() {
    let stage = Stage::draft();
    let window = Window::of(&stage.server, "Wennable", Size::Laptop);
    let club = &stage.club;
    window.go(&club.page("catalogues"));
    window.choose("Language", "Deutsch");
    window.press("Change");
    window.go(&club.page("catalogues"));
    window.fill("Name des Katalogs", "Zweite Rechnung");
    window.set("Katalog als CSV oder JSON", "faction,faction\nMoor,Moor");
    window.press("Einlesen");
    window.reads("diese Spalte kommt zweimal vor");
    window.look("german-catalogue-refused");
    assert_eq!(
        window.ask("return document.querySelectorAll('main [lang=en]').length"),
        json!(0)
    );
}
