//! The facts of a season, loaded for pairing, standings and ledger alike.

use league::catalogue::Catalogue;
use league::lists::ArmyList;
use league::lists::line::lines;
use league::painting::ListedUnit;
use league::pairing::history::past::RoundKey;
use league::scenario::ScenarioSheet;
use league::season::{last_paired_week, rounds_after, rounds_to_come};
use league::standings::SeasonFacts;
use league::time::Instant;
use league::week::WeekNo;
use store::games::GameRow;
use store::players::Player;
use store::weeks::Week;

use crate::Refusal;

/// The facts of a season as the rules need them, with the rows that they were made from.
pub(crate) struct LoadedSeason {
    pub facts: SeasonFacts,
    pub players: Vec<Player>,
    pub weeks: Vec<Week>,
    pub games: Vec<GameRow>,
    /// Rounds of a week, as the rules of the season want.
    pub per_week: u8,
    /// The instant at which the season was in this state.
    pub now: Instant,
}

impl LoadedSeason {
    /// The last week that is paired; the first where none is.
    pub fn last_paired_week(&self) -> WeekNo {
        let facts = self.weeks.iter().map(|week| (week.week, &week.facts));
        // Before any week is paired the table is that of the first.
        last_paired_week(facts).unwrap_or(WeekNo::FIRST)
    }

    /// Rounds still to come; a closed week has no more.
    pub fn rounds_to_come(&self) -> u8 {
        let open = self
            .weeks
            .iter()
            .filter(|week| week.facts.closed_at.is_none());
        let published = open.map(|week| self.published_rounds(week.week));
        rounds_to_come(published, self.per_week)
    }

    /// Rounds after this one, when every week gets as many as the season wants.
    pub fn rounds_after(&self, key: RoundKey) -> u8 {
        let weeks = self.weeks.iter().map(|week| week.week);
        rounds_after(key.week, key.number, weeks, self.per_week)
    }

    /// Rounds of a week that are published.
    fn published_rounds(&self, week: WeekNo) -> u8 {
        let games = self.games.iter().filter(|game| game.week == week);
        // Rounds count from 1: none is published while a week has no games.
        games.map(|game| game.round_no).max().unwrap_or(0)
    }

    /// The week asked for, or the last that is paired.
    ///
    /// # Errors
    /// [`Refusal::NotFound`] for a week that the season does not have.
    pub fn week_or_last_paired(&self, week: Option<WeekNo>) -> Result<WeekNo, Refusal> {
        match week {
            None => Ok(self.last_paired_week()),
            Some(week) => Ok(self.week(week).ok_or(Refusal::NotFound)?.week),
        }
    }

    /// Closes a week, as the database does: no other fact depends on it.
    pub fn mark_closed(&mut self, week: WeekNo, at: Instant) {
        let closed = self.weeks.iter_mut().filter(|known| known.week == week);
        closed.for_each(|week| week.facts.closed_at = Some(at));
    }

    /// The week, if the season has it.
    pub fn week(&self, week: WeekNo) -> Option<&Week> {
        self.weeks.iter().find(|known| known.week == week)
    }
}

/// The scenario sheet of a week.
///
/// # Errors
/// [`Refusal::Internal`] when it can no longer be read.
pub(crate) fn parse_sheet(week: &Week) -> Result<Option<ScenarioSheet>, Refusal> {
    let Some(document) = week.sheet.clone() else {
        return Ok(None);
    };
    ScenarioSheet::try_from(document)
        .map(Some)
        .map_err(|faults| Refusal::Internal(format!("sheet of week {}: {faults:?}", week.week)))
}

/// The units of a list with their points.
pub(crate) fn listed_units(list: &ArmyList, catalogue: &Catalogue) -> Vec<ListedUnit> {
    lines(list, catalogue)
        .into_iter()
        .map(|line| ListedUnit {
            unit: line.entry.key.clone(),
            points: line.points,
            models: line.entry.models,
        })
        .collect()
}
