//! The form of a plain scenario sheet. A sheet that its fields cannot express is edited as JSON.

use document::season::scenario::{
    ItemDocument, ItemMeasureDocument, LegsDocument, ScenarioRolesDocument, ScenarioSheetDocument,
    TableDocument, WhenDocument, WhoDocument, ZoneDocument, ZoneUseDocument,
};

use crate::pages::frame::form_data::FormData;
use messages::Texts;

/// Things to count that the form has room for.
pub const ITEMS: u8 = 4;

/// What stands in a field, or its default.
pub fn default_value(fields: &FormData, name: &str, t: Texts) -> String {
    let default = match name {
        "turns" => "6",
        "width" | "depth" => "120",
        "strip" => "20",
        "draw_margin" => "0",
        "near" => &*t.near_edge(),
        "far" => &*t.far_edge(),
        _ => "",
    };
    fields
        .raw(name)
        .map_or_else(|| default.to_owned(), |typed| typed.trim().to_owned())
}

/// The sheet that the fields say.
pub fn parse_sheet(fields: &FormData, t: Texts) -> ScenarioSheetDocument {
    let text = |name: &str| default_value(fields, name, t);
    let number = |name: &str| text(name).parse().unwrap_or_default();
    let (width, depth, strip) = (number("width"), number("depth"), number("strip"));
    let zone = |label, purpose, top| ZoneDocument {
        label,
        purpose,
        left: 0,
        top,
        width,
        depth: strip,
    };
    let near = zone(
        text("near"),
        ZoneUseDocument::FirstDeploys,
        depth.saturating_sub(strip),
    );
    let far = zone(text("far"), ZoneUseDocument::SecondDeploys, 0);
    ScenarioSheetDocument {
        title: text("title_text"),
        summary: text("summary"),
        briefing: text("briefing").replace("\r\n", "\n"),
        turns: text("turns").parse().unwrap_or_default(),
        roles: ScenarioRolesDocument::Symmetric,
        legs: LegsDocument::One,
        items: (1..=ITEMS).filter_map(|row| item(fields, row)).collect(),
        joint_caps: Vec::new(),
        draw_margin: text("draw_margin").parse().unwrap_or_default(),
        table: TableDocument {
            width,
            depth,
            zones: match strip {
                0 => Vec::new(),
                _ => vec![near, far],
            },
            markers: Vec::new(),
        },
    }
}

fn item(fields: &FormData, row: u8) -> Option<ItemDocument> {
    let label = fields.text(&name(row, "label"));
    if label.is_empty() {
        return None;
    }
    let number = |part: &str| fields.parse(&name(row, part));
    Some(ItemDocument {
        key: key(label, row),
        label: label.to_owned(),
        who: WhoDocument::Either,
        when: match fields.text(&name(row, "when")) {
            "last_turn" => WhenDocument::LastTurn,
            _ => WhenDocument::DuringPlay,
        },
        measure: ItemMeasureDocument::Count {
            points_each: number("points").unwrap_or_default(),
            most: number("most").unwrap_or_default(),
            exclusive: fields.is_checked(&name(row, "exclusive")),
            cap: None,
        },
    })
}

/// Name of a field of a row.
pub fn name(row: u8, part: &str) -> String {
    format!("item_{row}_{part}")
}

/// Out of the words of the label, so far as they are plain letters; unique by its row.
fn key(label: &str, row: u8) -> String {
    let words = label.split(|c: char| !c.is_ascii_alphanumeric());
    let words: Vec<String> = words
        .filter(|word| !word.is_empty())
        .map(str::to_ascii_lowercase)
        .take(3)
        .collect();
    if words.is_empty() {
        format!("item-{row}")
    } else {
        format!("{}-{row}", words.join("-"))
    }
}

/// The fields that say a sheet, if they can say all of it.
pub fn fields(sheet: &ScenarioSheetDocument, t: Texts) -> Option<FormData> {
    let zone = |at: usize| sheet.table.zones.get(at);
    let label = |at: usize| zone(at).map(|zone| zone.label.clone()).unwrap_or_default();
    let mut all = vec![
        ("title_text".to_owned(), sheet.title.clone()),
        ("summary".to_owned(), sheet.summary.clone()),
        ("briefing".to_owned(), sheet.briefing.clone()),
        ("turns".to_owned(), sheet.turns.to_string()),
        ("draw_margin".to_owned(), sheet.draw_margin.to_string()),
        ("width".to_owned(), sheet.table.width.to_string()),
        ("depth".to_owned(), sheet.table.depth.to_string()),
        (
            "strip".to_owned(),
            zone(0).map_or(0, |zone| zone.depth).to_string(),
        ),
        ("near".to_owned(), label(0)),
        ("far".to_owned(), label(1)),
    ];
    for (row, item) in (1..=ITEMS).zip(&sheet.items) {
        all.extend(item_fields(row, item));
    }
    let fields = FormData::from_pairs(all);
    (parse_sheet(&fields, t) == *sheet).then_some(fields)
}

fn item_fields(row: u8, item: &ItemDocument) -> Vec<(String, String)> {
    let mut all = vec![(name(row, "label"), item.label.clone())];
    if item.when == WhenDocument::LastTurn {
        all.push((name(row, "when"), "last_turn".to_owned()));
    }
    if let ItemMeasureDocument::Count {
        points_each,
        most,
        exclusive,
        ..
    } = &item.measure
    {
        all.push((name(row, "points"), points_each.to_string()));
        all.push((name(row, "most"), most.to_string()));
        if *exclusive {
            all.push((name(row, "exclusive"), "yes".to_owned()));
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use messages::Language;

    use super::*;

    const ENGLISH: Texts = Texts::of(Language::English);

    fn typed(pairs: &[(&str, &str)]) -> FormData {
        let pairs = pairs.iter();
        FormData::from_pairs(
            pairs
                .map(|(name, value)| ((*name).to_owned(), (*value).to_owned()))
                .collect(),
        )
    }

    #[test]
    fn a_sheet_written_in_the_form_comes_back_into_it() {
        let fields_typed = typed(&[
            ("title_text", "Toll at the Ford"),
            ("summary", "Whoever stands there takes the toll."),
            ("briefing", "Six turns.\r\nOne marker."),
            ("item_1_label", "Turns holding the ford"),
            ("item_1_points", "2"),
            ("item_1_most", "6"),
            ("item_1_exclusive", "yes"),
            ("item_3_label", "Banners left"),
            ("item_3_when", "last_turn"),
            ("item_3_points", "1"),
            ("item_3_most", "3"),
        ]);
        let sheet = parse_sheet(&fields_typed, ENGLISH);
        assert_eq!(sheet.items.len(), 2);
        assert_eq!(sheet.items[0].key, "turns-holding-the-1");
        assert_eq!(sheet.table.zones.len(), 2);
        // The second row of the form is empty; what comes back has no gap.
        let mut moved = sheet.clone();
        moved.items[1].key = "banners-left-2".to_owned();
        let back = fields(&moved, ENGLISH).expect("the form can say it");
        assert_eq!(parse_sheet(&back, ENGLISH), moved);
    }

    #[test]
    fn a_sheet_that_says_more_than_the_form_is_left_as_data() {
        let plain = parse_sheet(&typed(&[("title_text", "Toll")]), ENGLISH);
        assert!(fields(&plain, ENGLISH).is_some());
        let legs = ScenarioSheetDocument {
            legs: LegsDocument::TwoSummed,
            ..plain
        };
        assert!(fields(&legs, ENGLISH).is_none());
    }
}
