//! The form of a plain scenario sheet. A sheet that its fields cannot express is edited as JSON.

use app::Refusal;
use document::season::scenario::{
    ItemDocument, ItemMeasureDocument, LegsDocument, ScenarioRolesDocument, ScenarioSheetDocument,
    TableDocument, WhenDocument, WhoDocument, ZoneDocument, ZoneUseDocument,
};
use league::scenario::{MAX_NUMBER, MAX_TABLE_EDGE, MAX_TURNS};

use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_reader::FormReader;
use messages::Texts;

/// Things to count that the form has room for.
pub const ITEMS: u8 = 4;

/// The fields, those that were not sent by their defaults.
pub fn with_defaults(fields: &FormData, t: Texts) -> FormData {
    let fields = fields.clone().with_defaults([
        ("turns", "6".to_owned()),
        ("width", "120".to_owned()),
        ("depth", "120".to_owned()),
        ("strip", "20".to_owned()),
        ("draw_margin", "0".to_owned()),
        ("near", t.near_edge().into_owned()),
        ("far", t.far_edge().into_owned()),
    ]);
    (1..=ITEMS).fold(fields, |fields, row| {
        fields.with_defaults([(name(row, "when").as_str(), DURING_PLAY.to_owned())])
    })
}

const DURING_PLAY: &str = "during_play";

/// The sheet that the fields say.
///
/// # Errors
/// Every field that cannot be read.
pub fn parse_sheet(fields: &FormData, t: Texts) -> Result<ScenarioSheetDocument, Refusal> {
    let fields = with_defaults(fields, t);
    let mut form = FormReader::new(&fields);
    let width = form.number("width", &t.table_width(), 1..=MAX_TABLE_EDGE);
    let depth = form.number("depth", &t.table_depth(), 1..=MAX_TABLE_EDGE);
    let strip = form.number("strip", &t.table_strip(), 0..=MAX_TABLE_EDGE / 2);
    let zone = |label, purpose, top| ZoneDocument {
        label,
        purpose,
        left: 0,
        top,
        width,
        depth: strip,
    };
    let near = zone(
        form.text("near"),
        ZoneUseDocument::FirstDeploys,
        depth.saturating_sub(strip),
    );
    let far = zone(form.text("far"), ZoneUseDocument::SecondDeploys, 0);
    let sheet = ScenarioSheetDocument {
        title: form.text("title_text"),
        summary: form.text("summary"),
        briefing: form.text("briefing").replace("\r\n", "\n"),
        turns: form.number("turns", &t.sheet_turns(), 1..=MAX_TURNS),
        roles: ScenarioRolesDocument::Symmetric,
        legs: LegsDocument::One,
        items: (1..=ITEMS)
            .filter_map(|row| item(&mut form, row, t))
            .collect(),
        joint_caps: Vec::new(),
        draw_margin: form.number("draw_margin", &t.sheet_draw(), 0..=MAX_NUMBER),
        table: TableDocument {
            width,
            depth,
            zones: match strip {
                0 => Vec::new(),
                _ => vec![near, far],
            },
            markers: Vec::new(),
        },
    };
    form.finish(sheet)
}

/// A row without a name is left out, as the page says.
fn item(form: &mut FormReader<'_>, row: u8, t: Texts) -> Option<ItemDocument> {
    let label = form.text(&name(row, "label"));
    if label.is_empty() {
        return None;
    }
    let of_row = |part: &str| format!("{}, {part}", t.sheet_item(row));
    let mut number =
        |part, label: &str| form.number(&name(row, part), &of_row(label), 1..=MAX_NUMBER);
    let measure = ItemMeasureDocument::Count {
        points_each: number("points", &t.item_points()),
        most: number("most", &t.item_most()),
        exclusive: form.is_checked(&name(row, "exclusive")),
        cap: None,
    };
    let times = [
        (DURING_PLAY, WhenDocument::DuringPlay),
        ("last_turn", WhenDocument::LastTurn),
    ];
    Some(ItemDocument {
        key: key(&label, row),
        label,
        who: WhoDocument::Either,
        when: form.choice(&name(row, "when"), &of_row(&t.item_when()), times),
        measure,
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
    let label = |at: usize| zone(at).map_or_else(String::new, |zone| zone.label.clone());
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
    let said = parse_sheet(&fields, t).ok();
    (said.as_ref() == Some(sheet)).then_some(fields)
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
        let sheet = parse_sheet(&fields_typed, ENGLISH).unwrap();
        assert_eq!(sheet.items.len(), 2);
        assert_eq!(sheet.items[0].key, "turns-holding-the-1");
        assert_eq!(sheet.table.zones.len(), 2);
        // The second row of the form is empty; what comes back has no gap.
        let mut moved = sheet.clone();
        moved.items[1].key = "banners-left-2".to_owned();
        let back = fields(&moved, ENGLISH).expect("the form can say it");
        assert_eq!(parse_sheet(&back, ENGLISH).unwrap(), moved);
    }

    #[test]
    fn a_sheet_that_says_more_than_the_form_is_left_as_data() {
        let plain = parse_sheet(&typed(&[("title_text", "Toll")]), ENGLISH).unwrap();
        assert!(fields(&plain, ENGLISH).is_some());
        let legs = ScenarioSheetDocument {
            legs: LegsDocument::TwoSummed,
            ..plain
        };
        assert!(fields(&legs, ENGLISH).is_none());
    }
}
