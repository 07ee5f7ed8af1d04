//! Instants in the season's time zone and the reader's language, as `time` elements.

use std::fmt;

use chrono::{Datelike, NaiveDateTime, Timelike};
use chrono_tz::Tz;
use league::time::Instant;

use crate::pages::texts::{Phrase, Texts};

/// Formats instants in one zone and one language.
#[derive(Clone, Copy)]
pub struct TimeFormatter {
    /// The texts of the language.
    pub t: &'static Texts,
    pub zone: Tz,
}

/// A formatted instant: a `time` element when it is displayed.
#[derive(Clone, Debug)]
pub struct LocalTime {
    iso: String,
    text: String,
    counts_down: bool,
}

impl TimeFormatter {
    /// Day, year and time of day.
    pub fn date_time(self, instant: Instant) -> LocalTime {
        let civil = instant.with_timezone(&self.zone).naive_local();
        LocalTime {
            iso: instant.to_rfc3339_opts(chrono::SecondsFormat::Secs, true),
            text: self.civil(civil),
            counts_down: false,
        }
    }

    /// Without the year, for the columns of a table.
    pub fn short(self, instant: Instant) -> LocalTime {
        let long = self.date_time(instant);
        let civil = instant.with_timezone(&self.zone).naive_local();
        let (day, time) = (civil.day(), civil.format("%H:%M"));
        let weekday = nth_word(self.t.weekdays, civil.weekday().num_days_from_monday());
        let month = nth_word(self.t.months_short, civil.month0());
        LocalTime {
            text: format!("{weekday} {day}{} {month}, {time}", self.t.day_mark),
            ..long
        }
    }

    pub fn day(self, instant: Instant) -> String {
        let civil = instant.with_timezone(&self.zone).naive_local();
        let (day, month) = (civil.day(), nth_word(self.t.months, civil.month0()));
        format!("{day}{} {month} {}", self.t.day_mark, civil.year())
    }

    /// Day, year and time of day; the script adds a countdown.
    pub fn countdown(self, instant: Instant) -> LocalTime {
        LocalTime {
            counts_down: true,
            ..self.date_time(instant)
        }
    }

    /// A civil time, which has no zone.
    pub fn civil(self, civil: NaiveDateTime) -> String {
        format!(
            "{} {}{} {} {}, {:02}:{:02}",
            nth_word(self.t.weekdays, civil.weekday().num_days_from_monday()),
            civil.day(),
            self.t.day_mark,
            nth_word(self.t.months, civil.month0()),
            civil.year(),
            civil.hour(),
            civil.minute(),
        )
    }
}

/// The word at an index of a text with several.
fn nth_word(names: Phrase, index: u32) -> &'static str {
    names.0.split(' ').nth(index as usize).unwrap_or_default()
}

impl LocalTime {
    /// The text without the element, for what is no HTML.
    pub fn text(&self) -> &str {
        &self.text
    }
}

impl fmt::Display for LocalTime {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let countdown = if self.counts_down {
            " data-countdown"
        } else {
            ""
        };
        let Self { iso, text, .. } = self;
        write!(f, "<time datetime=\"{iso}\"{countdown}>{text}</time>")
    }
}

/// Needs no escaping: it consists of digits and of our own words.
impl askama::filters::HtmlSafe for LocalTime {}
