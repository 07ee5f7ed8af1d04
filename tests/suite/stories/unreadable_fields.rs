//! What cannot be read in a form is a fault at its field: it is shown, it stays as it was typed, and
//! nothing is done.

use crate::harness::{Answer, List, Stage};
use crate::stories::results::week::FirstWeek;

/// A page that came back with these faults, each at its field.
#[track_caller]
fn shows(page: Answer, faults: &[&str], typed: &[(&str, &str)]) -> String {
    let page = page.with_status(422).text();
    let (_, shown) = page.split_once("role=\"alert\"").expect("faults are shown");
    let (shown, _) = shown.split_once("</div>").unwrap();
    assert_eq!(shown.matches("<li>").count(), faults.len(), "{shown}");
    for fault in faults {
        let fault = fault.replace('"', "&#34;");
        assert!(
            shown.contains(&format!("<li>{fault}</li>")),
            "{fault} is not in {shown}"
        );
    }
    for (field, value) in typed {
        let inputs = page.split('<');
        let mut named = inputs.filter(|input| input.contains(&format!("name=\"{field}\"")));
        let input = named.find(|input| input.starts_with("input")).unwrap();
        assert!(input.contains(&format!("value=\"{value}\"")), "{input}");
        assert!(input.contains("aria-invalid=\"true\""), "{input}");
    }
    page
}

#[test]
fn points_that_cannot_be_read_are_not_given() {
    let week = FirstWeek::paired(&["Oskrel", "Corvanel"]);
    let (season, player) = (week.season(), &week.players[0]);
    let browser = week.stage.server.browser("Wennable");
    let points = season.page("points");
    let send = |number: &str, amount: &str| {
        let fields = [
            ("player", player.id.as_str()),
            ("week", number),
            ("amount", amount),
            ("reason", " Lent two tables "),
        ];
        browser.send(&points, &points, &fields)
    };
    let amount = r#"Points: "two" is not a whole number from -9999 to 9999."#;
    let page = shows(send("1", "two"), &[amount], &[("amount", "two")]);
    assert!(page.contains("value=\" Lent two tables \""), "{page}");
    let too_many = r#"Points: "10000" is not a whole number from -9999 to 9999."#;
    shows(send("1", "10000"), &[too_many], &[("amount", "10000")]);
    let number = r#"Week: "first" is not a whole number from 1 to 52."#;
    shows(
        send("first", "two"),
        &[number, amount],
        &[("amount", "two")],
    );
    let limit = "From 1 to 1000 points, given or taken.";
    shows(send("1", "1001"), &[limit], &[("amount", "1001")]);
    shows(send("1", ""), &["Points: please fill this in."], &[]);
    assert_eq!(week.lines(player), []);
    assert_eq!(
        send("1", "+2").with_status(303).header("location"),
        Some(points.as_str())
    );
    assert_eq!(week.lines(player), [("ruling".to_owned(), 2)]);
}

#[test]
fn a_report_with_counts_that_cannot_be_read_is_not_taken() {
    let week = FirstWeek::paired(&["Oskrel", "Corvanel"]);
    let [first, _] = week.sides();
    let handles = if first.id == week.players[0].id {
        ["Oskrel", "Corvanel"]
    } else {
        ["Corvanel", "Oskrel"]
    };
    let browser = week.stage.server.browser(handles[0]);
    let game = week.game().page("");
    let send = |marker: &str, destroyed: &str| {
        let fields = [
            ("act", "report"),
            ("key", "one"),
            ("how", "played"),
            ("leg.0.first.ford-marker", marker),
            ("leg.0.second.destroyed", destroyed),
        ];
        browser.send(&game, &game, &fields)
    };
    let page = send("four", "60.5").with_status(422).text();
    for (player, typed) in [(handles[0], "four"), (handles[1], "60.5")] {
        let fault =
            format!(", {player}: &#34;{typed}&#34; is not a whole number from 0 to 100000.");
        assert!(page.contains(&fault), "{fault} is not in {page}");
        assert!(
            page.contains(&format!("value=\"{typed}\" aria-invalid=\"true\"")),
            "{page}"
        );
    }
    assert_eq!(week.game().view().expect(200).slip().kind, "awaited");
    send("4", "60").with_status(303);
    assert_eq!(week.game().view().expect(200).slip().kind, "reported");
}

#[test]
fn a_step_of_the_set_up_is_not_left_with_numbers_that_cannot_be_read() {
    let stage = Stage::draft();
    let browser = stage.server.browser("Wennable");
    let set_up = stage.club.page("seasons/new");
    let send = |fields: &[(&str, &str)]| browser.send(&set_up, &set_up, fields);
    let tables = r#"Night 1, Tables: "six" is not a whole number from 1 to 500."#;
    let grace = "Grace after the deadline, in minutes: please fill this in.";
    let rhythm = [
        ("step", "3"),
        ("go", "next"),
        ("night_1_tables", "six"),
        ("grace", ""),
    ];
    let page = shows(
        send(&rhythm),
        &[tables, grace],
        &[("night_1_tables", "six")],
    );
    assert!(page.contains("name=\"step\" value=\"3\""), "{page}");
    let caps = r#"Caps, first week first: "4OO" is not a whole number from 1 to 100000."#;
    let growth = [
        ("step", "2"),
        ("go", "next"),
        ("caps_kind", "list"),
        ("caps_each", "300, 4OO, 500"),
    ];
    shows(send(&growth), &[caps], &[("caps_each", "300, 4OO, 500")]);
    let [first, silence] = [("win", "three"), ("confirm_hours", "0")];
    let rules = [("step", "4"), ("go", "next"), first, silence];
    let win = r#"League points for a win: "three" is not a whole number from 0 to 100."#;
    let hours =
        r#"Hours after which silence confirms a result: "0" is not a whole number from 1 to 336."#;
    shows(send(&rules), &[win, hours], &[first, silence]);
    send(&[("step", "3"), ("go", "next")]).with_status(200);
    send(&[("step", "three"), ("go", "next")]).with_status(422);
}

#[test]
fn an_invitation_is_not_made_for_people_that_cannot_be_counted() {
    let stage = Stage::draft();
    let browser = stage.server.browser("Wennable");
    let club = stage.club.page("");
    let invitations = stage.club.page("invitations");
    let fields = [("role", "nobody"), ("uses", "many"), ("days", "91")];
    let uses = r#"For how many people: "many" is not a whole number from 1 to 500."#;
    let days = r#"For how many days: "91" is not a whole number from 1 to 90."#;
    let role = "As: please choose one of the list.";
    let page = browser.send(&club, &invitations, &fields);
    shows(
        page,
        &[role, uses, days],
        &[("uses", "many"), ("days", "91")],
    );
}

#[test]
fn a_sheet_and_painted_models_that_cannot_be_read_are_not_kept() {
    let stage = Stage::draft();
    let browser = stage.server.browser("Wennable");
    let sheet = stage.week(2).page("sheet");
    let numbers = [
        ("turns", "six"),
        ("item_1_points", ""),
        ("item_1_most", "3"),
    ];
    let mut fields = vec![
        ("title_text", "Toll at the Ford"),
        ("item_1_label", "Turns holding the ford"),
        ("title", "announcement"),
        ("full", "announcement"),
    ];
    fields.extend(numbers);
    let turns = r#"Turns: "six" is not a whole number from 1 to 20."#;
    let points = "Count 1, Points for each: please fill this in.";
    let page = browser.send(&sheet, &sheet, &fields);
    shows(page, &[points, turns], &numbers[..2]);
    let player = stage.join("Oskrel");
    stage.start();
    let list = List::demo("Oskrel", 1);
    stage.week(1).list_of(&player).seal(&list).expect(201);
    let browser = stage.server.browser("Oskrel");
    let painting = stage.season.page("painting");
    let shown = browser.get(&painting).with_status(200).text();
    let (_, unit) = shown.split_once("name=\"unit\" value=\"").unwrap();
    let unit = unit.split('"').next().unwrap();
    let claim = [
        ("act", "claim"),
        ("week", "1"),
        ("unit", unit),
        ("finished", "all"),
    ];
    let finished = r#"Finished: "all" is not a whole number from 0 to 1000."#;
    let page = browser.send(&painting, &painting, &claim);
    shows(page, &[finished], &[("finished", "all")]);
    let claims = stage.season.page("painting");
    assert!(
        browser
            .get(&claims)
            .text()
            .contains("Nobody has claimed anything yet.")
    );
}
