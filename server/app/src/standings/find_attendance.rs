//! The attendance of a season, for whoever may see it: counts alone, no names.

use league::keys::SeasonKey;
use league::standings::{WeekAttendance, attendance};
use league::week::WeekNo;

use crate::access::view_season;
use crate::load_season::load_season;
use crate::{App, Refusal, Viewer};

/// How many came, week by week.
#[derive(Clone, Debug)]
pub struct SeasonAttendance {
    /// The season's version that it belongs to.
    pub version: i64,
    /// The last week that is paired.
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
            let season = view_season(conn, viewer, season).await?.season;
            let now = store::clock::now(conn).await?;
            let loaded = load_season(conn, app, &season, now).await?;
            let as_of = loaded.last_paired_week();
            Ok(SeasonAttendance {
                version: season.version,
                as_of,
                weeks: attendance(&loaded.facts, as_of),
            })
        })
        .await
}
