//! The form of a result: one field for each thing the sheet counts, for each side and leg.

use std::collections::BTreeMap;

use document::both::{BothDocument, SideDocument};
use document::result::{CountsDocument, NoticeDocument, SideCountsDocument, TypedResultDocument};
use league::scenario::{Item, Measure, ScenarioSheet, Who};
use league::side::Side;

use super::fields::Fields;
use super::texts::Texts;

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
    /// What was typed.
    pub value: String,
    /// Whether that is no count.
    pub wrong: bool,
}

impl CountField {
    fn new(name: String, fields: &Fields) -> Self {
        let value = fields.text(&name).to_owned();
        Self {
            wrong: !value.is_empty() && value.parse::<u32>().is_err(),
            name,
            value,
        }
    }
}

/// Whether something was typed that is no count: it must not be taken for nothing.
pub fn is_wrong(sheet: &ScenarioSheet, fields: &Fields) -> bool {
    let rows = legs(sheet, fields).into_iter().flatten();
    let mut typed = rows.flat_map(|row| row.sides).flatten();
    typed.any(|field| field.wrong)
}

/// The rows of each leg, with what was typed.
pub fn legs(sheet: &ScenarioSheet, fields: &Fields) -> Vec<Vec<CountRow>> {
    let count = sheet.terms().legs.count();
    let items = || sheet.terms().items.iter().filter(|item| is_typed(item));
    (0..count)
        .map(|leg| items().map(|item| count_row(leg, item, fields)).collect())
        .collect()
}

fn is_typed(item: &Item) -> bool {
    !matches!(item.measure, Measure::RestOf { .. })
}

fn count_row(leg: usize, item: &Item, fields: &Fields) -> CountRow {
    let field = |side: Side| {
        let counts = match item.who {
            Who::Either => true,
            Who::Only(role) => side.role_in_leg(leg) == role,
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
pub struct Ending {
    /// What the form sends.
    pub value: &'static str,
    /// What it says.
    pub label: String,
    /// Whether it is chosen.
    pub chosen: bool,
    /// Whether only a ruling can say so.
    pub by_ruling: bool,
}

/// Every way, with the one that was chosen.
pub fn endings(t: &Texts, [first, second]: [&str; 2], fields: &Fields) -> Vec<Ending> {
    let ways = [
        ("played", t.ended_played.to_string()),
        ("conceded first", t.ended_conceded.with(first)),
        ("conceded second", t.ended_conceded.with(second)),
        ("no_show first given", t.ended_absent_notice.with(first)),
        ("no_show first", t.ended_absent.with(first)),
        ("no_show second given", t.ended_absent_notice.with(second)),
        ("no_show second", t.ended_absent.with(second)),
        ("double_loss", t.outcome_double_loss.to_string()),
        ("void", t.outcome_void.to_string()),
    ];
    let ending = |(value, label)| Ending {
        chosen: fields.text("how") == value,
        by_ruling: value == "void",
        value,
        label,
    };
    ways.into_iter().map(ending).collect()
}

/// What was typed, as the league's own form of it.
pub fn read(sheet: &ScenarioSheet, fields: &Fields) -> TypedResultDocument {
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

fn counts(sheet: &ScenarioSheet, fields: &Fields) -> CountsDocument {
    let of = |leg: usize, side: Side| {
        let items = sheet.terms().items.iter().filter_map(|item| {
            let typed = fields.value(&name(leg, side, item.key.as_str()))?;
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
            let fields = Fields::of(vec![(name.clone(), typed.to_owned())]);
            let field = CountField::new(name, &fields);
            assert_eq!((field.value.as_str(), field.wrong), (typed.trim(), wrong));
        }
    }
}
