//! Instants in the season's time zone and the reader's language, as `time` elements.

use std::fmt;

use chrono::NaiveDateTime;
use chrono_tz::Tz;
use league::time::Instant;

use messages::Texts;

/// Formats instants in one zone and one language.
#[derive(Clone, Copy)]
pub struct TimeFormatter {
    /// The texts of the language.
    pub t: Texts,
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
        LocalTime {
            text: self.t.short_moment(civil),
            ..long
        }
    }

    pub fn day(self, instant: Instant) -> String {
        let civil = instant.with_timezone(&self.zone).naive_local();
        self.t.date(civil.date())
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
        self.t.moment(civil)
    }
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
