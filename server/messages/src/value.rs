//! What stands in the place of a message's variable.

use std::borrow::Cow;

use chrono::{NaiveDate, Weekday};

use crate::Message;

/// What stands in the place of a message's variable.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Value {
    /// A person's own words, never translated. Also the key of a choice that a text makes.
    Text(String),
    /// Written in plain digits; a text may choose its words by it.
    Number(i64),
    /// Said in the language of the whole.
    Message(Box<Message>),
    /// A number with one decimal, counted in tenths.
    Tenths(i128),
    /// All of them: "a, b and c".
    List(Vec<Value>),
    /// One of them: "a, b or c".
    Either(Vec<Value>),
    /// One after the other, with a text between them.
    Joined(Vec<Value>, Box<Message>),
    /// Whole sentences, one after the other.
    Sentences(Vec<Message>),
    /// A day: in English as ISO 8601, as the API has always said it; else in full.
    Date(NaiveDate),
    /// The full name of a day of the week.
    Weekday(Weekday),
}

impl Value {
    /// All of these.
    pub fn list(items: impl IntoIterator<Item: Into<Self>>) -> Self {
        Self::List(items.into_iter().map(Into::into).collect())
    }

    /// One of these.
    pub fn either(items: impl IntoIterator<Item: Into<Self>>) -> Self {
        Self::Either(items.into_iter().map(Into::into).collect())
    }

    /// One after the other. Between them stands what the text of two places says about nothing, such
    /// as ", " of [`values::comma`](crate::values::comma).
    pub fn joined(
        items: impl IntoIterator<Item: Into<Self>>,
        between: fn(Self, Self) -> Message,
    ) -> Self {
        let items = items.into_iter().map(Into::into).collect();
        Self::Joined(items, Box::new(between("".into(), "".into())))
    }
}

impl From<String> for Value {
    fn from(text: String) -> Self {
        Self::Text(text)
    }
}

/// What a template hands on is borrowed.
impl<T: Clone + Into<Value>> From<&T> for Value {
    fn from(value: &T) -> Self {
        value.clone().into()
    }
}

impl From<Cow<'_, str>> for Value {
    fn from(text: Cow<'_, str>) -> Self {
        Self::Text(text.into_owned())
    }
}

impl From<&str> for Value {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

/// The key of a choice that a text makes.
impl From<bool> for Value {
    fn from(truth: bool) -> Self {
        Self::Text(truth.to_string())
    }
}

impl From<Message> for Value {
    fn from(message: Message) -> Self {
        Self::Message(Box::new(message))
    }
}

impl From<Vec<Message>> for Value {
    fn from(sentences: Vec<Message>) -> Self {
        Self::Sentences(sentences)
    }
}

impl From<NaiveDate> for Value {
    fn from(date: NaiveDate) -> Self {
        Self::Date(date)
    }
}

impl From<Weekday> for Value {
    fn from(day: Weekday) -> Self {
        Self::Weekday(day)
    }
}

macro_rules! numbers {
    ($($number:ty)*) => {$(
        impl From<$number> for Value {
            fn from(number: $number) -> Self {
                Self::Number(number.into())
            }
        }
    )*};
}

numbers!(i8 i16 i32 i64 u8 u16 u32);

macro_rules! wide_numbers {
    ($($number:ty)*) => {$(
        /// One that is too large for [`Value::Number`] keeps its digits as a text.
        impl From<$number> for Value {
            fn from(number: $number) -> Self {
                i64::try_from(number).map_or_else(|_| Self::Text(number.to_string()), Self::Number)
            }
        }
    )*};
}

wide_numbers!(u64 usize i128 u128);
