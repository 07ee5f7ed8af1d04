use super::window::{Size, Window};
use crate::harness::{Database, Server};

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
