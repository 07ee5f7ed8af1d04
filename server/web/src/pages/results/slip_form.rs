//! The form of a result slip: a field for each counted item, side and leg.

use std::collections::BTreeMap;

use app::Refusal;
use document::results::{
    BothDocument, CountsDocument, NoticeDocument, SideCountsDocument, TypedResultDocument,
};
use league::points::MAX_POINTS;
use league::scenario::{ItemMeasure, ScenarioSheet, ScoreItem, ScoringSide};
use league::side::Side;

use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::FormErrors;
use crate::pages::frame::form_reader::FormReader;
use messages::Texts;

/// One thing that is counted in one leg.
pub struct CountRow {
    /// What the form says.
    pub label: String,
    /// The field of each side, where that side counts it.
    pub sides: [Option<CountField>; 2],
}

/// The field of one count.
pub struct CountField {
    /// What it is called.
    pub name: String,
    pub value: String,
    /// Whether that is no count.
    pub wrong: bool,
}

/// The rows of each leg, with what was typed and what is wrong with it.
pub fn legs(sheet: &ScenarioSheet, fields: &FormData, errors: &FormErrors) -> Vec<Vec<CountRow>> {
    let count_row = |leg: usize, item: &ScoreItem| CountRow {
        label: item.label.to_string(),
        sides: Side::BOTH.map(|side| {
            let name = name(leg, side, item.key.as_str());
            is_counted(item, leg, side).then(|| CountField {
                value: fields.typed(&name).to_owned(),
                wrong: errors.is_at(&name),
                name,
            })
        }),
    };
    let items = || sheet.terms().items.iter().filter(|item| is_typed(item));
    (0..sheet.terms().legs.count())
        .map(|leg| items().map(|item| count_row(leg, item)).collect())
        .collect()
}

fn is_typed(item: &ScoreItem) -> bool {
    !matches!(item.measure, ItemMeasure::RestOf { .. })
}

/// Whether a side counts an item in a leg.
fn is_counted(item: &ScoreItem, leg: usize, side: Side) -> bool {
    match item.who {
        ScoringSide::Either => true,
        ScoringSide::Only(role) => side.role_in_leg(leg) == role,
    }
}

fn name(leg: usize, side: Side, item: &str) -> String {
    let side = match side {
        Side::First => "first",
        Side::Second => "second",
    };
    format!("leg.{leg}.{side}.{item}")
}

/// A way in which a game can end.
pub struct EndingChoice {
    /// What the form sends.
    pub value: &'static str,
    pub label: String,
    /// Whether it is chosen.
    pub chosen: bool,
    /// Whether only a ruling can say so.
    pub by_ruling: bool,
}

/// How a game ended.
#[derive(Clone, Copy, PartialEq)]
enum Ending {
    Played,
    Conceded(Side),
    Absent(Side, NoticeDocument),
    DoubleLoss,
    Void,
}

/// Each with the word that the form sends.
const ENDINGS: [(&str, Ending); 9] = [
    ("played", Ending::Played),
    ("conceded first", Ending::Conceded(Side::First)),
    ("conceded second", Ending::Conceded(Side::Second)),
    (
        "no_show first given",
        Ending::Absent(Side::First, NoticeDocument::Given),
    ),
    (
        "no_show first",
        Ending::Absent(Side::First, NoticeDocument::NotGiven),
    ),
    (
        "no_show second given",
        Ending::Absent(Side::Second, NoticeDocument::Given),
    ),
    (
        "no_show second",
        Ending::Absent(Side::Second, NoticeDocument::NotGiven),
    ),
    ("double_loss", Ending::DoubleLoss),
    ("void", Ending::Void),
];

/// Every way, with the one that was chosen.
pub fn endings(t: Texts, [first, second]: [&str; 2], fields: &FormData) -> Vec<EndingChoice> {
    let name = |side| match side {
        Side::First => first,
        Side::Second => second,
    };
    let ending = |(value, ending)| EndingChoice {
        chosen: fields.text("how") == value,
        by_ruling: ending == Ending::Void,
        value,
        label: match ending {
            Ending::Played => t.ended_played().into_owned(),
            Ending::Conceded(side) => t.ended_conceded(name(side)),
            Ending::Absent(side, NoticeDocument::Given) => t.ended_absent_notice(name(side)),
            Ending::Absent(side, NoticeDocument::NotGiven) => t.ended_absent(name(side)),
            Ending::DoubleLoss => t.outcome_double_loss().into_owned(),
            Ending::Void => t.outcome_void().into_owned(),
        },
    };
    ENDINGS.into_iter().map(ending).collect()
}

/// What was typed, as the league's own form of it.
///
/// # Errors
/// Every count that is none.
pub fn parse_result(
    sheet: &ScenarioSheet,
    fields: &FormData,
    t: Texts,
    names: [&str; 2],
) -> Result<TypedResultDocument, Refusal> {
    let mut form = FormReader::new(fields);
    let counts = parse_counts(&mut form, sheet, t, names);
    let typed = match form.choice("how", &t.how_ended(), ENDINGS) {
        Ending::Played => TypedResultDocument::Played { counts },
        Ending::Conceded(side) => TypedResultDocument::Conceded {
            by: side.into(),
            counts: Some(counts),
        },
        Ending::Absent(side, notice) => TypedResultDocument::NoShow {
            absent: side.into(),
            notice,
        },
        Ending::DoubleLoss => TypedResultDocument::DoubleLoss,
        Ending::Void => TypedResultDocument::Void,
    };
    form.finish(typed)
}

fn parse_counts(
    form: &mut FormReader<'_>,
    sheet: &ScenarioSheet,
    t: Texts,
    [first, second]: [&str; 2],
) -> CountsDocument {
    let legs = sheet.terms().legs.count();
    let mut parse_side = |leg: usize, side: Side, player: &str| {
        let mut items = BTreeMap::new();
        let counted = sheet.terms().items.iter();
        for item in counted.filter(|item| is_typed(item) && is_counted(item, leg, side)) {
            let label = match legs {
                1 => format!("{}, {player}", item.label),
                _ => format!("{}, {}, {player}", t.leg_n(leg + 1), item.label),
            };
            let name = name(leg, side, item.key.as_str());
            if let Some(count) = form.optional_number(&name, &label, 0..=MAX_POINTS) {
                items.insert(item.key.to_string(), count);
            }
        }
        SideCountsDocument {
            items,
            started: None,
        }
    };
    let legs = (0..legs).map(|leg| BothDocument {
        first: parse_side(leg, Side::First, first),
        second: parse_side(leg, Side::Second, second),
    });
    CountsDocument {
        legs: legs.collect(),
    }
}
