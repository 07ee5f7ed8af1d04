//! Writing a week's scenario sheet and saying when it is revealed.

use document::scenario::ScenarioSheetDocument;
use league::ids::{ClubId, SeasonId};
use league::scenario::ScenarioSheet;
use league::season::{Phase, Reveal, Revealed, SeasonState, revealed};
use league::time::{Civil, Instant};
use league::week::WeekNo;
use serde_json::json;
use store::seasons::Season;
use store::weeks::Week;

use crate::may::may;
use crate::record::Scene;
use crate::{Action, Actor, Desk, Fault, Reason, Refusal};

/// When a part is revealed; a civil time is in the season's zone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RevealAt {
    /// With the week's announcement.
    Announcement,
    /// At a civil time.
    At(Civil),
    /// When the lists are opened.
    ListsOpened,
}

/// A sheet with its reveals.
#[derive(Clone, Debug)]
pub struct UpdateScenario {
    /// The sheet.
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
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    id: SeasonId,
    week: WeekNo,
    command: UpdateScenario,
) -> Result<(), Refusal> {
    ScenarioSheet::try_from(command.sheet.clone()).map_err(|faults| {
        let faults = faults
            .into_iter()
            .map(|fault| Fault::from(fault).below("/sheet"))
            .collect();
        Refusal::faults(Reason::Validation, "The scenario sheet has faults.", faults)
    })?;
    desk.store
        .write(async |conn| {
            may(conn, actor, club, Action::RunSeason).await?;
            let season = store::seasons::lock(conn, club, id).await?;
            let now = store::clock::now(conn).await?;
            let old = store::weeks::lock(conn, club, id, week).await?;
            let seen = may_still_change(&season, &old, now)?;
            let reveals = (
                instant(&season, command.title)?,
                instant(&season, command.full)?,
            );
            if seen == Revealed::Title {
                title_must_stay(&old, &command.sheet, reveals, now)?;
            }
            store::weeks::update_sheet(conn, club, id, week, &command.sheet, reveals).await?;
            let scene = Scene::in_season(season.key(), actor, now);
            let facts = json!({"week": week.number()});
            if seen == Revealed::Title {
                return scene
                    .tell_everyone(desk, conn, "update_scenario", facts)
                    .await;
            }
            // Readers may see a title at once, or all of it sooner than was planned.
            store::seasons::touch(conn, club, id, now).await?;
            scene.tell_officers(conn, "update_scenario", facts).await
        })
        .await
}

/// What the players know of the sheet so far.
fn may_still_change(season: &Season, week: &Week, now: Instant) -> Result<Revealed, Refusal> {
    let seen = if season.state == SeasonState::Draft || week.sheet.is_none() {
        Revealed::Nothing
    } else {
        revealed(week.title_reveal, week.full_reveal, &week.facts, now)
    };
    if seen == Revealed::Full || week.facts.phase(now) >= Phase::Paired {
        return Err(Refusal::rule(
            Reason::SeasonFixed,
            "The scenario is known to the players; it no longer changes.",
        ));
    }
    Ok(seen)
}

fn title_must_stay(
    week: &Week,
    sheet: &ScenarioSheetDocument,
    (title, full): (Reveal, Reveal),
    now: Instant,
) -> Result<(), Refusal> {
    let same = week
        .sheet
        .as_ref()
        .is_some_and(|old| old.title == sheet.title);
    if same && revealed(title, full, &week.facts, now) >= Revealed::Title {
        return Ok(());
    }
    Err(Refusal::rule(
        Reason::SeasonFixed,
        "The title is known to the players; it stays.",
    ))
}

fn instant(season: &Season, reveal: RevealAt) -> Result<Reveal, Refusal> {
    Ok(match reveal {
        RevealAt::Announcement => Reveal::Announcement,
        RevealAt::ListsOpened => Reveal::ListsOpened,
        RevealAt::At(civil) => Reveal::At(civil.in_zone(season.zone).map_err(|fault| {
            Refusal::fault(
                Reason::InvalidLocalTime,
                "/full",
                format!("The time {fault}."),
            )
        })?),
    })
}
