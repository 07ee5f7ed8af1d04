//! A refusal's sentence on a page: translated by its English, or left in it.

use messages::{Language, Texts};

use super::german_speech::{details, refusals};

/// A sentence that may have stayed English.
pub struct Said {
    pub words: String,
    /// Whether it is English on a page that is not.
    pub foreign: bool,
}

impl Said {
    /// What a refusal says in full in this language, else as it says it itself.
    pub fn detail(t: Texts, english: &str) -> Self {
        let words = match t.language() {
            Language::English => Some(english.to_owned()),
            Language::German => details::sentence(english),
            Language::French => None,
        };
        Self {
            foreign: words.is_none(),
            words: words.unwrap_or_else(|| english.to_owned()),
        }
    }
}

/// What a refusal of this code says in short; `None` for one that is not known in this language.
pub fn short_refusal(t: Texts, code: &str) -> Option<&'static str> {
    match t.language() {
        Language::German => refusals::sentence(code),
        Language::English | Language::French => None,
    }
}
