//! Sentences that another language knows by their English are still said so.

use crate::sources::files;

/// Made of parts, by `app::words`.
const MADE_OF_PARTS: [&str; 1] = ["The handle {}."];

#[test]
fn no_translation_waits_for_a_sentence_that_nobody_says() {
    let mut said = String::new();
    for folder in ["app/src", "document/src", "league/src", "web/src/pages"] {
        let sources = files(&format!("server/{folder}"), ".rs").into_iter();
        let saying = sources.filter(|source| !source.path.contains("/texts/"));
        said.extend(saying.map(|source| without_values(&source.text)));
    }
    let tables = files("server/web/src/pages/texts/german_speech/details", ".rs");
    let known: Vec<String> = tables.iter().flat_map(|table| texts(&table.text)).collect();
    assert!(known.len() > 200, "{known:?}");
    let english = known.chunks(2).map(|pair| pair[0].as_str());
    let never_said: Vec<&str> = english
        .filter(|english| !MADE_OF_PARTS.contains(english))
        .filter(|english| !said.contains(&format!("\"{english}\"")))
        .collect();
    assert!(never_said.is_empty(), "{never_said:#?}");
}

/// Source text with `{}` in the place of every value, and texts of several lines in one.
fn without_values(source: &str) -> String {
    let mut joined = String::new();
    for (number, part) in source.split("\\\n").enumerate() {
        joined.push_str(if number == 0 { part } else { part.trim_start() });
    }
    let mut parts = joined.split('{');
    let mut text = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        text.push('{');
        let value = part
            .split_once('}')
            .filter(|(value, _)| !value.contains('"'));
        match value {
            Some((_, after)) => text.extend(["}", after]),
            None => text.push_str(part),
        }
    }
    text
}

/// What stands between quotes, as it is written.
fn texts(source: &str) -> Vec<String> {
    let mut texts = Vec::new();
    let mut open: Option<String> = None;
    let mut marks = source.chars();
    while let Some(mark) = marks.next() {
        match (mark, &mut open) {
            ('"', None) => open = Some(String::new()),
            ('"', Some(_)) => texts.extend(open.take()),
            ('\\', Some(text)) => text.extend([mark].into_iter().chain(marks.next())),
            (_, Some(text)) => text.push(mark),
            (_, None) => {}
        }
    }
    texts
}
