//! API: attendance, for a club's report on its hall.

use actix_web::get;
use actix_web::web::{Data, Path};
use app::App;
use league::standings::WeekAttendance;
use serde::Serialize;
use utoipa::ToSchema;

use crate::authentication::MaybeSignedIn;
use crate::paths::SeasonPath;
use crate::problem::ProblemResponses;
use crate::response::{ApiResult, Versioned};

/// How many came, week by week; nobody is named.
#[derive(Serialize, ToSchema)]
pub struct AttendanceView {
    /// The season's version that it belongs to; also the `ETag`.
    version: i64,
    /// The last week that is paired; the first before any is.
    as_of: u8,
    /// The weeks up to it, in their order; none before the first round.
    weeks: Vec<WeekAttendanceView>,
}

/// What the players of one week did. Everybody counts once, however many rounds the week has.
#[derive(Serialize, ToSchema)]
pub struct WeekAttendanceView {
    /// The week.
    week: u8,
    /// Who had a place in the season.
    players: usize,
    /// Who came to a game.
    came: usize,
    /// Who was expected and did not come.
    no_shows: usize,
    /// Whose game nobody has settled yet.
    open: usize,
    /// Who had a bye.
    byes: usize,
    /// Who had said in time that they could not come.
    away: usize,
}

/// How many players came, stayed away or had a bye, for every week up to the last that is paired.
#[utoipa::path(tag = "standings", params(SeasonPath), security((), ("bearer" = [])), responses((status = 200, body = AttendanceView), ProblemResponses))]
#[get("/attendance")]
pub async fn find_attendance(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<SeasonPath>,
) -> ApiResult<Versioned<AttendanceView>> {
    let found = app::standings::find_attendance(&app, who.0, path.key()).await?;
    Ok(Versioned {
        version: found.version,
        view: AttendanceView {
            version: found.version,
            as_of: found.as_of.number(),
            weeks: found.weeks.iter().map(Into::into).collect(),
        },
    })
}

impl From<&WeekAttendance> for WeekAttendanceView {
    fn from(week: &WeekAttendance) -> Self {
        Self {
            week: week.week.number(),
            players: week.players,
            came: week.came,
            no_shows: week.no_shows,
            open: week.open,
            byes: week.byes,
            away: week.away,
        }
    }
}
