//! Dates and times of one language, by CLDR.

use chrono::{Datelike, NaiveDate, NaiveDateTime, Timelike, Weekday};
use icu_calendar::{Gregorian, types};
use icu_datetime::FixedCalendarDateTimeFormatter;
use icu_datetime::fieldsets::{E, MDE, MDET, YMD, YMDE, YMDET};
use icu_datetime::input::{Date, DateTime, Time};

use crate::Language;

type Formatter<Fields> = FixedCalendarDateTimeFormatter<Gregorian, Fields>;

/// The ways in which one language writes dates.
///
/// The data is compiled in, so each is there and each date has its place in the calendar; what
/// cannot be is written by ISO 8601.
pub struct Dates {
    moment: Option<Formatter<YMDET>>,
    short_moment: Option<Formatter<MDET>>,
    date: Option<Formatter<YMD>>,
    weekday: Option<Formatter<E>>,
}

impl Dates {
    pub fn of(language: Language) -> Self {
        let locale = language.locale();
        let moment = YMDE::long().with_time_hm();
        let short_moment = MDE::medium().with_time_hm();
        Self {
            moment: Formatter::try_new((&locale).into(), moment).ok(),
            short_moment: Formatter::try_new((&locale).into(), short_moment).ok(),
            date: Formatter::try_new((&locale).into(), YMD::long()).ok(),
            weekday: Formatter::try_new((&locale).into(), E::long()).ok(),
        }
    }

    pub fn moment(&self, civil: NaiveDateTime) -> String {
        let formatter = self.moment.as_ref().zip(gregorian_time(civil));
        formatter.map_or_else(
            || civil.to_string(),
            |(as_text, civil)| as_text.format(&civil).to_string(),
        )
    }

    pub fn short_moment(&self, civil: NaiveDateTime) -> String {
        let formatter = self.short_moment.as_ref().zip(gregorian_time(civil));
        formatter.map_or_else(
            || civil.to_string(),
            |(as_text, civil)| as_text.format(&civil).to_string(),
        )
    }

    pub fn date(&self, date: NaiveDate) -> String {
        let formatter = self.date.as_ref().zip(gregorian(date));
        formatter.map_or_else(
            || date.to_string(),
            |(as_text, date)| as_text.format(&date).to_string(),
        )
    }

    pub fn weekday(&self, day: Weekday) -> String {
        let name = |as_text: &Formatter<E>| as_text.format(&in_icu(day)).to_string();
        self.weekday.as_ref().map_or_else(|| day.to_string(), name)
    }
}

fn gregorian(date: NaiveDate) -> Option<Date<Gregorian>> {
    let number = |part: u32| u8::try_from(part).ok();
    Date::try_new_gregorian(date.year(), number(date.month())?, number(date.day())?).ok()
}

fn gregorian_time(civil: NaiveDateTime) -> Option<DateTime<Gregorian>> {
    let number = |part: u32| u8::try_from(part).ok();
    let time = Time::try_new(number(civil.hour())?, number(civil.minute())?, 0, 0).ok()?;
    gregorian(civil.date()).map(|date| DateTime { date, time })
}

fn in_icu(day: Weekday) -> types::Weekday {
    match day {
        Weekday::Mon => types::Weekday::Monday,
        Weekday::Tue => types::Weekday::Tuesday,
        Weekday::Wed => types::Weekday::Wednesday,
        Weekday::Thu => types::Weekday::Thursday,
        Weekday::Fri => types::Weekday::Friday,
        Weekday::Sat => types::Weekday::Saturday,
        Weekday::Sun => types::Weekday::Sunday,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Texts;

    #[test]
    fn each_language_writes_dates_as_its_readers_do() {
        let date = NaiveDate::from_ymd_opt(2026, 12, 3).unwrap();
        let moment = date.and_hms_opt(20, 0, 0).unwrap();
        let written = Language::ALL.map(|language| {
            let t = Texts::of(language);
            [
                t.moment(moment),
                t.short_moment(moment),
                t.date(date),
                t.weekday(Weekday::Sun),
            ]
        });
        let expected = [
            [
                "Thursday, 3 December 2026 at 20:00",
                "Thu 3 Dec, 20:00",
                "3 December 2026",
                "Sunday",
            ],
            [
                "Donnerstag, 3. Dezember 2026 um 20:00",
                "Do., 3. Dez., 20:00",
                "3. Dezember 2026",
                "Sonntag",
            ],
            [
                "jeudi 3 décembre 2026 à 20:00",
                "jeu. 3 déc., 20:00",
                "3 décembre 2026",
                "dimanche",
            ],
        ];
        assert_eq!(written, expected);
    }

    #[test]
    fn midnight_is_the_first_hour() {
        let midnight = NaiveDate::from_ymd_opt(2026, 1, 5).and_then(|day| day.and_hms_opt(0, 5, 0));
        let short = Texts::of(Language::English).short_moment(midnight.unwrap());
        assert_eq!(short, "Mon 5 Jan, 00:05");
    }
}
