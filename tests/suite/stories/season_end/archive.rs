//! The archive of a season that is over.

use std::collections::BTreeMap;
use std::io::{Cursor, Read};

use serde_json::Value;
use zip::ZipArchive;

use super::over::a_season_that_is_over;
use crate::harness::{Actor, Answer};

fn unpack(answer: &Answer) -> BTreeMap<String, String> {
    let mut archive = ZipArchive::new(Cursor::new(&answer.body)).unwrap();
    let names = archive.file_names().map(|name| name.unwrap().into_owned());
    let names: Vec<String> = names.collect();
    let files = names.into_iter().map(|name| {
        let mut text = String::new();
        let mut file = archive.by_name(&name).unwrap();
        file.read_to_string(&mut text).unwrap();
        drop(file);
        (name, text)
    });
    files.collect()
}

fn rows(file: &str) -> Vec<Vec<&str>> {
    let rows = file.lines().map(|row| row.split(',').collect());
    rows.collect()
}

#[test]
fn a_club_keeps_a_season_that_is_over_as_json_and_row_by_row_and_nobody_else_sees_it() {
    let week = a_season_that_is_over("club");
    let archive_for = |reader: &Actor| week.season().by(reader).archive();
    let oskrel = &week.players[0].actor;
    archive_for(oskrel).refused(409, "season-state");
    week.season().end().expect(200);
    archive_for(&week.stage.visitor()).refused(404, "not-found");
    let stranger = week.stage.server.register("Stranger");
    archive_for(&stranger).refused(404, "not-found");

    let archive = archive_for(oskrel).with_status(200);
    assert_eq!(archive.header("content-type"), Some("application/zip"));
    assert!(archive.header("etag").is_some());
    let again = archive_for(oskrel).with_status(200);
    assert_eq!(archive.body, again.body, "the same season, the same bytes");
    let files = unpack(&archive);
    let names: Vec<&str> = files.keys().map(String::as_str).collect();
    assert_eq!(
        names,
        [
            "awards.csv",
            "games.csv",
            "ledger.csv",
            "painting.csv",
            "players.csv",
            "season.json",
            "standings.csv"
        ]
    );
    let season: Value = serde_json::from_str(&files["season.json"]).unwrap();
    assert_eq!(season, week.season().export().expect(200));
    let awards = week.season().awards().with_status(200).json();
    assert_eq!(season.get("awards"), awards.get("awards"));
    the_tables_say_the_same(&files, &season);
}

fn the_tables_say_the_same(files: &BTreeMap<String, String>, season: &Value) {
    let table = rows(&files["standings.csv"]);
    let total = table[0].iter().position(|name| *name == "total").unwrap();
    let ledger = rows(&files["ledger.csv"]);
    assert_eq!(ledger[0][..4], ["player", "week", "kind", "amount"]);
    let ranked = season.pointer("/standings/rows").unwrap();
    assert_eq!(table.len() - 1, ranked.as_array().unwrap().len());
    for row in &table[1..] {
        let own = ledger[1..].iter().filter(|line| line[0] == row[1]);
        let sum: i64 = own.map(|line| line[3].parse::<i64>().unwrap()).sum();
        assert_eq!(sum.to_string(), row[total], "{row:?}");
    }
    let games = rows(&files["games.csv"]);
    let column = |name: &str| games[0].iter().position(|it| *it == name).unwrap();
    for game in &games[1..] {
        assert_eq!(game[column("slip")], "ruled");
        assert_eq!(
            [game[column("first_score")], game[column("second_score")]],
            ["12", "7"]
        );
    }
    assert_eq!(games.len(), 1 + 2);
    let painting = rows(&files["painting.csv"]);
    assert_eq!(
        painting[1][..9],
        [
            "Oskrel",
            "1",
            "hedge-reeve-1",
            "0",
            "0",
            "0",
            "1",
            "verified",
            "referee"
        ]
    );
    let players = rows(&files["players.csv"]);
    assert!(
        players
            .iter()
            .any(|row| row[0] == "Pellamoor" && row[3] == "1")
    );
    let awards = rows(&files["awards.csv"]);
    let painted = awards.iter().find(|row| row[0] == "painted_progress");
    assert_eq!(painted.unwrap()[1], "Oskrel");
}
