//! Every word that pages say of themselves, in one place, a file for each language.
//!
//! The English file makes the list of keys; another language that lacks a key, or has one too many,
//! does not compile. A language is added by a file beside these and a line in `visit::language`. The
//! words of a room that has many are a part with files of their own, such as `figures`.

/// The keys of a vocabulary, with their English words and the parts that it holds.
macro_rules! vocabulary {
    (
        $name:ident, $english:ident, [$($part:ident: $of:ident = $words:ident),*],
        $($key:ident: $text:literal,)+
    ) => {
        /// The words of one language.
        pub struct $name {
            $(#[doc = stringify!($key)] pub $key: Phrase,)+
            $(#[doc = "A room with words of its own."] pub $part: $of,)*
        }

        /// English.
        pub const $english: $name = $name {
            $($key: Phrase($text),)+
            $($part: $words,)*
        };

        #[cfg(test)]
        impl $name {
            /// Every key with its words.
            pub fn all(&self) -> Vec<(&'static str, Phrase)> {
                let own = vec![$((stringify!($key), self.$key)),+];
                let parts: Vec<Vec<(&'static str, Phrase)>> = vec![$(self.$part.all()),*];
                own.into_iter().chain(parts.into_iter().flatten()).collect()
            }
        }
    };
}

/// The words of another language for the keys of a vocabulary.
macro_rules! translation {
    (
        $name:ident, $language:ident, [$($part:ident = $words:ident),*],
        $($key:ident: $text:literal,)+
    ) => {
        /// The words of this language.
        pub const $language: $name = $name {
            $($key: Phrase($text),)+
            $($part: $words,)*
        };
    };
}

mod consent_english;
mod consent_german;
mod desk_english;
mod desk_german;
mod english;
mod figures_english;
mod figures_german;
mod german;
mod german_speech;
mod hall_english;
mod hall_german;
mod setup_english;
mod setup_german;
pub mod speech;

use std::fmt;

pub use english::{ENGLISH, Texts};
pub use german::GERMAN;
use german_speech::German;
use speech::{English, Speech};

impl Texts {
    /// What the rules of the league say in this language.
    pub fn speech(&self) -> &'static dyn Speech {
        match self.language.0 {
            "de" => &German,
            _ => &English,
        }
    }
}

/// A text, perhaps with `{}` where a value goes. Behind a count, `[model|models]` is read as the first
/// word for 1 and as the second for any other.
#[derive(Clone, Copy, Debug)]
pub struct Phrase(pub &'static str);

impl Phrase {
    /// With a value in the place of its `{}`.
    pub fn with(self, value: impl fmt::Display) -> String {
        self.with_all(&[&value])
    }

    /// With values in the places of all `{}`, one after the other.
    pub fn with_all(self, values: &[&dyn fmt::Display]) -> String {
        let mut parts = self.0.split("{}");
        let mut text = parts.next().unwrap_or_default().to_owned();
        for (value, part) in values.iter().zip(parts) {
            let value = value.to_string();
            text.push_str(&value);
            text.push_str(&counted(part, &value));
        }
        text
    }

    /// With values in the places of the first two `{}`.
    pub fn with_two(self, first: impl fmt::Display, second: impl fmt::Display) -> String {
        self.with_all(&[&first, &second])
    }
}

/// The text behind a count, with the word that goes with it.
fn counted(part: &str, count: &str) -> String {
    let choice = part.split_once('[').and_then(|(before, rest)| {
        let (words, after) = rest.split_once(']')?;
        let (one, more) = words.split_once('|')?;
        let word = if count == "1" { one } else { more };
        Some(format!("{before}{word}{after}"))
    });
    choice.unwrap_or_else(|| part.to_owned())
}

impl fmt::Display for Phrase {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_language_has_the_same_places_for_values() {
        for ((key, english), (_, german)) in ENGLISH.all().into_iter().zip(GERMAN.all()) {
            let places = |phrase: Phrase| phrase.0.matches("{}").count();
            assert_eq!(places(english), places(german), "{key}");
        }
    }

    #[test]
    fn values_go_where_they_belong() {
        assert_eq!(Phrase("{} of {}").with_two("{}", 3), "{} of 3");
        assert_eq!(Phrase("{} of {}: {}").with_all(&[&1, &2, &3]), "1 of 2: 3");
    }

    #[test]
    fn one_of_a_thing_is_not_called_several() {
        let line = Phrase("{} [model|models], {} [point|points]");
        assert_eq!(line.with_two(1, 10), "1 model, 10 points");
        assert_eq!(line.with_two(10, 1), "10 models, 1 point");
        assert_eq!(Phrase("at {} [o'clock]").with(1), "at 1 [o'clock]");
    }

    #[test]
    fn every_choice_of_words_stands_behind_a_count() {
        for (key, phrase) in ENGLISH.all().into_iter().chain(GERMAN.all()) {
            let mut parts = phrase.0.split("{}");
            let before = parts.next().unwrap_or_default();
            assert!(!before.contains('['), "{key}");
            for part in parts {
                assert!(part.matches('[').count() <= 1, "{key}");
                assert!(!counted(part, "2").contains(['[', '|']), "{key}");
            }
        }
    }
}
