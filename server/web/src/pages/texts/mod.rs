//! Every word that pages say of themselves, in one place, a file for each language.
//!
//! The English file makes the list of keys; another language that lacks a key, or has one too many,
//! does not compile. A language is added by a file beside these and a line in `visit::language`.

mod english;
mod german;

use std::fmt;

pub use english::{ENGLISH, Texts};
pub use german::GERMAN;

/// A text, perhaps with `{}` where a value goes.
#[derive(Clone, Copy, Debug)]
pub struct Phrase(pub &'static str);

impl Phrase {
    /// With a value in the place of the first `{}`.
    pub fn with(self, value: impl fmt::Display) -> String {
        self.0.replacen("{}", &value.to_string(), 1)
    }

    /// With values in the places of the first two `{}`.
    pub fn with_two(self, first: impl fmt::Display, second: impl fmt::Display) -> String {
        match self.0.split_once("{}") {
            Some((before, after)) => {
                let after = after.replacen("{}", &second.to_string(), 1);
                format!("{before}{first}{after}")
            }
            None => self.0.to_owned(),
        }
    }
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
    }
}
