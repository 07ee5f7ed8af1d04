//! Names and free text from people, normalised and validated.

use std::fmt;

use messages::{Message, Value, text_faults};
use unicode_normalization::char::is_combining_mark;
use unicode_normalization::{IsNormalized, UnicodeNormalization, is_nfc_quick};
use unicode_security::skeleton;

/// Longest name in characters after normalisation.
pub const MAX_NAME_LENGTH: usize = 60;
/// Longest free text (a reason, a briefing) in characters.
pub const MAX_TEXT_LENGTH: usize = 4_000;

/// Why a text was refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TextFault {
    /// Nothing visible remains.
    Empty,
    /// More characters than allowed.
    TooLong { limit: usize, actual: usize },
    /// A control, direction or invisible character.
    Character(u32),
    /// More marks on one letter than any writing system uses.
    Marks,
}

impl TextFault {
    pub fn message(&self) -> Message {
        match *self {
            Self::Empty => text_faults::text_empty(),
            Self::TooLong { limit, actual } => text_faults::text_too_long(actual, limit),
            Self::Character(code) => text_faults::text_character(format!("{code:04X}")),
            Self::Marks => text_faults::text_marks(),
        }
    }
}

/// A single-line name in Unicode NFC, trimmed, without invisible characters.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Name(String);

impl Name {
    /// # Errors
    /// [`TextFault`] when nothing visible remains, it is too long or holds a character that hides.
    pub fn new(text: &str) -> Result<Self, TextFault> {
        let clean = to_nfc(text.trim());
        check(&clean, MAX_NAME_LENGTH, |c| c.is_control())?;
        Ok(Self(clean))
    }

    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// Whether people would take one for the other: in capitals or not, in Latin or Cyrillic, with `l`
    /// or `1` (skeletons of Unicode Technical Standard 39, section 4, as written and in lower case).
    pub fn looks_like(&self, other: &Self) -> bool {
        let drawn = |text: &str| {
            let plain: String = text.nfkc().collect();
            skeleton(&plain).collect::<String>().to_lowercase()
        };
        let small = |name: &Self| drawn(&name.0.to_lowercase());
        drawn(&self.0) == drawn(&other.0) || small(self) == small(other)
    }
}

impl From<Name> for Value {
    fn from(name: Name) -> Self {
        name.0.into()
    }
}

impl fmt::Display for Name {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// Free text of several lines in Unicode NFC, trimmed.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Text(String);

impl Text {
    /// # Errors
    /// [`TextFault`] as for [`Name`], but line breaks and tabs are allowed.
    pub fn new(text: &str) -> Result<Self, TextFault> {
        let clean = to_nfc(text.trim());
        check(&clean, MAX_TEXT_LENGTH, |c| {
            c.is_control() && !matches!(c, '\n' | '\r' | '\t')
        })?;
        Ok(Self(clean))
    }

    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// In NFC. Most texts are already, above all those that were kept.
fn to_nfc(text: &str) -> String {
    match is_nfc_quick(text.chars()) {
        IsNormalized::Yes => text.to_owned(),
        IsNormalized::No | IsNormalized::Maybe => text.nfc().collect(),
    }
}

fn check(text: &str, limit: usize, refused: impl Fn(char) -> bool) -> Result<(), TextFault> {
    let actual = text.chars().count();
    if actual > limit {
        return Err(TextFault::TooLong { limit, actual });
    }
    if let Some(bad) = text.chars().find(|&c| refused(c) || is_invisible(c)) {
        return Err(TextFault::Character(bad as u32));
    }
    let mut run = 0;
    for c in text.chars() {
        run = if is_combining_mark(c) { run + 1 } else { 0 };
        if run > 4 {
            return Err(TextFault::Marks);
        }
    }
    if text.chars().all(char::is_whitespace) {
        return Err(TextFault::Empty);
    }
    Ok(())
}

/// Direction overrides, zero-width and tag characters, variation selectors and blank letters: they let
/// one name pass for another (Unicode Technical Report 36, sections 2.8 and 3; from memory).
fn is_invisible(c: char) -> bool {
    matches!(c,
        '\u{00AD}' | '\u{034F}' | '\u{061C}' | '\u{115F}' | '\u{1160}' | '\u{3164}' | '\u{FEFF}'
        | '\u{17B4}'..='\u{17B5}' | '\u{180B}'..='\u{180F}' | '\u{2800}' | '\u{FFA0}'
        | '\u{FE00}'..='\u{FE0F}' | '\u{200B}'..='\u{200F}' | '\u{202A}'..='\u{202E}'
        | '\u{2060}'..='\u{206F}' | '\u{FFF0}'..='\u{FFFB}' | '\u{E0000}'..='\u{E0FFF}')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_trimmed_and_composed() {
        assert_eq!(
            Name::new("  Bra\u{65}\u{301}wick ").map(|n| n.to_string()),
            Ok("Bra\u{e9}wick".into())
        );
    }

    #[test]
    fn names_that_look_alike_are_known_for_it() {
        let name = |text: &str| Name::new(text).unwrap();
        let wennable = name("Wennable");
        for other in [
            "wennable",
            "W\u{435}nn\u{430}ble",
            "WENNABLE",
            "\u{ff37}ennable",
        ] {
            assert!(wennable.looks_like(&name(other)), "{other}");
        }
        for other in ["Wenable", "W\u{e9}nnable", "Wenn able"] {
            assert!(!wennable.looks_like(&name(other)), "{other}");
        }
        assert!(name("Ilkamar").looks_like(&name("1lkamar")));
        assert!(name("Oskrel").looks_like(&name("0SKREL")));
    }

    #[test]
    fn letters_that_nobody_sees_make_no_name() {
        for blank in ['\u{FE0F}', '\u{E0101}', '\u{17B4}', '\u{2800}', '\u{FFA0}'] {
            let fault = Err(TextFault::Character(blank as u32));
            assert_eq!(Name::new(&format!("Wennable{blank}")), fault);
        }
    }

    #[test]
    fn names_that_hide_something_are_refused() {
        assert_eq!(Name::new(" \u{200B} "), Err(TextFault::Character(0x200B)));
        assert_eq!(Name::new("a\u{202E}b"), Err(TextFault::Character(0x202E)));
        assert_eq!(Name::new("a\0b"), Err(TextFault::Character(0)));
        assert_eq!(Name::new("  "), Err(TextFault::Empty));
        assert_eq!(
            Name::new(&format!("x{}", "\u{301}\u{316}".repeat(5))),
            Err(TextFault::Marks)
        );
        assert_eq!(
            Name::new(&"x".repeat(61)),
            Err(TextFault::TooLong {
                limit: 60,
                actual: 61
            })
        );
        assert!(Text::new("two\nlines").is_ok());
    }
}
