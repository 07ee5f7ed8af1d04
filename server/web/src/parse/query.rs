//! Deserialization of query strings with faults by parameter.

use serde::de::DeserializeOwned;
use serde_urlencoded::Deserializer;

use super::words;
use crate::problem::{HttpFault, Problem};

type Misfit = serde_path_to_error::Error<serde_urlencoded::de::Error>;

/// Reads `T` out of a query.
///
/// # Errors
/// 400 naming the parameter and what it was.
pub fn query<T: DeserializeOwned>(text: &str) -> Result<T, Problem> {
    deserialize(text).map_err(|cause| {
        let said = cause.inner().to_string();
        if words::named(&said).is_some() {
            return misfit(&said);
        }
        let name = cause.path().to_string();
        let detail = words::of_parameter(&said, &name);
        let given = value(text, &name);
        Problem::parameter(&name).actual(given).detail(detail)
    })
}

/// 400 for a query of whatever type: names the parameter where serde does.
pub fn misfit(said: &str) -> Problem {
    let said = words::of_serde(said);
    let problem = match words::named(said) {
        Some(name) => Problem::parameter(name),
        None => Problem::http(HttpFault::InvalidParameter),
    };
    problem.detail(words::of_query(said))
}

fn deserialize<T: DeserializeOwned>(text: &str) -> Result<T, Misfit> {
    let pairs = form_urlencoded::parse(text.as_bytes());
    serde_path_to_error::deserialize(Deserializer::new(pairs))
}

fn value(text: &str, name: &str) -> String {
    let mut pairs = form_urlencoded::parse(text.as_bytes());
    let found = pairs.find(|(key, _)| key == name);
    found.map_or_else(String::new, |(_, value)| value.into_owned())
}

#[cfg(test)]
mod tests {
    use serde::Deserialize;

    use super::*;

    #[derive(Debug, Deserialize)]
    #[serde(deny_unknown_fields)]
    #[allow(dead_code, reason = "only its reading is tested")]
    struct Sample {
        search: Option<String>,
        week: u8,
        limit: Option<u16>,
    }

    fn refused(text: &str) -> String {
        let problem = query::<Sample>(text).unwrap_err();
        problem.detail_or_title().to_string()
    }

    #[test]
    fn a_parameter_that_does_not_fit_is_named() {
        assert!(query::<Sample>("week=3&search=ford").is_ok());
        let out_of_range =
            |name: &str| format!("`{name}` must be a whole number within its range.");
        let cases = [
            ("week=ten", out_of_range("week")),
            ("search=x&week=300", out_of_range("week")),
            ("week=3&limit=-1&search=7", out_of_range("limit")),
            ("search=x", "The parameter `week` is missing.".to_owned()),
            (
                "week=1&week=2",
                "The parameter `week` stands twice.".to_owned(),
            ),
            (
                "sort=points&week=1",
                "`sort` is no parameter here; known: `search`, `week`, `limit`.".to_owned(),
            ),
        ];
        for (text, said) in cases {
            assert_eq!(refused(text), said, "{text}");
        }
    }
}
