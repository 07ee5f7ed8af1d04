//! Deserialization of JSON with faults by JSON Pointer, in messages that name no Rust type.

mod place;
mod query;
mod words;

use app::Reason;
use messages::requests;
use serde::de::DeserializeOwned;
use serde_json::Value;
use serde_json::error::Category;

use crate::capitalized::capitalized;
use crate::problem::{HttpFault, Problem};

pub use query::{misfit as invalid_query, query};

/// Reads `T` out of JSON text.
///
/// # Errors
/// 400 for broken syntax, doubled keys or text that is no Unicode; 422 naming the field otherwise.
pub fn parse<T: DeserializeOwned>(bytes: &[u8]) -> Result<T, Problem> {
    let mut source = serde_json::Deserializer::from_slice(bytes);
    let value = T::deserialize(&mut source).map_err(|cause| {
        let doubled = cause.to_string().starts_with("duplicate field");
        let is_of_content = match cause.classify() {
            Category::Data => !doubled,
            // An array with more than its type takes is told as if its text were wrong.
            _ => serde_json::from_slice::<Value>(bytes).is_ok(),
        };
        if is_of_content {
            misfit::<T>(bytes, &cause)
        } else {
            malformed(&cause)
        }
    })?;
    source.end().map_err(|cause| malformed(&cause))?;
    Ok(value)
}

/// 422 for JSON that is no `T`.
fn misfit<T: DeserializeOwned>(bytes: &[u8], cause: &serde_json::Error) -> Problem {
    let whole = serde_json::from_slice(bytes).ok();
    let found = whole.and_then(place::find::<T>);
    let (pointer, said) = found.unwrap_or_else(|| (String::new(), cause.to_string()));
    let said = said.split(" at line ").next().unwrap_or_default();
    let code = if said.starts_with("unknown field ") {
        "unknown-field"
    } else {
        Reason::Validation.code()
    };
    Problem::unprocessable(code, vec![words::fault(code, pointer, said)])
}

fn malformed(cause: &serde_json::Error) -> Problem {
    Problem::http(HttpFault::MalformedJson)
        .detail(requests::json_malformed(capitalized(&cause.to_string())))
}

#[cfg(test)]
mod tests {
    use serde::Deserialize;

    use super::*;

    #[derive(Debug, Deserialize)]
    #[serde(deny_unknown_fields)]
    #[allow(dead_code, reason = "only its reading is tested")]
    struct Sample {
        points: u32,
        #[serde(default)]
        pairs: Vec<[u8; 2]>,
    }

    fn code(text: &[u8]) -> (u16, String) {
        let problem = parse::<Sample>(text).unwrap_err();
        (problem.status().as_u16(), problem.code().to_owned())
    }

    #[test]
    fn syntax_is_400_and_content_is_422() {
        assert!(parse::<Sample>(br#"{"points": 7}"#).is_ok());
        assert_eq!(code(br#"{"points": NaN}"#), (400, "malformed-json".into()));
        assert_eq!(code(br#"{"points": 7} x"#), (400, "malformed-json".into()));
        assert_eq!(
            code(br#"{"points": 7, "points": 8}"#),
            (400, "malformed-json".into())
        );
        assert_eq!(
            code("[".repeat(10_000).as_bytes()),
            (422, "validation".into())
        );
        assert_eq!(code(b"\xef\xbb\xbf{}"), (400, "malformed-json".into()));
        assert_eq!(
            code(br#"{"points": 7, "role": "owner"}"#),
            (422, "unknown-field".into())
        );
        assert_eq!(code(br#"{"points": "7"}"#), (422, "validation".into()));
        assert_eq!(
            code(br#"{"points": 7, "pairs": [[1, 2, 3]]}"#),
            (422, "validation".into())
        );
        assert_eq!(
            code(br#"{"points": 7, "pairs": [[1, 2, 3]}"#),
            (400, "malformed-json".into())
        );
        assert_eq!(code(br#"{"points": 1e2}"#), (422, "validation".into()));
        assert_eq!(code(br#"{"points": -7}"#), (422, "validation".into()));
    }
}
