//! The part of a week's scenario that a viewer may see at an instant.

use document::season::scenario::ScenarioSheetDocument;
use league::season::{Revealed, SeasonState, revealed_at};
use league::time::Instant;
use store::weeks::Week;

use crate::access::SeasonView;

/// A scenario as far as it is revealed.
#[derive(Clone, Debug)]
pub enum VisibleScenario {
    Title(String),
    /// All of it.
    Full(Box<ScenarioSheetDocument>),
}

/// `None` where there is no scenario, or nothing of it may be known yet.
pub(crate) fn visible_scenario(
    view: &SeasonView,
    week: &Week,
    now: Instant,
) -> Option<VisibleScenario> {
    let sheet = week.sheet.as_ref()?;
    let known = if view.runs_season() {
        Revealed::Full
    } else if view.season.state == SeasonState::Draft {
        Revealed::Nothing
    } else {
        revealed_at(week.title_reveal, week.full_reveal, &week.facts, now)
    };
    match known {
        Revealed::Nothing => None,
        Revealed::Title => Some(VisibleScenario::Title(sheet.title.clone())),
        Revealed::Full => Some(VisibleScenario::Full(Box::new(sheet.clone()))),
    }
}
