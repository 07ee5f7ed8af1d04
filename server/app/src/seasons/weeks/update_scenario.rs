//! Updating a week's scenario sheet and the times of its reveals.

use document::season::scenario::ScenarioSheetDocument;
use document::trail::TrailAct;
use league::keys::WeekKey;
use league::scenario::ScenarioSheet;
use league::season::{PlannedScenario, RevealTime, Revealed, check_scenario_change};
use league::time::CivilTime;
use messages::{refusals, seasons};
use store::seasons::Season;
use store::trail::TrailAudience;

use crate::access::authorize;
use crate::season_change::SeasonChange;
use crate::{Action, Actor, App, Fault, Reason, Refusal};

/// When a part is revealed; a civil time is in the season's zone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RevealAt {
    /// With the week's announcement.
    Announcement,
    /// At a civil time.
    At(CivilTime),
    /// When the lists are opened.
    ListsOpened,
}

/// A sheet with its reveals.
#[derive(Clone, Debug)]
pub struct UpdateScenario {
    pub sheet: ScenarioSheetDocument,
    /// When the title is revealed.
    pub title: RevealAt,
    /// When all of it is revealed.
    pub full: RevealAt,
}

/// A sheet may change until it is revealed in full or the week is paired. A title that is revealed
/// stays, and everybody is told that what is behind it changed.
///
/// # Errors
/// [`Reason::Validation`] with every fault of the sheet, [`Reason::SeasonFixed`] afterwards.
pub async fn update_scenario(
    app: &App,
    actor: Actor,
    week: WeekKey,
    command: UpdateScenario,
) -> Result<(), Refusal> {
    ScenarioSheet::try_from(command.sheet.clone()).map_err(|faults| {
        let faults = faults
            .into_iter()
            .map(|fault| Fault::from(fault).below("/sheet"))
            .collect();
        Refusal::faults(Reason::Validation, seasons::scenario_faults(), faults)
    })?;
    app.write(async |mut tx| {
        authorize(&mut tx, actor, week.season.club, Action::RunSeason).await?;
        let season = store::seasons::lock(&mut tx, week.season).await?;
        let now = store::clock::now(&tx).await?;
        let old = store::weeks::lock(&mut tx, week).await?;
        let reveals = (
            instant(&season, command.title)?,
            instant(&season, command.full)?,
        );
        let before = (old.title_reveal, old.full_reveal);
        let before = old.sheet.as_ref().map(|sheet| planned(sheet, before));
        let after = planned(&command.sheet, reveals);
        let seen = check_scenario_change(season.state, &old.facts, before, after, now)
            .map_err(|fault| Refusal::rule(Reason::SeasonFixed, fault.message()))?;
        store::weeks::update_sheet(&mut tx, week, &command.sheet, reveals).await?;
        let act = TrailAct::UpdateScenario {
            week: week.week.number(),
        };
        // Even where nothing of it is known yet, readers may see a title at once, or all of it sooner than
        // was planned.
        let audience = match seen {
            Revealed::Title => TrailAudience::Everyone,
            Revealed::Nothing | Revealed::Full => TrailAudience::Officers,
        };
        let change = SeasonChange {
            audience,
            ..SeasonChange::new(season.key(), actor, now, act)
        };
        Ok(tx.publish(change).await?.with(()))
    })
    .await
}

fn planned(
    sheet: &ScenarioSheetDocument,
    (title_reveal, full_reveal): (RevealTime, RevealTime),
) -> PlannedScenario<'_> {
    PlannedScenario {
        title: &sheet.title,
        title_reveal,
        full_reveal,
    }
}

fn instant(season: &Season, reveal: RevealAt) -> Result<RevealTime, Refusal> {
    Ok(match reveal {
        RevealAt::Announcement => RevealTime::Announcement,
        RevealAt::ListsOpened => RevealTime::ListsOpened,
        RevealAt::At(civil) => RevealTime::At(civil.to_instant(season.zone).map_err(|fault| {
            Refusal::fault(
                Reason::InvalidLocalTime,
                "/full",
                refusals::time_fault(fault.message()),
            )
        })?),
    })
}
