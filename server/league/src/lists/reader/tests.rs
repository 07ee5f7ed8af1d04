//! Tests of the parser: pasted texts and the lists made of them.

use messages::Message;

use super::*;
use crate::lists::samples::{catalogue, numbers};

fn reading(text: &str) -> Reading {
    let moot = FactionKey::new("sodwether-moot").unwrap();
    parse(text, &catalogue(), Some(&moot))
}

/// The entries as "key models option*taken >joined".
fn entries(reading: &Reading) -> Vec<String> {
    let list = reading.list.as_ref().unwrap();
    let described = list.entries().iter().map(|entry| {
        let mut described = format!("{} {}", entry.key, entry.models);
        for (option, taken) in &entry.options {
            described.push_str(&format!(" {option}*{taken}"));
        }
        if let Some(joined) = &entry.joins {
            described.push_str(&format!(" >{joined}"));
        }
        described
    });
    described.collect()
}

fn certainties(reading: &Reading) -> String {
    let letters = reading.lines.iter().map(|line| match line.certainty() {
        Certainty::Understood => 'u',
        Certainty::Guessed => 'g',
        Certainty::NotUnderstood => '?',
    });
    letters.collect()
}

#[test]
fn the_form_of_the_design_is_understood() {
    let reading = reading("2x Rushlight Kin, 6 models, marsh gas: 120");
    assert_eq!(
        entries(&reading),
        [
            "rushlight-kin-1 6 marsh-gas*1",
            "rushlight-kin-2 6 marsh-gas*1"
        ]
    );
    assert_eq!(certainties(&reading), "u");
    assert_eq!(reading.findings, []);
}

#[test]
fn a_whole_list_with_headings_bullets_and_totals_is_understood() {
    let text = "Sodwether Moot, 300 points\n\
                \n\
                == Leaders ==\n\
                - Mire Speaker (reed mask) 85, joins Turf Cutters\n\
                Line [120 pts]\n\
                * TURF CUTTERS x8, mud sledges: 64\n\
                • Turf cutters 8 models = 56\n\
                Heavy\n\
                1. Bog-Oak Hulks (2 models)\n\
                   root armour +20\n\
                Total: 315/350\n";
    let reading = reading(text);
    assert_eq!(
        entries(&reading),
        [
            "mire-speaker-1 1 reed-mask*1 >turf-cutters-1",
            "turf-cutters-1 8 mud-sledges*1",
            "turf-cutters-2 8",
            "bog-oak-hulks-1 2 root-armour*1",
        ]
    );
    assert_eq!(certainties(&reading), "uuuuuuuuuuu", "{:#?}", reading.lines);
    assert_eq!(reading.findings, []);
}

#[test]
fn the_faction_is_found_by_its_name_or_by_its_units() {
    let catalogue = catalogue();
    let faction = |text| {
        let list = parse(text, &catalogue, None).list;
        list.map(|list| list.faction().to_string())
    };
    let moot = Some("sodwether-moot".to_string());
    assert_eq!(faction("Army: Sodwether Moot"), moot);
    assert_eq!(faction("my list\nSodweather Moot\nOrchard Levy"), moot);
    assert_eq!(faction("Turf Cutters\nStilt Waders\nOrchard Levy"), moot);
    assert_eq!(
        faction("Turf Cutters\nOrchard Levy"),
        None,
        "one unit of each"
    );
    assert_eq!(faction("hello"), None);
}

#[test]
fn small_typing_errors_are_guesses_and_nonsense_is_told() {
    let reading = reading("Trf Cuters, 8 models, mud sleges\nhello there\nHulks, 2 models, banner");
    assert_eq!(
        entries(&reading),
        ["turf-cutters-1 8 mud-sledges*1", "bog-oak-hulks-1 2"]
    );
    assert_eq!(certainties(&reading), "g??");
    let banner = reading.lines[2].parts.last().unwrap();
    assert_eq!(
        (banner.text.as_str(), &banner.meaning),
        ("banner", &Meaning::Nothing)
    );
}

#[test]
fn a_guess_names_what_else_it_could_be() {
    let reading = reading("long spades\nTurf Cutters\nspades");
    assert_eq!(certainties(&reading), "?gg");
    let unit = &reading.lines[1].parts[0];
    let said = |them: &[Message]| them.iter().map(ToString::to_string).collect::<Vec<_>>();
    assert_eq!(
        said(&unit.alternatives),
        [
            "Turf Cutters, 9 models",
            "Turf Cutters, 10 models",
            "Turf Cutters, 11 models"
        ]
    );
    let option = &reading.lines[2].parts[0];
    assert_eq!(said(&option.alternatives), ["short spades"]);
}

#[test]
fn stated_points_decide_what_a_number_means() {
    assert_eq!(
        entries(&reading("2x Bog-Oak Hulks: 180")),
        ["bog-oak-hulks-1 2", "bog-oak-hulks-2 2"]
    );
    assert_eq!(
        entries(&reading("2x Bog-Oak Hulks: 90")),
        ["bog-oak-hulks-1 2", "bog-oak-hulks-2 2"]
    );
    assert_eq!(
        entries(&reading("4x Bog-Oak Hulks: 180")),
        ["bog-oak-hulks-1 4"]
    );
    assert_eq!(
        entries(&reading("10 Turf Cutters 70")),
        ["turf-cutters-1 10"]
    );
    assert_eq!(
        entries(&reading("Turf Cutters (10): 70")),
        ["turf-cutters-1 10"]
    );
    assert_eq!(entries(&reading("Turf Cutters 77")), ["turf-cutters-1 11"]);
    assert_eq!(
        entries(&reading("Turf Cutters [85 pts] mud sledges")),
        ["turf-cutters-1 11 mud-sledges*1"]
    );
}

#[test]
fn points_that_disagree_with_the_catalogue_are_a_remark() {
    let reading =
        reading("Turf Cutters, 8 models, mud sledges (10): 70\nLine 50\nTotal 100 of 500");
    assert_eq!(entries(&reading), ["turf-cutters-1 8 mud-sledges*1"]);
    assert_eq!(
        numbers(&reading.findings),
        [
            ("list.stated-points", 64, 10),
            ("list.stated-points", 64, 70),
            ("list.stated-points", 64, 50),
            ("list.stated-total", 64, 100),
        ]
    );
    assert_eq!(
        reading.findings[1].message().to_string(),
        "Line 1 says 70 points for Turf Cutters; the catalogue says 64."
    );
    assert!(
        reading
            .findings
            .iter()
            .all(|f| f.severity == crate::lists::Severity::Remark)
    );
}

#[test]
fn another_faction_than_the_one_asked_for_is_a_remark() {
    let reading = reading("Bramblestile Steadings\nTurf Cutters 8 models");
    assert_eq!(numbers(&reading.findings), [("list.stated-faction", 0, 0)]);
    assert_eq!(entries(&reading), ["turf-cutters-1 8"]);
}

#[test]
fn a_size_the_catalogue_does_not_offer_is_kept_for_the_check_to_find() {
    assert_eq!(
        entries(&reading("Turf Cutters, 7 models")),
        ["turf-cutters-1 7"]
    );
}

#[test]
fn more_units_than_a_list_holds_are_told_and_not_made() {
    let reading =
        reading("Turf Cutters, 8 models\n4000000000x Stilt Waders, 4 models\n0x Stilt Waders");
    assert_eq!(entries(&reading), ["turf-cutters-1 8"]);
    assert_eq!(certainties(&reading), "u??");
}

#[test]
fn what_is_too_long_to_be_read_is_told() {
    let long = format!("Turf Cutters {}", "a".repeat(MAX_LINE_BYTES));
    assert_eq!(certainties(&reading(&long)), "?");
    let many = "Total\n".repeat(MAX_LINES + 1);
    assert!(certainties(&reading(&many)).ends_with("uu?"));
}

#[test]
fn numbers_and_quotes_are_read_as_people_of_either_language_write_them() {
    for text in [
        "„Turf Cutters“, 8 Modelle, mud sledges: 64,0 Punkte\nGesamt: 64",
        "»Turf Cutters« (8 Modelle) mit mud sledges = 64 Pkt.\nSumme 64 von 1.250",
        "“Turf Cutters”, 8 models, mud sledges: 64.0 points.\nTotal: 64/1,250",
        "TURF CUTTERS [8]; 'mud sledges'; 64.\n\n64 Punkte.",
    ] {
        let reading = reading(text);
        assert_eq!(
            entries(&reading),
            ["turf-cutters-1 8 mud-sledges*1"],
            "{text}"
        );
        assert!(
            !certainties(&reading).contains(['g', '?']),
            "{:#?}",
            reading.lines
        );
        assert_eq!(reading.findings, [], "{text}");
    }
}

#[test]
fn a_thousand_points_are_not_one() {
    let reading = reading("Sodwether Moot, 1,250 points\nTurf Cutters, 8 models\nTotal: 1.056");
    assert_eq!(
        reading.lines[0].parts.last().unwrap().meaning,
        Meaning::StatedCap(Points::new(1250))
    );
    assert_eq!(
        numbers(&reading.findings),
        [("list.stated-total", 56, 1056)]
    );
}
