//! Sentences belong into the text files, and every text there is used.

use std::collections::BTreeSet;

use crate::sources::{Source, files};

/// What looks like a sentence in the rules and is none.
const NO_SENTENCES: [(&str, &str); 1] = [(
    "server/league/src/lists/samples.rs",
    "an army list as somebody would paste it, for tests",
)];

#[test]
fn no_sentence_stands_in_the_rules_or_their_json() {
    let mut sources = files("server/league/src", ".rs");
    sources.extend(files("server/document/src", ".rs"));
    sources.retain(|file| NO_SENTENCES.iter().all(|(path, _)| file.path != *path));
    no_offence(&sources, |text| words(text) >= 3);
}

/// What `app` writes into the log about a fault of the server is English, in lower case and without a
/// full stop; what it says to people is a message.
#[test]
fn no_refusal_of_a_use_case_is_a_sentence_in_the_code() {
    let sources = files("server/app/src", ".rs");
    no_offence(&sources, |text| {
        let is_told = text.starts_with(char::is_uppercase) || text.ends_with(['.', '!', '?']);
        words(text) >= 3 && is_told
    });
}

#[test]
fn every_text_is_used() {
    let mut sources = files("server", ".rs");
    sources.extend(files("server", ".html"));
    sources.retain(|file| !file.is_in("server/messages"));
    let used: BTreeSet<&str> = sources
        .iter()
        .flat_map(|file| file.text.split(|c: char| !c.is_alphanumeric() && c != '_'))
        .collect();
    let texts = files("server/messages/locales/en", ".ftl");
    let ids = texts
        .iter()
        .flat_map(|file| file.text.lines().filter_map(id));
    let unused: Vec<&str> = ids
        .filter(|id| !used.contains(id.replace('-', "_").as_str()))
        .collect();
    assert!(unused.is_empty(), "nobody says {unused:?}");
}

/// The id of a text that begins on this line.
fn id(line: &str) -> Option<&str> {
    let id = line.split_once(" =")?.0;
    id.starts_with(|c: char| c.is_ascii_lowercase())
        .then_some(id)
}

fn no_offence(sources: &[Source], is_sentence: impl Fn(&str) -> bool) {
    let mut offences = Vec::new();
    for file in sources.iter().filter(|file| !is_test(file)) {
        let code = file.text.lines().enumerate();
        for (index, line) in code.take_while(|(_, line)| *line != "#[cfg(test)]") {
            let line = line.trim_start();
            let is_attribute = ["//", "#[", "example =", "reason ="]
                .iter()
                .any(|start| line.starts_with(start));
            // Every second piece lies between quotation marks.
            let mut literals = line.split('"').skip(1).step_by(2);
            if !is_attribute && literals.any(&is_sentence) {
                offences.push(format!("{}:{}: {line}", file.path, index + 1));
            }
        }
    }
    assert!(offences.is_empty(), "\n{}\n", offences.join("\n"));
}

fn is_test(file: &Source) -> bool {
    let stem = file.stem();
    file.path.contains("/tests/") || stem == "tests" || stem.ends_with("_tests")
}

/// Words between blanks, without what stands in braces.
fn words(text: &str) -> usize {
    let words = text.split_whitespace();
    words
        .filter(|word| word.starts_with(char::is_alphabetic))
        .count()
}
