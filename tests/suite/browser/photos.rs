//! Photos of painted models: taken with the phone, seen by the club, taken away again.

use std::fs;

use image::ImageFormat;
use serde_json::json;

use super::window::{Size, Window};
use crate::harness::{bytes_of, picture};
use crate::stories::results::week::FirstWeek;

#[test]
fn a_player_shows_painted_models_to_the_club_alone_and_takes_the_photo_away() {
    let week = FirstWeek::paired(&["Oskrel", "Corvanel"]);
    // The first night is over and the next week is not announced: claims are of the opened week.
    week.stage.clock().show("2026-01-13T22:00:00+01:00");
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("models.jpg");
    fs::write(&file, bytes_of(&picture(3), ImageFormat::Jpeg)).unwrap();
    let painting = week.season().page("painting");

    let oskrel = Window::of(&week.stage.server, "Oskrel", Size::Phone);
    oskrel.go(&painting);
    oskrel.fill("bare", "0");
    oskrel.fill("finished", "1");
    oskrel.attach("Photo (if you like)", &file);
    oskrel.press("Claim");
    oskrel.reads("to be checked");
    oskrel.look("painting-photo");

    let corvanel = Window::of(&week.stage.server, "Corvanel", Size::Phone);
    corvanel.go(&painting);
    assert_eq!(shown(&corvanel), json!([40]));
    let visitor = Window::open(&week.stage.server, Size::Phone);
    visitor.go(&painting);
    visitor.reads("to be checked");
    assert_eq!(shown(&visitor), json!([]));

    oskrel.press("Take this photo away");
    oskrel.reads("to be checked");
    assert_eq!(shown(&oskrel), json!([]), "the picture is gone");
}

/// The widths of the photos on the page, once they are loaded or known not to come.
fn shown(window: &Window) -> serde_json::Value {
    window.ask_later(
        "const done = arguments[arguments.length - 1];
         const photos = [...document.querySelectorAll('.photo img')];
         for (const photo of photos) photo.loading = 'eager';
         Promise.allSettled(photos.map((photo) => photo.decode()))
             .then(() => done(photos.map((photo) => photo.naturalWidth)))",
    )
}
