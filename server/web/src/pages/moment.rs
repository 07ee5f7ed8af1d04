//! Instants as people read them: on the wall of the club, with the instant itself for programs.

use std::fmt;

use chrono::{Datelike, NaiveDateTime, Timelike};
use chrono_tz::Tz;
use league::time::Instant;

use super::texts::{Phrase, Texts};

/// Writes instants in one zone and one language.
#[derive(Clone, Copy)]
pub struct Clock {
    /// The words.
    pub t: &'static Texts,
    /// The season's zone.
    pub zone: Tz,
}

/// An instant, written as a `time` element.
#[derive(Clone, Debug)]
pub struct Moment {
    iso: String,
    words: String,
    counts_down: bool,
}

impl Clock {
    /// As a day and a time of day.
    pub fn at(self, instant: Instant) -> Moment {
        let civil = instant.with_timezone(&self.zone).naive_local();
        Moment {
            iso: instant.to_rfc3339_opts(chrono::SecondsFormat::Secs, true),
            words: self.civil(civil),
            counts_down: false,
        }
    }

    /// Without the year: for the columns of a table.
    pub fn short(self, instant: Instant) -> Moment {
        let long = self.at(instant);
        let civil = instant.with_timezone(&self.zone).naive_local();
        let (day, time) = (civil.day(), civil.format("%H:%M"));
        let weekday = pick(self.t.weekdays, civil.weekday().num_days_from_monday());
        let month = pick(self.t.months_short, civil.month0());
        Moment {
            words: format!("{weekday} {day}{} {month}, {time}", self.t.day_mark),
            ..long
        }
    }

    /// The day alone.
    pub fn day(self, instant: Instant) -> String {
        let civil = instant.with_timezone(&self.zone).naive_local();
        let (day, month) = (civil.day(), pick(self.t.months, civil.month0()));
        format!("{day}{} {month} {}", self.t.day_mark, civil.year())
    }

    /// As a day and a time of day, and how long it still is where a script runs.
    pub fn until(self, instant: Instant) -> Moment {
        Moment {
            counts_down: true,
            ..self.at(instant)
        }
    }

    /// A time on the wall.
    pub fn civil(self, civil: NaiveDateTime) -> String {
        format!(
            "{} {}{} {} {}, {:02}:{:02}",
            pick(self.t.weekdays, civil.weekday().num_days_from_monday()),
            civil.day(),
            self.t.day_mark,
            pick(self.t.months, civil.month0()),
            civil.year(),
            civil.hour(),
            civil.minute(),
        )
    }
}

/// One of several names in a text, counted from zero.
fn pick(names: Phrase, index: u32) -> &'static str {
    names.0.split(' ').nth(index as usize).unwrap_or_default()
}

impl Moment {
    /// The words alone: for text that is no page.
    pub fn words(&self) -> &str {
        &self.words
    }
}

impl fmt::Display for Moment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let countdown = if self.counts_down {
            " data-countdown"
        } else {
            ""
        };
        let Self { iso, words, .. } = self;
        write!(f, "<time datetime=\"{iso}\"{countdown}>{words}</time>")
    }
}

/// Both parts are made of digits and of our own words.
impl askama::filters::HtmlSafe for Moment {}
