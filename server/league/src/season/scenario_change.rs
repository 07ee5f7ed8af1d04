//! The transition rules of a week's scenario: until when it may be changed, and what stays.

use messages::{Message, seasons};

use super::SeasonState;
use super::phase::{WeekFacts, WeekPhase};
use super::reveal::{RevealTime, Revealed, revealed_at};
use crate::time::Instant;

/// A scenario as it is planned for a week.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlannedScenario<'a> {
    pub title: &'a str,
    /// When the title is revealed.
    pub title_reveal: RevealTime,
    /// When all of it is revealed.
    pub full_reveal: RevealTime,
}

/// Why a scenario may not be changed so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScenarioChangeFault {
    /// All of it is revealed, or the week is paired.
    Known,
    /// The title is revealed, and would be another or be hidden again.
    TitleKnown,
}

impl ScenarioChangeFault {
    pub fn message(self) -> Message {
        match self {
            Self::Known => seasons::scenario_known(),
            Self::TitleKnown => seasons::scenario_title_known(),
        }
    }
}

impl PlannedScenario<'_> {
    fn revealed(&self, week: &WeekFacts, now: Instant) -> Revealed {
        revealed_at(self.title_reveal, self.full_reveal, week, now)
    }
}

/// Whether the scenario of a week may be changed at `now`, and what players know of the old one then.
/// Nobody knows anything of a draft.
///
/// # Errors
/// [`ScenarioChangeFault`].
pub fn check_scenario_change(
    season: SeasonState,
    week: &WeekFacts,
    old: Option<PlannedScenario<'_>>,
    new: PlannedScenario<'_>,
    now: Instant,
) -> Result<Revealed, ScenarioChangeFault> {
    let old = old.filter(|_| season != SeasonState::Draft);
    let seen = old.map_or(Revealed::Nothing, |old| old.revealed(week, now));
    if seen == Revealed::Full || week.phase(now) >= WeekPhase::Paired {
        return Err(ScenarioChangeFault::Known);
    }
    let has_title = old.is_some_and(|old| old.title == new.title);
    let stays = has_title && new.revealed(week, now) >= Revealed::Title;
    if seen == Revealed::Title && !stays {
        return Err(ScenarioChangeFault::TitleKnown);
    }
    Ok(seen)
}

#[cfg(test)]
mod tests {
    use chrono::Duration;

    use super::*;
    use crate::season::samples::week_due;

    const CROSSING: PlannedScenario<'static> = PlannedScenario {
        title: "The crossing",
        title_reveal: RevealTime::Announcement,
        full_reveal: RevealTime::ListsOpened,
    };
    const ANOTHER: PlannedScenario<'static> = PlannedScenario {
        title: "Another crossing",
        ..CROSSING
    };
    const HIDDEN: PlannedScenario<'static> = PlannedScenario {
        title_reveal: RevealTime::ListsOpened,
        ..CROSSING
    };

    fn due() -> Instant {
        "2026-01-12T20:00:00Z".parse().unwrap()
    }

    fn week() -> WeekFacts {
        week_due(due())
    }

    fn change(
        week: &WeekFacts,
        new: PlannedScenario<'_>,
        now: Instant,
    ) -> Result<Revealed, ScenarioChangeFault> {
        check_scenario_change(SeasonState::Started, week, Some(CROSSING), new, now)
    }

    #[test]
    fn before_anything_is_revealed_all_of_it_may_change() {
        let before = due() - Duration::days(5);
        for new in [CROSSING, ANOTHER, HIDDEN] {
            assert_eq!(change(&week(), new, before), Ok(Revealed::Nothing));
        }
    }

    #[test]
    fn a_title_that_is_revealed_stays_and_stays_revealed() {
        let announced = due() - Duration::days(1);
        assert_eq!(change(&week(), CROSSING, announced), Ok(Revealed::Title));
        for new in [ANOTHER, HIDDEN] {
            let fault = Err(ScenarioChangeFault::TitleKnown);
            assert_eq!(change(&week(), new, announced), fault);
        }
    }

    #[test]
    fn a_scenario_that_is_revealed_or_played_does_not_change() {
        let opened = WeekFacts {
            lists_opened_at: Some(due()),
            ..week()
        };
        let known = Err(ScenarioChangeFault::Known);
        assert_eq!(change(&opened, CROSSING, due()), known);
        let paired = WeekFacts {
            paired_at: Some(due()),
            ..opened
        };
        let first = check_scenario_change(SeasonState::Started, &paired, None, CROSSING, due());
        assert_eq!(first, known);
    }

    #[test]
    fn of_a_draft_nobody_knows_anything() {
        let announced = due() - Duration::days(1);
        let draft = SeasonState::Draft;
        let changed = check_scenario_change(draft, &week(), Some(CROSSING), ANOTHER, announced);
        assert_eq!(changed, Ok(Revealed::Nothing));
    }
}
