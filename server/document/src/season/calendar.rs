//! Caps, calendar and nights of a season as JSON.

use chrono::{NaiveDate, NaiveTime};
use chrono_tz::Tz;
use league::season::{
    Calendar, CalendarFault, Caps, ClubNight, WeekFault, WeekPart, WeekPlan, WeekTime,
};
use messages::refusals;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::civil;
use crate::fault::DocumentFault;

/// The caps of the weeks.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum CapsDocument {
    /// So many points more each week.
    Step {
        /// Cap of week 1.
        #[schema(example = 250)]
        first: u32,
        /// Points more each week.
        #[schema(example = 250)]
        step: u32,
        /// Weeks.
        #[schema(example = 8, minimum = 1, maximum = 52)]
        weeks: u8,
    },
    /// Each cap by itself; it may rest but not fall.
    List {
        /// First week first.
        #[schema(example = json!([300, 400, 500, 600, 600, 750, 900, 1000]))]
        caps: Vec<u32>,
    },
}

/// The rhythm of a season. Times are civil times in the season's zone.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[schema(example = json!({
    "first_day": "2026-03-02", "days_per_week": 7,
    "announce": {"day": 0, "time": "12:00:00"}, "lists_due": {"day": 1, "time": "12:00:00"},
    "play_until": {"day": 6, "time": "23:00:00"},
    "nights": [{"key": "tue", "day": 1, "time": "19:00:00", "tables": 6}]
}))]
#[serde(deny_unknown_fields)]
pub struct CalendarDocument {
    /// First day of week 1.
    #[serde(deserialize_with = "civil::deserialize_date")]
    #[schema(example = "2026-03-02")]
    pub first_day: NaiveDate,
    /// Days from one week to the next.
    #[serde(default = "seven")]
    #[schema(example = 7)]
    pub days_per_week: u16,
    /// Cap and scenario go out.
    pub announce: MomentDocument,
    /// Lists are due.
    pub lists_due: MomentDocument,
    /// Games must be played.
    pub play_until: MomentDocument,
    /// The nights of a week.
    pub nights: Vec<NightDocument>,
}

/// A time of day so many days after the week's first day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct MomentDocument {
    /// Days after the first day; 0 is that day itself.
    #[schema(example = 1)]
    pub day: u16,
    /// Time of day.
    #[serde(deserialize_with = "civil::deserialize_time")]
    #[schema(value_type = String, format = "time-local", pattern = r"^\d{2}:\d{2}:\d{2}(\.\d{1,9})?$", example = "20:00:00")]
    pub time: NaiveTime,
}

/// A night of a week.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct NightDocument {
    /// Short name, the same every week.
    #[schema(example = "tue")]
    pub key: String,
    /// Days after the week's first day.
    #[schema(example = 1)]
    pub day: u16,
    /// When it begins.
    #[serde(deserialize_with = "civil::deserialize_time")]
    #[schema(value_type = String, format = "time-local", pattern = r"^\d{2}:\d{2}:\d{2}(\.\d{1,9})?$", example = "19:00:00")]
    pub time: NaiveTime,
    /// Tables for games.
    #[schema(example = 6, minimum = 1, maximum = 500)]
    pub tables: u16,
}

fn seven() -> u16 {
    7
}

/// The plan of every week, or all faults of caps and calendar with their places below the season.
///
/// # Errors
/// Every [`DocumentFault`].
pub fn plan(
    caps: &CapsDocument,
    calendar: &CalendarDocument,
    zone: Tz,
) -> Result<Vec<WeekPlan>, Vec<DocumentFault>> {
    let caps = read_caps(caps)?;
    read_calendar(calendar).plan(&caps, zone).map_err(|faults| {
        let mut faults: Vec<_> = faults.iter().map(locate).collect();
        // Of all nights before the deadline one is told: their place is the same.
        faults.dedup();
        faults
    })
}

fn read_caps(document: &CapsDocument) -> Result<Caps, Vec<DocumentFault>> {
    let (caps, listed) = match document {
        CapsDocument::Step { first, step, weeks } => {
            (Caps::from_step(*first, *step, *weeks), false)
        }
        CapsDocument::List { caps } => (Caps::from_list(caps), true),
    };
    caps.map_err(|faults| {
        let place = |index: Option<usize>| match index {
            Some(index) if listed => format!("/caps/caps/{index}"),
            _ => "/caps".to_owned(),
        };
        faults
            .into_iter()
            .map(|fault| {
                let found = {
                    let message = refusals::sentence(fault.message());
                    DocumentFault::new(place(fault.index()), "season.caps", message)
                };
                let (limit, actual) = fault.limit_and_actual();
                found.with_limit(limit, actual)
            })
            .collect()
    })
}

fn read_calendar(document: &CalendarDocument) -> Calendar {
    Calendar {
        first_day: document.first_day,
        days_per_week: document.days_per_week,
        announce: document.announce.into(),
        lists_due: document.lists_due.into(),
        play_until: document.play_until.into(),
        nights: document
            .nights
            .iter()
            .map(|night| ClubNight {
                key: night.key.clone(),
                begins: WeekTime {
                    day: night.day,
                    time: night.time,
                },
                tables: night.tables,
            })
            .collect(),
    }
}

fn locate(fault: &CalendarFault) -> DocumentFault {
    let (place, code) = match fault {
        CalendarFault::Days(_) => ("/days_per_week", "season.days"),
        CalendarFault::EveryWeek(found) | CalendarFault::Week { fault: found, .. } => {
            let member = match found {
                WeekFault::Order { later, .. } => member(later.0),
                WeekFault::Nights(_) | WeekFault::NightKey { .. } | WeekFault::Tables { .. } => {
                    "/nights"
                }
            };
            (member, week_fault_code(found))
        }
        CalendarFault::Clock { what, .. } => (member(*what), "invalid-local-time"),
        CalendarFault::TooFar => ("/first_day", "season.too-far"),
    };
    let message = refusals::sentence(fault.message());
    let found = DocumentFault::new(format!("/calendar{place}"), code, message);
    found.with_limit_if_any(fault.limit_and_actual())
}

/// The code of what is wrong with a week.
pub fn week_fault_code(fault: &WeekFault) -> &'static str {
    match fault {
        WeekFault::Order { .. } => "season.order",
        WeekFault::Nights(_) | WeekFault::NightKey { .. } | WeekFault::Tables { .. } => {
            "season.nights"
        }
    }
}

fn member(part: WeekPart) -> &'static str {
    match part {
        WeekPart::Announce => "/announce",
        WeekPart::ListsDue => "/lists_due",
        WeekPart::PlayUntil => "/play_until",
        WeekPart::Night(_) => "/nights",
        WeekPart::Reveal => "/reveal",
    }
}

impl From<MomentDocument> for WeekTime {
    fn from(document: MomentDocument) -> Self {
        Self {
            day: document.day,
            time: document.time,
        }
    }
}
