//! The number of a week as a `smallint` column.

use league::week::WeekNo;

use crate::StoreError;

pub(crate) fn week_to_sql(week: WeekNo) -> i16 {
    week.number().into()
}

/// # Errors
/// [`StoreError::Internal`] for a number that no week has.
pub(crate) fn week_from_sql(number: i16) -> Result<WeekNo, StoreError> {
    u8::try_from(number)
        .ok()
        .and_then(WeekNo::new)
        .ok_or_else(|| StoreError::Internal(format!("no week has the number {number}")))
}
