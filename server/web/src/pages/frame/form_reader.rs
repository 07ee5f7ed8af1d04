//! A form parser: turns the fields of a form into their types, and collects every fault with its field.

use std::ops::RangeInclusive;
use std::str::FromStr;

use app::{Fault, Reason, Refusal};
use chrono::{NaiveDate, NaiveTime};
use league::week::{MAX_WEEKS, WeekNo};
use messages::{Message, forms};
use uuid::Uuid;

use super::form_data::FormData;

/// Reads one form. A method that meets a fault notes it and answers with a stand-in, so that all
/// faults are found at once; [`Self::finish`] keeps back whatever was made of stand-ins.
///
/// A label is what the page calls the field, in the language of its reader.
pub struct FormReader<'f> {
    fields: &'f FormData,
    faults: Vec<Fault>,
}

impl<'f> FormReader<'f> {
    /// Begins without a fault.
    pub fn new(fields: &'f FormData) -> Self {
        Self {
            fields,
            faults: Vec::new(),
        }
    }

    /// A text without space around it. What it may say, the use case knows.
    pub fn text(&self, name: &str) -> String {
        self.fields.text(name).to_owned()
    }

    /// Whether a box is ticked.
    pub fn is_checked(&self, name: &str) -> bool {
        self.fields.is_checked(name)
    }

    /// A whole number within a range.
    pub fn number<T>(&mut self, name: &str, label: &str, range: RangeInclusive<T>) -> T
    where
        T: Copy + Into<i64> + TryFrom<i64>,
    {
        let stand_in = *range.start();
        self.require(name, label);
        self.optional_number(name, label, range).unwrap_or(stand_in)
    }

    /// A whole number within a range, `None` where nothing was typed.
    pub fn optional_number<T>(
        &mut self,
        name: &str,
        label: &str,
        range: RangeInclusive<T>,
    ) -> Option<T>
    where
        T: Copy + Into<i64> + TryFrom<i64>,
    {
        let typed = self.fields.text(name);
        if typed.is_empty() {
            return None;
        }
        let number = whole_number(typed, &range);
        if number.is_none() {
            self.fault(name, not_a_number(label, typed, &range));
        }
        number
    }

    /// Whole numbers with commas, semicolons or spaces between them.
    pub fn numbers<T>(&mut self, name: &str, label: &str, range: RangeInclusive<T>) -> Vec<T>
    where
        T: Copy + Into<i64> + TryFrom<i64>,
    {
        self.require(name, label);
        let typed = self.fields.text(name);
        let parts = typed.split([',', ';', ' ']).filter(|part| !part.is_empty());
        let mut numbers = Vec::new();
        for part in parts {
            match whole_number(part, &range) {
                Some(number) => numbers.push(number),
                None => self.fault(name, not_a_number(label, part, &range)),
            }
        }
        numbers
    }

    /// A week by its number, of those that a page offers.
    pub fn week(&mut self, name: &str, label: &str) -> WeekNo {
        let number = self.number(name, label, 1..=MAX_WEEKS);
        WeekNo::new(number).unwrap_or(WeekNo::FIRST)
    }

    /// A day of the calendar.
    pub fn date(&mut self, name: &str, label: &str) -> NaiveDate {
        self.require(name, label);
        let typed = self.fields.text(name);
        let date = typed.parse().ok();
        if date.is_none() && !typed.is_empty() {
            self.fault(name, forms::form_date(label, typed));
        }
        date.unwrap_or_default()
    }

    /// A time of day.
    pub fn time(&mut self, name: &str, label: &str) -> NaiveTime {
        self.require(name, label);
        let typed = self.fields.text(name);
        let time = NaiveTime::parse_from_str(typed, "%H:%M").ok();
        if time.is_none() && !typed.is_empty() {
            self.fault(name, forms::form_time(label, typed));
        }
        time.unwrap_or_default()
    }

    /// The identity of something that a page offers.
    pub fn id(&mut self, name: &str, label: &str) -> Uuid {
        let id = self.fields.text(name).parse().ok();
        self.chosen(name, label, id).unwrap_or_default()
    }

    /// The identity of something that a page offers, `None` where nothing is chosen.
    pub fn optional_id(&mut self, name: &str, label: &str) -> Option<Uuid> {
        let typed = self.fields.text(name);
        let id = (!typed.is_empty()).then(|| typed.parse().ok());
        id.and_then(|id| self.chosen(name, label, id))
    }

    /// Every identity that is ticked.
    pub fn ids(&mut self, name: &str, label: &str) -> Vec<Uuid> {
        let all = self.fields.values(name);
        all.iter()
            .filter_map(|typed| self.chosen(name, label, typed.parse().ok()))
            .collect()
    }

    /// One of several words; a page offers at least one.
    pub fn choice<T: Copy, const N: usize>(
        &mut self,
        name: &str,
        label: &str,
        choices: [(&str, T); N],
    ) -> T {
        const { assert!(N > 0) };
        let typed = self.fields.text(name);
        let choice = choices.iter().find(|(word, _)| *word == typed);
        let choice = choice.map(|(_, choice)| *choice);
        self.chosen(name, label, choice).unwrap_or(choices[0].1)
    }

    /// A field that no reader sees, as the page filled it in.
    pub fn hidden<T: FromStr>(&mut self, name: &str) -> Option<T> {
        let value = self.fields.text(name).parse().ok();
        if value.is_none() {
            self.fault(name, forms::form_broken());
        }
        value
    }

    /// A fault that the page itself has found.
    pub fn fault(&mut self, name: &str, message: Message) {
        let code = Reason::Validation.code();
        self.faults
            .push(Fault::new(code, format!("/{name}"), message));
    }

    /// The form, if every field could be read.
    ///
    /// # Errors
    /// [`Reason::Validation`] with every fault.
    pub fn finish<T>(self, form: T) -> Result<T, Refusal> {
        if self.faults.is_empty() {
            return Ok(form);
        }
        let message = forms::form_unreadable();
        Err(Refusal::faults(Reason::Validation, message, self.faults))
    }

    /// Notes what only a program sends wrongly: a page offers nothing else.
    fn chosen<T>(&mut self, name: &str, label: &str, choice: Option<T>) -> Option<T> {
        if choice.is_none() {
            self.fault(name, forms::form_choice(label));
        }
        choice
    }

    fn require(&mut self, name: &str, label: &str) {
        if self.fields.text(name).is_empty() {
            self.fault(name, forms::form_empty(label));
        }
    }
}

/// The refusal of a form that no page of ours made, such as one that does not say what to do.
pub fn broken_form() -> Refusal {
    Refusal::rule(Reason::Validation, forms::form_broken())
}

fn whole_number<T>(typed: &str, range: &RangeInclusive<T>) -> Option<T>
where
    T: Copy + Into<i64> + TryFrom<i64>,
{
    let number: i64 = typed.parse().ok()?;
    let within = (*range.start()).into()..=(*range.end()).into();
    within.contains(&number).then(|| T::try_from(number).ok())?
}

fn not_a_number<T: Copy + Into<i64>>(
    label: &str,
    typed: &str,
    range: &RangeInclusive<T>,
) -> Message {
    let (least, most): (i64, i64) = ((*range.start()).into(), (*range.end()).into());
    forms::form_number(label, typed, least, most)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn typed(pairs: &[(&str, &str)]) -> FormData {
        let pairs = pairs.iter();
        FormData::from_pairs(
            pairs
                .map(|(name, value)| ((*name).to_owned(), (*value).to_owned()))
                .collect(),
        )
    }

    fn faults(refusal: Refusal) -> Vec<(String, String)> {
        let Refusal::Rule { faults, .. } = refusal else {
            return Vec::new();
        };
        let faults = faults.into_iter();
        faults
            .map(|fault| (fault.pointer, fault.message.to_string()))
            .collect()
    }

    #[test]
    fn a_field_is_read_as_it_was_typed() {
        let fields = typed(&[("amount", " -12 "), ("caps", "300, 400;500"), ("day", "")]);
        let mut form = FormReader::new(&fields);
        let amount: i32 = form.number("amount", "Amount", -1000..=1000);
        let caps: Vec<u32> = form.numbers("caps", "Caps", 1..=1000);
        let day: Option<u8> = form.optional_number("day", "Day", 1..=7);
        let read = form.finish((amount, caps, day)).unwrap();
        assert_eq!(read, (-12, vec![300, 400, 500], None));
    }

    #[test]
    fn every_fault_is_found_at_its_field_with_what_was_typed() {
        let fields = typed(&[
            ("amount", "abc"),
            ("tables", "501"),
            ("caps", "300, 4x"),
            ("day", "2026-02-30"),
            ("time", "25:00"),
            ("player", "nobody"),
            ("kind", "other"),
        ]);
        let mut form = FormReader::new(&fields);
        form.number("amount", "Amount", -1000_i32..=1000);
        form.number("tables", "Tables", 1_u16..=500);
        form.numbers("caps", "Caps", 1_u32..=1000);
        form.number("weeks", "Weeks", 1_u8..=52);
        form.date("day", "Day");
        form.time("time", "Time");
        form.id("player", "Player");
        form.choice("kind", "Kind", [("step", 1), ("list", 2)]);
        let found = faults(form.finish(()).unwrap_err());
        let found: Vec<(&str, &str)> = found
            .iter()
            .map(|(pointer, message)| (pointer.as_str(), message.as_str()))
            .collect();
        let expected = [
            (
                "/amount",
                r#"Amount: "abc" is not a whole number from -1000 to 1000."#,
            ),
            (
                "/tables",
                r#"Tables: "501" is not a whole number from 1 to 500."#,
            ),
            (
                "/caps",
                r#"Caps: "4x" is not a whole number from 1 to 1000."#,
            ),
            ("/weeks", "Weeks: please fill this in."),
            ("/day", r#"Day: "2026-02-30" is not a day of the calendar."#),
            (
                "/time",
                r#"Time: "25:00" is not a time of day such as 19:00."#,
            ),
            ("/player", "Player: please choose one of the list."),
            ("/kind", "Kind: please choose one of the list."),
        ];
        assert_eq!(found, expected);
    }
}
