//! The attendance of a season, for whoever may see it: counts alone, no names.

use league::keys::SeasonKey;
use league::standings::{WeekAttendance, attendance};
use league::week::WeekNo;
use store::weeks::Week;

use crate::load_season::view_loaded_season;
use crate::{App, Refusal, Viewer};

/// How many came, week by week.
#[derive(Clone, Debug)]
pub struct SeasonAttendance {
    /// The season's version that it belongs to.
    pub version: i64,
    /// The last week that is paired; the first before any is.
    pub as_of: WeekNo,
    pub weeks: Vec<WeekAttendance>,
}

/// # Errors
/// [`Refusal::NotFound`].
pub async fn find_attendance(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
) -> Result<SeasonAttendance, Refusal> {
    app.store
        .read(async |conn| {
            let (season, loaded) = view_loaded_season(conn, app, viewer, season).await?;
            let as_of = loaded.last_paired_week();
            // Before the first round nobody was expected.
            let is_paired = |week: &Week| week.facts.paired_at.is_some();
            let weeks = if loaded.weeks.iter().any(is_paired) {
                attendance(&loaded.facts, as_of)
            } else {
                Vec::new()
            };
            Ok(SeasonAttendance {
                version: season.version,
                as_of,
                weeks,
            })
        })
        .await
}
