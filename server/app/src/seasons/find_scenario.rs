//! A week's scenario, as far as it may be known by the viewer at this instant.

use document::scenario::ScenarioSheetDocument;
use league::ids::{ClubId, SeasonId};
use league::season::{Revealed, SeasonState, revealed};
use league::week::WeekNo;
use store::weeks::Week;

use super::look::{Look, look};
use crate::{Desk, Refusal, Viewer};
use league::time::Instant;

/// What is seen of a scenario.
#[derive(Clone, Debug)]
pub enum ScenarioSeen {
    /// Its title.
    Title(String),
    /// All of it.
    Full(Box<ScenarioSheetDocument>),
}

/// # Errors
/// [`Refusal::NotFound`] when there is none or nothing may be known of it: the two look alike.
pub async fn find_scenario(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
) -> Result<ScenarioSeen, Refusal> {
    desk.store
        .read(async |conn| {
            let look = look(conn, viewer, club, season).await?;
            let week = store::weeks::find(conn, club, season, week).await?;
            let now = store::clock::now(conn).await?;
            seen(&look, &week, now).ok_or(Refusal::NotFound)
        })
        .await
}

/// What this viewer sees of the week's scenario.
pub(crate) fn seen(look: &Look, week: &Week, now: Instant) -> Option<ScenarioSeen> {
    let sheet = week.sheet.as_ref()?;
    let known = if look.runs_season() {
        Revealed::Full
    } else if look.season.state == SeasonState::Draft {
        Revealed::Nothing
    } else {
        revealed(week.title_reveal, week.full_reveal, &week.facts, now)
    };
    match known {
        Revealed::Nothing => None,
        Revealed::Title => Some(ScenarioSeen::Title(sheet.title.clone())),
        Revealed::Full => Some(ScenarioSeen::Full(Box::new(sheet.clone()))),
    }
}
