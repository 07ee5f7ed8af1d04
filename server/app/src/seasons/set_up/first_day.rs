//! The fault of a season whose first day is years away, and what day it is at the club.

use chrono::NaiveDate;
use chrono_tz::Tz;
use league::season::check_first_day;

use crate::{App, Fault, Reason, Refusal};

/// What is wrong with a season that begins on `day`, if anything. `pointer` is where the request has it.
pub fn first_day_fault(day: NaiveDate, today: NaiveDate, pointer: &str) -> Option<Fault> {
    let found = check_first_day(day, today).err()?;
    let fault = Fault::new("season.first-day", pointer, found.message());
    Some(fault.with(found.nearest().to_string(), day.to_string()))
}

/// The day on the wall of a club in `zone`.
///
/// # Errors
/// [`Refusal::Unavailable`] when the database cannot be reached.
pub(super) async fn find_today(app: &App, zone: Tz) -> Result<NaiveDate, Refusal> {
    app.store
        .read(async |conn| {
            let now = store::clock::now(conn).await?;
            Ok(now.with_timezone(&zone).date_naive())
        })
        .await
}

/// # Errors
/// [`Reason::Validation`] for a day years away.
pub(super) fn must_be_near(day: NaiveDate, today: NaiveDate, pointer: &str) -> Result<(), Refusal> {
    first_day_fault(day, today, pointer).map_or(Ok(()), |fault| {
        Err(Refusal::of_fault(Reason::Validation, fault))
    })
}
