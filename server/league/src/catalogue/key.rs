//! Stable keys of what a catalogue or a sheet names: short lower-case words joined by hyphens.

use std::fmt;
use std::str::FromStr;

use deunicode::deunicode;
use messages::{Message, Value, text_faults};

/// Longest key in characters.
pub const MAX_KEY_LENGTH: usize = 60;

/// Why a text is no key.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum KeyFault {
    Empty,
    /// More than [`MAX_KEY_LENGTH`] characters.
    TooLong(usize),
    /// Something else than lower-case ASCII letters and digits joined by single hyphens.
    Shape,
}

impl KeyFault {
    pub fn message(&self) -> Message {
        match *self {
            Self::Empty => text_faults::text_empty(),
            Self::TooLong(length) => text_faults::text_too_long(length, MAX_KEY_LENGTH),
            Self::Shape => text_faults::text_key_shape(),
        }
    }
}

/// `text` as a key: accents removed, lower case, everything else turned into single hyphens.
///
/// ```
/// assert_eq!(league::catalogue::key::slug("Great Boar of the Léa"), "great-boar-of-the-lea");
/// ```
pub fn slug(text: &str) -> String {
    let mut key = String::with_capacity(text.len());
    for c in deunicode(text).chars() {
        if c.is_ascii_alphanumeric() {
            key.push(c.to_ascii_lowercase());
        } else if !key.is_empty() && !key.ends_with('-') {
            key.push('-');
        }
    }
    key.truncate(MAX_KEY_LENGTH);
    key.truncate(key.trim_end_matches('-').len());
    key
}

fn check_shape(text: &str) -> Result<(), KeyFault> {
    if text.is_empty() {
        return Err(KeyFault::Empty);
    }
    if text.len() > MAX_KEY_LENGTH {
        return Err(KeyFault::TooLong(text.chars().count()));
    }
    let word = |w: &str| {
        !w.is_empty()
            && w.bytes()
                .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit())
    };
    if text.split('-').all(word) {
        Ok(())
    } else {
        Err(KeyFault::Shape)
    }
}

macro_rules! key {
    ($($(#[$doc:meta])* $name:ident),+ $(,)?) => {$(
        $(#[$doc])*
        #[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(Box<str>);

        impl $name {
            /// # Errors
            /// [`KeyFault`] unless the text is lower-case words joined by single hyphens.
            pub fn new(text: &str) -> Result<Self, KeyFault> {
                check_shape(text).map(|()| Self(text.into()))
            }

            /// The key as text.
            pub fn as_str(&self) -> &str {
                &self.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str(&self.0)
            }
        }

        impl FromStr for $name {
            type Err = KeyFault;

            fn from_str(text: &str) -> Result<Self, KeyFault> {
                Self::new(text)
            }
        }
    )+};
}

key! {
    /// A faction within its catalogue.
    FactionKey,
    /// A unit within its faction.
    UnitKey,
    /// An option within its unit.
    OptionKey,
    /// The kind of a unit (leader, line, ...); each catalogue names its own.
    KindKey,
    /// A word a unit carries, such as `toughness-4`, that rules and joining leaders refer to.
    Keyword,
    /// Options of one group exclude each other.
    GroupKey,
    /// An item of a scenario sheet.
    ItemKey,
}

macro_rules! as_text {
    ($($key:ident)*) => {$(
        impl From<$key> for Value {
            fn from(key: $key) -> Self {
                key.as_str().into()
            }
        }
    )*};
}

as_text!(FactionKey UnitKey OptionKey ItemKey);

macro_rules! as_prose {
    ($($key:ident)*) => {$(
        impl From<$key> for Value {
            fn from(key: $key) -> Self {
                key.words().into()
            }
        }
    )*};
}

as_prose!(KindKey Keyword);

impl KindKey {
    /// The kind as prose: hyphens read as spaces.
    pub fn words(&self) -> String {
        self.0.replace('-', " ")
    }
}

impl Keyword {
    /// The keyword as prose: hyphens read as spaces.
    pub fn words(&self) -> String {
        self.0.replace('-', " ")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_key_is_lower_case_words_joined_by_single_hyphens() {
        assert!(UnitKey::new("pole-hands").is_ok());
        assert_eq!(UnitKey::new(""), Err(KeyFault::Empty));
        for bad in ["Pole", "a b", "a--b", "-a", "a-", "ä"] {
            assert_eq!(UnitKey::new(bad), Err(KeyFault::Shape), "{bad}");
        }
        assert_eq!(UnitKey::new(&"x".repeat(61)), Err(KeyFault::TooLong(61)));
    }

    #[test]
    fn every_slug_of_a_name_is_a_key() {
        for name in [
            "The Long Pump",
            "Hedge-Reeve",
            "Éclair 2!",
            &"long ".repeat(30),
        ] {
            assert!(UnitKey::new(&slug(name)).is_ok(), "{name}");
        }
        assert_eq!(slug("!?"), "");
    }
}
