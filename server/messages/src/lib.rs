//! What the server says to people: messages as data, and their texts in every language.
//!
//! A rule that has something to say makes a [`Message`], which is an id and its values. Whoever shows
//! it picks a language. In English it is also what `Display` writes. The texts are Fluent files:
//!
//! - `locales/<language>/*.ftl` hold the messages of rules. A file `accounts.ftl` makes a module
//!   [`accounts`], with a function for each id.
//! - `locales/<language>/pages/*.ftl` hold the texts of pages. Each id makes a method of [`Texts`].
//!
//! The English files make the functions: `deadline-passed = The deadline of week { $week } has
//! passed.` becomes `deadline_passed(week)`, with the variables in the order of their appearance. A new
//! file is found by the build script; an id belongs to one text of all files. The tests see that each
//! language has the same texts with the same variables.
//!
//! ```
//! use messages::{Language, Texts, accounts};
//!
//! let refusal = accounts::password_too_short(9, 15);
//! assert_eq!(refusal.to_string(), "The password has 9 characters; it needs 15.");
//!
//! let t = Texts::of(Language::German);
//! assert_eq!(t.say(&refusal), "Das Passwort hat 9 Zeichen; nötig sind 15.");
//! assert_eq!(t.sign_in(), "Anmelden");
//! assert_eq!(t.points(1), "1 Punkt");
//! assert_eq!(t.points(1000), "1000 Punkte");
//! ```
//!
//! A [`Value`] of text is a person's own words and never translated. What is to be translated inside
//! of another text is a message of its own.

mod dates;
mod language;
mod lists;
mod message;
mod numbers;
mod texts;
mod value;
#[cfg(test)]
mod walk;

pub use language::Language;
pub use message::Message;
pub use texts::Texts;
pub use value::Value;

include!(concat!(env!("OUT_DIR"), "/generated.rs"));
