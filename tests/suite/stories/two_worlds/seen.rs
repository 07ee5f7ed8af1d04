use serde_json::Value;

use crate::harness::Answer;

/// Headers of the way and not of the answer (RFC 9110, section 7.6.1), and the answer's own date.
/// `connection` depends on whether a body that nobody reads has arrived yet.
const OF_THE_WAY: [&str; 2] = ["date", "connection"];

/// What stands before the random parts of a page: the token of its forms, the id of its request.
const DRAWN: [&str; 2] = ["name=\"token\" value=\"", ": <code>"];

/// An answer without what differs in every answer: its date, the id of the request, and what is drawn
/// for a browser.
#[derive(Debug, PartialEq)]
pub struct Seen {
    pub asked: String,
    status: u16,
    headers: Vec<(String, String)>,
    body: String,
}

impl Seen {
    pub fn new(way: &str, answer: &Answer) -> Self {
        let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
        let headers = answer.headers.iter();
        let headers = headers.filter(|(name, _)| !OF_THE_WAY.contains(&name.as_str()));
        let headers = headers.map(|(name, value)| (name.to_string(), text(value.as_bytes())));
        let mut headers: Vec<_> = headers.map(without_secret).collect();
        headers.sort();
        let mut body = text(&answer.body);
        if let Ok(Value::Object(mut members)) = serde_json::from_str(&body) {
            if members.remove("request_id").is_some() {
                body = Value::Object(members).to_string();
            }
        } else if body.starts_with("<!doctype html>") {
            body = DRAWN.iter().fold(body, |body, mark| without(&body, mark));
        }
        Self {
            asked: format!("{} {way}", answer.asked),
            status: answer.status,
            headers,
            body,
        }
    }
}

/// A cookie that is drawn for a visitor keeps its name alone.
fn without_secret((name, value): (String, String)) -> (String, String) {
    let kept = match value.split_once('=') {
        Some((cookie, _)) if name == "set-cookie" => cookie.to_owned(),
        _ => value,
    };
    (name, kept)
}

/// The text without what stands between a mark and the end of the value behind it.
fn without(text: &str, mark: &str) -> String {
    let mut parts = text.split(mark);
    let first = parts.next().unwrap_or_default().to_owned();
    parts.fold(first, |kept, part| {
        let end = part.find(['"', '<']).unwrap_or(part.len());
        format!("{kept}{mark}{}", &part[end..])
    })
}

/// What is answered differently in two worlds.
pub fn differences<'a>(one: &'a [Seen], other: &'a [Seen]) -> Vec<(&'a Seen, &'a Seen)> {
    assert_eq!(one.len(), other.len());
    let pairs = one.iter().zip(other);
    pairs.filter(|(one, other)| one != other).collect()
}
