//! Catalogues come in from JSON and CSV, whole or with every fault named.

#![allow(clippy::unwrap_used, clippy::panic, reason = "tests may fail loudly")]

use document::catalogue::CatalogueDocument;
use document::csv::catalogue::{MAX_ROWS, read_catalogue_csv};
use document::fault::DocumentFault;
use league::catalogue::Catalogue;
use league::catalogue::key::{FactionKey, OptionKey, UnitKey};
use league::catalogue::unit::OptionPrice;
use league::points::Points;
use proptest::prelude::*;

const DEMO_JSON: &str = include_str!("../../../demo/catalogue.json");
const DEMO_CSV: &[u8] = include_bytes!("../../../demo/catalogue.csv");

fn read_json(text: &str) -> Result<Catalogue, Vec<DocumentFault>> {
    serde_json::from_str::<CatalogueDocument>(text)
        .unwrap()
        .try_into()
}

#[test]
fn the_demo_catalogue_is_the_same_from_json_and_from_csv() {
    let from_json = read_json(DEMO_JSON).unwrap();
    assert_eq!(read_catalogue_csv(DEMO_CSV).unwrap(), from_json);
    assert_eq!(from_json.factions().len(), 5);
    assert!(from_json.factions().iter().all(|f| f.units().len() == 8));
}

#[test]
fn a_catalogue_written_out_reads_back_the_same() {
    let catalogue = read_json(DEMO_JSON).unwrap();
    let document = CatalogueDocument::from(&catalogue);
    let text = serde_json::to_string(&document).unwrap();
    assert_eq!(read_json(&text).unwrap(), catalogue);
}

#[test]
fn json_reports_every_fault_with_its_pointer() {
    let faults = read_json(
        r#"{"factions": [
            {"key": "moot", "name": " ", "units": [
                {"key": "hulks", "name": "Hulks", "kind": "heavy", "keywords": ["big", "big"],
                 "sizes": [{"models": 2, "points": 90}, {"models": 2, "points": -1}],
                 "options": [{"key": "A b", "name": "x", "points": 1, "limit": 0}],
                 "joins": "swamp", "most_per_army": 0, "minutes_per_model": 6001},
                {"key": "hulks", "name": "Hulks", "kind": "heavy", "sizes": [],
                 "minutes_per_model": 0}
            ]},
            {"key": "moot", "name": "Moot", "units": []}
        ]}"#,
    )
    .unwrap_err();
    let places: Vec<(&str, &str)> = faults
        .iter()
        .map(|fault| (fault.pointer.as_str(), fault.code.as_str()))
        .collect();
    assert_eq!(
        places,
        [
            ("/factions/0/name", "catalogue.name"),
            ("/factions/0/units/0/keywords/1", "catalogue.twice"),
            ("/factions/0/units/0/sizes/1/models", "catalogue.twice"),
            (
                "/factions/0/units/0/sizes/1/points",
                "catalogue.out-of-range"
            ),
            ("/factions/0/units/0/options/0/key", "catalogue.key"),
            (
                "/factions/0/units/0/options/0/limit",
                "catalogue.out-of-range"
            ),
            (
                "/factions/0/units/0/most_per_army",
                "catalogue.out-of-range"
            ),
            (
                "/factions/0/units/0/minutes_per_model",
                "catalogue.out-of-range"
            ),
            ("/factions/0/units/0/joins", "catalogue.joins-nothing"),
            ("/factions/0/units/1/key", "catalogue.twice"),
            ("/factions/0/units/1/sizes", "catalogue.count"),
            ("/factions/1/key", "catalogue.twice"),
            ("/factions/1/units", "catalogue.count"),
        ]
    );
    assert_eq!(
        faults[3].message.to_string(),
        "is -1; it must be from 0 to 100000"
    );
}

#[test]
fn an_unknown_member_is_refused_rather_than_ignored() {
    let text = r#"{"factions": [], "colour": "red"}"#;
    assert!(serde_json::from_str::<CatalogueDocument>(text).is_err());
}

#[test]
fn csv_reports_every_fault_with_row_and_column() {
    let csv = "unit,faction,kind,models,points,points_per_extra_model,options,minutes_per_model\r\n\
        Hulks,Moot,Heavy,2-4,90,x,root armour,80\r\n\
        ,Moot,Heavy,4-2,90,,,80\r\n\
        Hulks,Moot,Heavy,5|10,55,,sling,-1\r\n\
        Waders,Moot,Swift,0,60\r\n\
        Kin,Moot,,1-201,60,8,,20\r\n";
    let faults = read_catalogue_csv(csv.as_bytes()).unwrap_err();
    let places: Vec<_> = faults
        .iter()
        .map(|f| (f.row, f.column, f.header.as_str(), f.code.as_str()))
        .collect();
    assert_eq!(
        places,
        [
            (2, 6, "points_per_extra_model", "csv.number"),
            (2, 7, "options", "csv.option"),
            (3, 1, "unit", "catalogue.key"),
            (3, 1, "unit", "catalogue.name"),
            (3, 4, "models", "csv.range"),
            (4, 1, "unit", "catalogue.twice"),
            (4, 5, "points", "csv.sizes"),
            (4, 7, "options", "csv.option"),
            (4, 8, "minutes_per_model", "catalogue.out-of-range"),
            (5, 0, "", "csv.cells"),
            (5, 4, "models", "catalogue.out-of-range"),
            (5, 8, "minutes_per_model", "csv.number"),
            (6, 3, "kind", "catalogue.key"),
            (6, 4, "models", "csv.range"),
        ]
    );
}

#[test]
fn csv_says_which_columns_are_missing_unknown_or_doubled() {
    let faults =
        read_catalogue_csv(b"faction,unit,kind,models,points,colour,unit\r\n").unwrap_err();
    let codes: Vec<_> = faults
        .iter()
        .map(|f| (f.header.as_str(), f.code.as_str()))
        .collect();
    assert_eq!(
        codes,
        [
            ("colour", "csv.unknown-column"),
            ("unit", "csv.column-twice"),
            ("minutes_per_model", "csv.missing-column"),
        ]
    );
    assert!(read_catalogue_csv(b"").is_err());
}

#[test]
fn a_table_that_would_take_too_much_memory_is_read_no_further() {
    let mut csv = format!("{HEADER}\n");
    for unit in 0..=MAX_ROWS {
        csv.push_str(&format!(
            "Moot {},Hulks {unit},Heavy,2,90,,80\n",
            unit / 400
        ));
    }
    let faults = read_catalogue_csv(csv.as_bytes()).unwrap_err();
    let found: Vec<_> = faults.iter().map(|f| (f.row, f.code.as_str())).collect();
    assert_eq!(found, [(MAX_ROWS as u64 + 2, "csv.rows")]);

    let faults = read_catalogue_csv(&[b','; 4_000_000]).unwrap_err();
    assert_eq!(faults.len(), 1);
    assert_eq!((faults[0].row, faults[0].code.as_str()), (1, "csv.columns"));
}

const HEADER: &str = "faction,unit,kind,models,points,options,minutes_per_model";

fn only_unit(csv: &str) -> league::catalogue::unit::Unit {
    let catalogue = read_catalogue_csv(csv.as_bytes()).unwrap();
    catalogue.factions()[0].units()[0].clone()
}

/// RFC 4180, section 2: rule 2 (the last line break is optional), rule 5 and 6 (fields with
/// commas, quotes and line breaks are quoted), rule 7 (a quote inside is doubled; rules 6 and 7
/// from memory). A lone line feed is accepted beside CRLF.
#[test]
fn csv_follows_rfc_4180() {
    for line_break in ["\r\n", "\n"] {
        for last in [line_break, ""] {
            let row = r#"Moot,"Hulks, ""old""",Heavy,2,90,root armour 20,80"#;
            let unit = only_unit(&format!("{HEADER}{line_break}{row}{last}"));
            assert_eq!(unit.name.as_str(), r#"Hulks, "old""#);
        }
    }
    let faults = format!("{HEADER}\r\nMoot,\"two\r\nlines\",Heavy,2,90,,80\r\nMoot,x,y,2,,,80");
    let faults = read_catalogue_csv(faults.as_bytes()).unwrap_err();
    let places: Vec<_> = faults.iter().map(|f| (f.row, f.column)).collect();
    assert_eq!(
        places,
        [(2, 2), (4, 5)],
        "rows are counted by their first line"
    );
}

#[test]
fn csv_takes_a_byte_order_mark_and_passes_over_empty_rows() {
    let unit = only_unit(&format!(
        "\u{feff}{HEADER}\n\nMoot,Hulks,Heavy,2,90,,80\n,,,,,,\n"
    ));
    assert_eq!(unit.key, UnitKey::new("hulks").unwrap());
}

#[test]
fn csv_options_say_points_per_model_limit_and_group() {
    let options = "plate 3 per model up to 2 group armour; mark 2 bow 15";
    let unit = only_unit(&format!(
        "{HEADER}\nMoot,Hulks,Heavy,5|10,60|110,{options},80"
    ));
    let plate = unit.option(&OptionKey::new("plate").unwrap()).unwrap();
    assert_eq!(plate.price, OptionPrice::PerModel(Points::new(3)));
    assert_eq!(plate.limit, 2);
    assert_eq!(plate.group.as_ref().unwrap().as_str(), "armour");
    let bow = unit.option(&OptionKey::new("mark-2-bow").unwrap()).unwrap();
    assert_eq!(bow.price, OptionPrice::PerUnit(Points::new(15)));
    assert_eq!(unit.points_at(10), Some(Points::new(110)));
    assert_eq!(unit.points_at(7), None);
}

#[test]
fn text_that_is_not_utf_8_is_a_fault_of_its_cell() {
    let csv = [HEADER.as_bytes(), b"\nMoot,H\xFFlks,Heavy,2,90,,80"].concat();
    let faults = read_catalogue_csv(&csv).unwrap_err();
    assert_eq!((faults[0].row, faults[0].column), (2, 2));
    assert_eq!(faults[0].code, "csv.encoding");
}

#[test]
fn a_faction_is_found_by_its_key() {
    let catalogue = read_json(DEMO_JSON).unwrap();
    let moot = FactionKey::new("sodwether-moot").unwrap();
    assert_eq!(
        catalogue.faction(&moot).unwrap().name().as_str(),
        "Sodwether Moot"
    );
    assert_eq!(catalogue.faction(&FactionKey::new("none").unwrap()), None);
}

proptest! {
    #[test]
    fn any_bytes_after_a_sound_header_are_a_catalogue_or_faults_with_their_lines(
        rows in proptest::collection::vec(any::<u8>(), 0..400),
    ) {
        placed(&rows)?;
    }

    #[test]
    fn any_cells_are_a_catalogue_or_faults_with_their_lines(
        rows in "((Moot|\"a\nb\"|[-=0-9|;]{0,9}|up to 3|x 5 per model)[,\n]){0,60}",
    ) {
        placed(rows.as_bytes())?;
    }
}

fn placed(rows: &[u8]) -> Result<(), TestCaseError> {
    let csv = [HEADER.as_bytes(), b"\n", rows].concat();
    let lines = csv.iter().filter(|&&byte| byte == b'\n').count() as u64 + 1;
    if let Err(faults) = read_catalogue_csv(&csv) {
        prop_assert!(!faults.is_empty());
        for fault in faults {
            prop_assert!((1..=lines).contains(&fault.row), "{:?}", fault);
        }
    }
    Ok(())
}
