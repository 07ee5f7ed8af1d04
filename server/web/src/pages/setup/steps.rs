//! The steps of the set-up wizard: their titles, fields and choices.

use std::borrow::Cow;

use super::form::{BY_SCORE, ROUND_ROBIN, ROUND_ROBIN_TWICE};
use crate::pages::frame::form_data::FormData;
use messages::Texts;

/// Steps of setting up a season.
pub const STEPS: u8 = 5;

/// The fields of each step.
const FIELDS: [&[&str]; 4] = [
    &["name", "catalogue", "visibility", "zone", "places"],
    &[
        "first_day",
        "days_per_week",
        "caps_kind",
        "caps_first",
        "caps_more",
        "caps_weeks",
        "caps_each",
    ],
    &[
        "announce_day",
        "announce_time",
        "due_day",
        "due_time",
        "until_day",
        "until_time",
        "grace",
        "night_1_day",
        "night_1_time",
        "night_1_tables",
        "night_2_day",
        "night_2_time",
        "night_2_tables",
        "night_3_day",
        "night_3_time",
        "night_3_tables",
        "night_4_day",
        "night_4_time",
        "night_4_tables",
    ],
    &[
        "method",
        "per_week",
        "win",
        "draw",
        "loss",
        "bye",
        "painted",
        "largest",
        "carry",
        "faction_lock",
        "best_weeks",
        "confirm_hours",
        "rules",
    ],
];

/// A choice of who meets whom.
pub struct MethodChoice {
    /// What its field sends.
    pub value: &'static str,
    pub name: Cow<'static, str>,
    /// When to choose it.
    pub help: Cow<'static, str>,
}

/// The moments of a week.
pub fn moments(t: Texts) -> [(&'static str, Cow<'static, str>); 3] {
    [
        ("announce", t.announced_at()),
        ("due", t.lists_due()),
        ("until", t.play_until()),
    ]
}

/// Who may meet whom.
pub fn methods(t: Texts) -> [MethodChoice; 3] {
    [
        (BY_SCORE, t.method_by_score(), t.method_by_score_help()),
        (
            ROUND_ROBIN,
            t.method_round_robin(),
            t.method_round_robin_help(),
        ),
        (
            ROUND_ROBIN_TWICE,
            t.method_round_robin_twice(),
            t.method_round_robin_twice_help(),
        ),
    ]
    .map(|(value, name, help)| MethodChoice { value, name, help })
}

/// What a game, a bye and paint are worth.
pub fn values(t: Texts) -> [(&'static str, Cow<'static, str>); 5] {
    [
        ("win", t.value_win()),
        ("draw", t.value_draw()),
        ("loss", t.value_loss()),
        ("bye", t.value_bye()),
        ("painted", t.value_painted()),
    ]
}

/// Limits that may be left empty.
pub fn limits(t: Texts) -> [(&'static str, Cow<'static, str>); 3] {
    [
        ("largest", t.limit_largest_unit()),
        ("carry", t.limit_carry_over()),
        ("best_weeks", t.limit_best_weeks()),
    ]
}

/// What stands above a step.
pub fn title(t: Texts, step: u8) -> Cow<'static, str> {
    match step {
        1 => t.setup_basics(),
        2 => t.setup_caps(),
        3 => t.setup_rhythm(),
        4 => t.setup_rules(),
        _ => t.setup_preview(),
    }
}

/// What the other steps hold, as hidden fields of this one. A field that was never sent is left to
/// its default.
pub fn carried(step: u8, fields: &FormData) -> Vec<(&'static str, String)> {
    let others = FIELDS.iter().zip(1..).filter(|(_, of)| *of != step);
    others
        .flat_map(|(names, _)| names.iter())
        .filter_map(|name| Some((*name, fields.raw(name)?.to_owned())))
        .collect()
}
