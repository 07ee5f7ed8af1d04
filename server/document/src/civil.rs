//! Civil times as JSON: local times of the season, without a zone.

use chrono::{NaiveDate, NaiveDateTime, NaiveTime};
use messages::{Message, requests};
use serde::de::{Deserialize, Deserializer, Error};
use serde::{Deserialize as Read, Serialize};
use std::borrow::Cow;
use std::str::FromStr;
use utoipa::ToSchema;

/// What a civil time that cannot be read is refused with. Serde carries errors as text alone: whoever
/// shows them finds the message again by its English.
pub const MESSAGES: [fn() -> Message; 3] = [
    requests::civil_time_needed,
    requests::date_needed,
    requests::time_of_day_needed,
];

/// Local time of the season's zone, without zone or offset (the format `date-time-local` of the
/// OpenAPI Format Registry).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Read, ToSchema)]
#[schema(
    value_type = String,
    format = "date-time-local",
    pattern = r"^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d{1,9})?$",
    example = "2026-03-03T19:00:00"
)]
pub struct CivilDocument(#[serde(deserialize_with = "deserialize_date_time")] pub NaiveDateTime);

fn deserialize_date_time<'de, D: Deserializer<'de>>(source: D) -> Result<NaiveDateTime, D::Error> {
    deserialize_civil(source, requests::civil_time_needed)
}

/// Reads a date of the season's zone.
///
/// # Errors
/// Anything but `2026-03-03`.
pub fn deserialize_date<'de, D: Deserializer<'de>>(source: D) -> Result<NaiveDate, D::Error> {
    deserialize_civil(source, requests::date_needed)
}

/// Reads a time of day of the season's zone.
///
/// # Errors
/// Anything but `19:00:00`.
pub fn deserialize_time<'de, D: Deserializer<'de>>(source: D) -> Result<NaiveTime, D::Error> {
    deserialize_civil(source, requests::time_of_day_needed)
}

fn deserialize_civil<'de, D: Deserializer<'de>, T: FromStr>(
    source: D,
    wanted: fn() -> Message,
) -> Result<T, D::Error> {
    let text = Cow::<str>::deserialize(source)?;
    text.parse().map_err(|_| D::Error::custom(wanted()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_civil_time_keeps_its_form_and_has_no_zone() {
        let text = r#""2026-03-03T19:00:00""#;
        let civil: CivilDocument = serde_json::from_str(text).unwrap();
        assert_eq!(serde_json::to_string(&civil).unwrap(), text);
        for zoned in [
            "2026-03-03T19:00:00Z",
            "2026-03-03T19:00:00+01:00",
            "2026-02-30T19:00:00",
        ] {
            let fault = serde_json::from_str::<CivilDocument>(&format!("{zoned:?}")).unwrap_err();
            assert!(
                fault
                    .to_string()
                    .starts_with("Give local time of the season without zone")
            );
        }
    }
}
