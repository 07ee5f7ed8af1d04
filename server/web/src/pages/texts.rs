//! What the rules of the league say on pages, in the language of the page.

mod german_speech;
pub mod speech;

use german_speech::German;
use messages::Language;
pub use messages::Texts;
use speech::{English, Speech};

/// What the rules of the league say in this language.
pub fn speech(t: Texts) -> &'static dyn Speech {
    match t.language() {
        Language::German => &German,
        Language::English | Language::French => &English,
    }
}
