//! The form of a result slip: a field for each counted item, side and leg.

use std::collections::BTreeMap;

use document::results::{BothDocument, SideDocument};
use document::results::{CountsDocument, NoticeDocument, SideCountsDocument, TypedResultDocument};
use league::scenario::{ItemMeasure, ScenarioSheet, ScoreItem, ScoringSide};
use league::side::Side;

use crate::pages::frame::form_data::FormData;
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

impl CountField {
    fn new(name: String, fields: &FormData) -> Self {
        let value = fields.text(&name).to_owned();
        Self {
            wrong: !value.is_empty() && value.parse::<u32>().is_err(),
            name,
            value,
        }
    }
}

/// Whether something was typed that is no count: it must not be taken for nothing.
pub fn has_invalid_count(sheet: &ScenarioSheet, fields: &FormData) -> bool {
    let rows = legs(sheet, fields).into_iter().flatten();
    let mut typed = rows.flat_map(|row| row.sides).flatten();
    typed.any(|field| field.wrong)
}

/// The rows of each leg, with what was typed.
pub fn legs(sheet: &ScenarioSheet, fields: &FormData) -> Vec<Vec<CountRow>> {
    let count = sheet.terms().legs.count();
    let items = || sheet.terms().items.iter().filter(|item| is_typed(item));
    (0..count)
        .map(|leg| items().map(|item| count_row(leg, item, fields)).collect())
        .collect()
}

fn is_typed(item: &ScoreItem) -> bool {
    !matches!(item.measure, ItemMeasure::RestOf { .. })
}

fn count_row(leg: usize, item: &ScoreItem, fields: &FormData) -> CountRow {
    let field = |side: Side| {
        let counts = match item.who {
            ScoringSide::Either => true,
            ScoringSide::Only(role) => side.role_in_leg(leg) == role,
        };
        counts.then(|| CountField::new(name(leg, side, item.key.as_str()), fields))
    };
    CountRow {
        label: item.label.to_string(),
        sides: Side::BOTH.map(field),
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

/// Every way, with the one that was chosen.
pub fn endings(t: Texts, [first, second]: [&str; 2], fields: &FormData) -> Vec<EndingChoice> {
    let ways = [
        ("played", t.ended_played().into_owned()),
        ("conceded first", t.ended_conceded(first)),
        ("conceded second", t.ended_conceded(second)),
        ("no_show first given", t.ended_absent_notice(first)),
        ("no_show first", t.ended_absent(first)),
        ("no_show second given", t.ended_absent_notice(second)),
        ("no_show second", t.ended_absent(second)),
        ("double_loss", t.outcome_double_loss().into_owned()),
        ("void", t.outcome_void().into_owned()),
    ];
    let ending = |(value, label)| EndingChoice {
        chosen: fields.text("how") == value,
        by_ruling: value == "void",
        value,
        label,
    };
    ways.into_iter().map(ending).collect()
}

/// What was typed, as the league's own form of it.
pub fn parse_result(sheet: &ScenarioSheet, fields: &FormData) -> TypedResultDocument {
    let counts = counts(sheet, fields);
    let (how, whom) = fields
        .text("how")
        .split_once(' ')
        .unwrap_or((fields.text("how"), ""));
    let side = if whom.starts_with("second") {
        SideDocument::Second
    } else {
        SideDocument::First
    };
    match how {
        "conceded" => TypedResultDocument::Conceded {
            by: side,
            counts: Some(counts),
        },
        "no_show" => TypedResultDocument::NoShow {
            absent: side,
            notice: match whom.ends_with("given") {
                true => NoticeDocument::Given,
                false => NoticeDocument::NotGiven,
            },
        },
        "double_loss" => TypedResultDocument::DoubleLoss,
        "void" => TypedResultDocument::Void,
        _ => TypedResultDocument::Played { counts },
    }
}

fn counts(sheet: &ScenarioSheet, fields: &FormData) -> CountsDocument {
    let of = |leg: usize, side: Side| {
        let items = sheet.terms().items.iter().filter_map(|item| {
            let typed = fields.parse(&name(leg, side, item.key.as_str()))?;
            Some((item.key.to_string(), typed))
        });
        SideCountsDocument {
            items: items.collect::<BTreeMap<_, _>>(),
            started: None,
        }
    };
    let legs = (0..sheet.terms().legs.count()).map(|leg| BothDocument {
        first: of(leg, Side::First),
        second: of(leg, Side::Second),
    });
    CountsDocument {
        legs: legs.collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_count_is_wrong_and_kept() {
        for (typed, wrong) in [
            ("", false),
            ("0", false),
            (" 7 ", false),
            ("-1", true),
            ("abc", true),
            ("2.5", true),
            ("99999999999", true),
        ] {
            let name = "leg.0.first.quern".to_owned();
            let fields = FormData::from_pairs(vec![(name.clone(), typed.to_owned())]);
            let field = CountField::new(name, &fields);
            assert_eq!((field.value.as_str(), field.wrong), (typed.trim(), wrong));
        }
    }
}
