//! Rewrites the messages of serde without names of Rust types.

use app::Fault;
use serde_json::Value;

/// One fault at a place, with the limit where a number is out of its range.
pub(super) fn fault(code: &str, pointer: String, said: &str) -> Fault {
    if let Some((given, range)) = out_of_range(said) {
        let detail = format!("Must be a whole number from {} to {}.", range.0, range.1);
        let limit = given.clamp(range.0, range.1);
        return Fault::new(code, pointer, detail).with(number(limit), number(given));
    }
    Fault::new(code, pointer, told(said))
}

/// A number as JSON; one that JSON readers would round is told as text.
fn number(of: i128) -> Value {
    i64::try_from(of).map_or_else(|_| Value::from(of.to_string()), Value::from)
}

fn told(said: &str) -> String {
    if said.starts_with("missing field ") {
        return "This field is missing.".to_owned();
    }
    if let Some((field, known)) = said
        .strip_prefix("unknown field ")
        .and_then(|rest| rest.split_once(", "))
    {
        let known = known.trim_start_matches("expected ");
        let known = known.trim_start_matches("one of ");
        return format!("{field} is no field here; known: {known}.");
    }
    if let Some((word, known)) = said
        .strip_prefix("unknown variant ")
        .and_then(|rest| rest.split_once(", expected "))
    {
        return format!("{word} is not known here; give {known}.");
    }
    if said.starts_with("UUID parsing failed") {
        return "Must be an id, a UUID such as 0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e64.".to_owned();
    }
    let misfit = said.strip_prefix("invalid type: ");
    let misfit = misfit.or_else(|| said.strip_prefix("invalid value: "));
    match misfit.and_then(|rest| rest.rsplit_once(", expected ")) {
        Some((given, wanted)) => format!("Expected {}, not {}.", thing(wanted), thing(given)),
        None => sentence(said),
    }
}

/// What serde says of a query, without what the framework says of it.
pub(super) fn of_serde(said: &str) -> &str {
    said.trim_start_matches("Query deserialize error: ")
}

/// The parameter that serde names, where it names one.
pub(super) fn named(said: &str) -> Option<&str> {
    let mut starts = ["missing field `", "duplicate field `", "unknown field `"].into_iter();
    starts.find_map(|start| said.strip_prefix(start)?.split('`').next())
}

/// What does not fit in the query of an address.
pub(super) fn of_query(said: &str) -> String {
    let name = named(said).unwrap_or_default();
    if said.starts_with("missing field ") {
        format!("The parameter `{name}` is missing.")
    } else if said.starts_with("duplicate field ") {
        format!("The parameter `{name}` stands twice.")
    } else if said.starts_with("unknown field ") {
        told(said).replace("no field here", "no parameter here")
    } else if is_of_numbers(said) {
        "A number in the query is no whole number, or is out of its range.".to_owned()
    } else {
        told(said)
    }
}

/// What does not fit in one parameter of it.
pub(super) fn of_parameter(said: &str, name: &str) -> String {
    if is_of_numbers(said) {
        format!("`{name}` must be a whole number within its range.")
    } else {
        format!("`{name}`: {}", told(said))
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

fn thing(word: &str) -> String {
    let first = word.split([' ', '`']).next().unwrap_or_default();
    match first {
        _ if bounds(word).is_some() => "a whole number".to_owned(),
        "internally" | "adjacently" | "struct" | "map" => "an object".to_owned(),
        "tuple" | "sequence" => "an array".to_owned(),
        "string" => "a text".to_owned(),
        "integer" | "boolean" | "floating" => word.split('`').nth(1).unwrap_or(word).to_owned(),
        _ => match word {
            "a string" | "a borrowed string" | "str" => "a text".to_owned(),
            "a sequence" => "an array".to_owned(),
            "a map" => "an object".to_owned(),
            other => other.to_owned(),
        },
    }
}

/// With a capital and a full stop.
pub(super) fn sentence(words: &str) -> String {
    let mut chars = words.chars();
    let first = chars
        .next()
        .map(|c| c.to_uppercase().to_string())
        .unwrap_or_default();
    format!("{first}{}.", chars.as_str())
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
            assert_eq!(told(said), wanted);
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
