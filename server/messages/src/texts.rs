//! The texts of one language.

use std::borrow::Cow;
use std::sync::LazyLock;

use chrono::{NaiveDate, NaiveDateTime, Weekday};
use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentError, FluentResource, FluentValue};
use num_rational::Ratio;
use unic_langid::LanguageIdentifier;

use crate::dates::Dates;
use crate::lists::Lists;
use crate::numbers::Numbers;
use crate::{Language, Message, SOURCES, Value};

/// The texts of one language: a handle that costs nothing to copy.
///
/// Its generated methods say the texts of pages.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Texts {
    language: Language,
}

impl Texts {
    /// Those of a language.
    pub const fn of(language: Language) -> Self {
        Self { language }
    }

    /// The language they are written in.
    pub const fn language(self) -> Language {
        self.language
    }

    /// A message in this language.
    pub fn say(self, message: &Message) -> String {
        self.written(message, &mut Vec::new())
    }

    /// Several messages in this language.
    pub fn say_all<'a>(self, messages: impl IntoIterator<Item = &'a Message>) -> Vec<String> {
        messages
            .into_iter()
            .map(|message| self.say(message))
            .collect()
    }

    /// A day and a time of day in full: "Thursday, 3 December 2026 at 20:00".
    pub fn moment(self, civil: NaiveDateTime) -> String {
        self.voice().dates.moment(civil)
    }

    /// The same in short and without the year, for the columns of a table: "Thu 3 Dec, 20:00".
    pub fn short_moment(self, civil: NaiveDateTime) -> String {
        self.voice().dates.short_moment(civil)
    }

    /// A day alone: "3 December 2026".
    pub fn date(self, date: NaiveDate) -> String {
        self.voice().dates.date(date)
    }

    /// The full name of a day of the week.
    pub fn weekday(self, day: Weekday) -> String {
        self.voice().dates.weekday(day)
    }

    /// A whole number; from five digits on they are grouped.
    pub fn number(self, number: i64) -> String {
        self.voice().numbers.whole(number)
    }

    /// An exact number, with one decimal if it is not whole.
    pub fn decimal(self, number: Ratio<i64>) -> String {
        self.voice().numbers.decimal(number)
    }

    /// A text without variables.
    pub(crate) fn text(self, id: &'static str) -> Cow<'static, str> {
        self.voice().format(id, None, &mut Vec::new())
    }

    /// A message, and what went wrong with it.
    pub(crate) fn written(self, message: &Message, errors: &mut Vec<FluentError>) -> String {
        let mut arguments = FluentArgs::with_capacity(message.values.len());
        for (name, value) in &message.values {
            arguments.set(*name, self.argument(value, errors));
        }
        let text = self.voice().format(message.id, Some(&arguments), errors);
        text.into_owned()
    }

    fn argument<'a>(self, value: &'a Value, errors: &mut Vec<FluentError>) -> FluentValue<'a> {
        match value {
            Value::Text(text) => text.as_str().into(),
            // Fluent counts in floating point; a number that it cannot hold keeps its digits.
            Value::Number(number) if number.unsigned_abs() > 1 << f64::MANTISSA_DIGITS => {
                number.to_string().into()
            }
            Value::Number(number) => number.into(),
            Value::Message(message) => self.written(message, errors).into(),
            Value::Tenths(tenths) => self.voice().numbers.tenths(*tenths).into(),
            Value::List(items) => self.voice().lists.all(&self.items(items, errors)).into(),
            Value::Either(items) => self.voice().lists.either(&self.items(items, errors)).into(),
            Value::Joined(items, between) => {
                let between = self.written(between, errors);
                self.items(items, errors).join(&between).into()
            }
            Value::Sentences(sentences) => {
                let sentences = sentences.iter();
                let said: Vec<String> = sentences.map(|it| self.written(it, errors)).collect();
                said.join(" ").into()
            }
            Value::Date(date) => match self.language {
                Language::English => date.to_string().into(),
                Language::German | Language::French => self.date(*date).into(),
            },
            Value::Weekday(day) => self.weekday(*day).into(),
        }
    }

    fn items(self, items: &[Value], errors: &mut Vec<FluentError>) -> Vec<String> {
        let mut written = |value: &Value| match self.argument(value, errors) {
            FluentValue::String(text) => text.into_owned(),
            FluentValue::Number(number) => number.as_string().into_owned(),
            _ => String::new(),
        };
        items.iter().map(&mut written).collect()
    }

    fn voice(self) -> &'static Voice {
        let [english, german, french] = &*VOICES;
        match self.language {
            Language::English => english,
            Language::German => german,
            Language::French => french,
        }
    }
}

static VOICES: LazyLock<[Voice; 3]> = LazyLock::new(|| {
    let [english, german, french] = SOURCES;
    [
        Voice::new(Language::English, english),
        Voice::new(Language::German, german),
        Voice::new(Language::French, french),
    ]
});

/// What it takes to write in one language.
struct Voice {
    bundle: FluentBundle<FluentResource>,
    dates: Dates,
    lists: Lists,
    numbers: Numbers,
}

impl Voice {
    fn new(language: Language, sources: &[&str]) -> Self {
        let plurals: LanguageIdentifier = language.code().parse().unwrap_or_default();
        let mut bundle = FluentBundle::new_concurrent(vec![plurals]);
        // The marks that keep scripts of two directions apart: none of our languages needs them.
        bundle.set_use_isolating(false);
        for source in sources {
            let resource = FluentResource::try_new((*source).to_owned());
            // The build script has refused a file with faults and an id of two texts.
            bundle.add_resource_overriding(resource.unwrap_or_else(|(sound, _)| sound));
        }
        Self {
            bundle,
            dates: Dates::of(language),
            lists: Lists::of(language),
            numbers: Numbers::of(language),
        }
    }

    /// The text of an id; the id itself where a language lacks it.
    fn format(
        &'static self,
        id: &'static str,
        arguments: Option<&FluentArgs<'_>>,
        errors: &mut Vec<FluentError>,
    ) -> Cow<'static, str> {
        let message = self.bundle.get_message(id);
        match message.and_then(|message| message.value()) {
            Some(pattern) => self.bundle.format_pattern(pattern, arguments, errors),
            None => Cow::Borrowed(id),
        }
    }
}
