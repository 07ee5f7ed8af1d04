//! A message: an id and its values, to be said in any language.

use std::fmt;

use crate::{Language, Texts, Value};

/// An id and its values. The functions of the generated modules make it.
///
/// It is written in English by `Display`, and in any language by [`Texts::say`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Message {
    pub(crate) id: &'static str,
    pub(crate) values: Vec<(&'static str, Value)>,
}

impl Message {
    pub(crate) fn new(id: &'static str, values: Vec<(&'static str, Value)>) -> Self {
        Self { id, values }
    }
}

impl fmt::Display for Message {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&Texts::of(Language::English).say(self))
    }
}
