//! Typed values out of the query of an address. What does not fit is told by the name of its parameter.

use actix_web::web::Query;
use serde::de::DeserializeOwned;

use super::words;
use crate::problem::{Problem, WireFault};

/// Reads `T` out of a query.
///
/// # Errors
/// 400 naming the parameter and what it was.
pub fn query<T: DeserializeOwned>(text: &str) -> Result<T, Problem> {
    read(text).map_err(|said| match words::named(&said) {
        Some(_) => misfit(&said),
        None => {
            let (name, value) = guilty::<T>(text, &said);
            let detail = words::of_parameter(&said, &name);
            Problem::parameter(&name).actual(value).detail(detail)
        }
    })
}

/// 400 for a query of whatever type: names the parameter where serde does.
pub fn misfit(said: &str) -> Problem {
    let said = words::of_serde(said);
    let problem = match words::named(said) {
        Some(name) => Problem::parameter(name),
        None => Problem::wire(WireFault::InvalidParameter),
    };
    problem.detail(words::of_query(said))
}

fn read<T: DeserializeOwned>(text: &str) -> Result<T, String> {
    let read = Query::<T>::from_query(text);
    read.map(Query::into_inner)
        .map_err(|cause| words::of_serde(&cause.to_string()).to_owned())
}

/// The first parameter from which on serde says the same as of the whole, with its value.
fn guilty<T: DeserializeOwned>(text: &str, said: &str) -> (String, String) {
    let ends = text.match_indices('&').map(|(at, _)| at);
    let ends: Vec<usize> = ends.chain([text.len()]).collect();
    let upto = |end: &usize| text.get(..*end).unwrap_or_default();
    let is_fine = |end: &usize| read::<T>(upto(end)).err().is_none_or(|other| other != said);
    let at = ends.partition_point(is_fine);
    let part = ends.get(at).map(upto).unwrap_or_default();
    let part = part.rsplit('&').next().unwrap_or_default();
    let pairs: Vec<(String, String)> = read(part).unwrap_or_default();
    pairs.into_iter().next().unwrap_or_default()
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
        problem.sentence().to_owned()
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
