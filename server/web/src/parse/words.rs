//! Messages for the faults that serde finds, without names of Rust types.

use app::Fault;
use messages::{Message, Value as Word, requests};
use serde_json::Value;

use crate::capitalized::capitalized;

/// One fault at a place, with the limit where a number is out of its range.
pub(super) fn fault(code: &str, pointer: String, said: &str) -> Fault {
    if let Some((given, (min, max))) = out_of_range(said) {
        let limit = given.clamp(min, max);
        let message = requests::number_range(min, max);
        return Fault::new(code, pointer, message).with(number(limit), number(given));
    }
    Fault::new(code, pointer, message(said))
}

/// A number as JSON; one that JSON readers would round is told as text.
fn number(of: i128) -> Value {
    i64::try_from(of).map_or_else(|_| Value::from(of.to_string()), Value::from)
}

fn message(said: &str) -> Message {
    if said.starts_with("missing field ") {
        return requests::field_missing();
    }
    if let Some((field, known)) = unknown_field(said) {
        return requests::field_unknown(field, known);
    }
    if let Some((word, known)) = said
        .strip_prefix("unknown variant ")
        .and_then(|rest| rest.split_once(", expected "))
    {
        return requests::word_unknown(word, one_of(known));
    }
    if said.starts_with("UUID parsing failed") {
        return requests::id_needed();
    }
    // What a document of ours found came through serde as its English.
    let mut of_documents = document::civil::MESSAGES.iter().map(|message| message());
    if let Some(found) = of_documents.find(|message| message.to_string() == said) {
        return found;
    }
    let misfit = said.strip_prefix("invalid type: ");
    let misfit = misfit.or_else(|| said.strip_prefix("invalid value: "));
    match misfit.and_then(|rest| rest.rsplit_once(", expected ")) {
        Some((given, wanted)) => requests::wrong_type(thing(wanted), thing(given)),
        None => requests::library_words(capitalized(said)),
    }
}

/// The field, and the names that there are.
fn unknown_field(said: &str) -> Option<(&str, Word)> {
    let (field, known) = said.strip_prefix("unknown field ")?.split_once(", ")?;
    let known = known.trim_start_matches("expected ");
    Some((field, names(known.trim_start_matches("one of "))))
}

/// Two names are joined by a word, which each language has; more stand in a row.
fn names(known: &str) -> Word {
    match known.split_once(" or ") {
        Some((one, other)) => Word::either([one, other]),
        None => known.into(),
    }
}

fn one_of(known: &str) -> Word {
    match known.strip_prefix("one of ") {
        Some(names) => requests::one_of(names).into(),
        None => names(known),
    }
}

/// The text of serde in the framework's error of a query.
pub(super) fn of_serde(said: &str) -> &str {
    said.trim_start_matches("Query deserialize error: ")
}

/// The parameter that serde names, where it names one.
pub(super) fn named(said: &str) -> Option<&str> {
    let mut starts = ["missing field `", "duplicate field `", "unknown field `"].into_iter();
    starts.find_map(|start| said.strip_prefix(start)?.split('`').next())
}

/// What does not fit in the query of an address.
pub(super) fn of_query(said: &str) -> Message {
    let name = named(said).unwrap_or_default();
    if said.starts_with("missing field ") {
        requests::parameter_missing(name)
    } else if said.starts_with("duplicate field ") {
        requests::parameter_twice(name)
    } else if let Some((parameter, known)) = unknown_field(said) {
        requests::parameter_unknown(parameter, known)
    } else if is_of_numbers(said) {
        requests::query_number()
    } else {
        message(said)
    }
}

/// What does not fit in one parameter of it.
pub(super) fn of_parameter(said: &str, name: &str) -> Message {
    if is_of_numbers(said) {
        requests::parameter_number(name)
    } else {
        requests::parameter_fault(name, message(said))
    }
}

fn is_of_numbers(said: &str) -> bool {
    let words = ["integer", "digit", "number"];
    words.iter().any(|word| said.contains(word))
}

/// The given number and the bounds of its type.
fn out_of_range(said: &str) -> Option<(i128, (i128, i128))> {
    let rest = said.strip_prefix("invalid value: integer `")?;
    let (given, wanted) = rest.split_once("`, expected ")?;
    Some((given.parse().ok()?, bounds(wanted)?))
}

fn bounds(wanted: &str) -> Option<(i128, i128)> {
    Some(match wanted {
        "u8" => (0, u8::MAX.into()),
        "u16" => (0, u16::MAX.into()),
        "u32" => (0, u32::MAX.into()),
        "u64" | "usize" => (0, u64::MAX.into()),
        "i8" => (i8::MIN.into(), i8::MAX.into()),
        "i16" => (i16::MIN.into(), i16::MAX.into()),
        "i32" => (i32::MIN.into(), i32::MAX.into()),
        "i64" => (i64::MIN.into(), i64::MAX.into()),
        _ => return None,
    })
}

fn thing(word: &str) -> Word {
    let first = word.split([' ', '`']).next().unwrap_or_default();
    let message = match first {
        _ if bounds(word).is_some() => requests::a_whole_number(),
        "internally" | "adjacently" | "struct" | "map" => requests::an_object(),
        "tuple" | "sequence" => requests::an_array(),
        "string" => requests::a_text(),
        "integer" | "boolean" | "floating" => return word.split('`').nth(1).unwrap_or(word).into(),
        _ => match word {
            "a string" | "a borrowed string" | "str" => requests::a_text(),
            "a sequence" => requests::an_array(),
            "a map" => requests::an_object(),
            "a boolean" => requests::a_truth_value(),
            other => return other.into(),
        },
    };
    message.into()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_word_of_a_library_is_told() {
        let cases = [
            ("missing field `legs`", "This field is missing."),
            (
                "unknown field `x`, expected one of `name`, `slug`",
                "`x` is no field here; known: `name`, `slug`.",
            ),
            (
                "unknown variant `x`, expected `step` or `list`",
                "`x` is not known here; give `step` or `list`.",
            ),
            (
                "invalid type: integer `7`, expected internally tagged enum YardstickDocument",
                "Expected an object, not 7.",
            ),
            (
                "invalid type: string \"a, expected b\", expected u32",
                "Expected a whole number, not a text.",
            ),
            (
                "invalid type: map, expected a sequence",
                "Expected an array, not an object.",
            ),
        ];
        for (said, wanted) in cases {
            assert_eq!(message(said).to_string(), wanted);
        }
    }

    #[test]
    fn a_number_out_of_its_range_is_told_with_the_bound() {
        let found = fault(
            "validation",
            String::new(),
            "invalid value: integer `-1`, expected u32",
        );
        assert_eq!(
            (found.limit, found.actual),
            (Some(0.into()), Some((-1).into()))
        );
    }
}
