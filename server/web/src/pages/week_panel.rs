//! A week as a page shows it: cap, deadline, nights, scenario as far as it is revealed.

use app::Desk;
use app::Refusal;
use app::seasons::{ScenarioSeen, Week};
use document::scenario::ScenarioSheetDocument;
use league::scenario::ScenarioSheet;
use league::season::{Phase, Revealed, revealed};
use league::week::WeekNo;

use super::map::TableMap;
use super::moment::Moment;
use super::season_scene::SeasonScene;
use super::texts::{Phrase, Texts};
use super::visit::Visit;
use crate::problem::Problem;

/// A week.
pub struct WeekPanel {
    /// Which.
    pub week: WeekNo,
    /// Its number.
    pub number: u8,
    /// Its page.
    pub link: String,
    /// The points cap.
    pub cap: u32,
    /// Where it stands.
    pub phase: Phrase,
    /// Whether it is under way.
    pub under_way: bool,
    /// Whether it is announced.
    pub announced: bool,
    /// Whether lists may still come in as a matter of course.
    pub lists_come_in: bool,
    /// When it is announced.
    pub announce: Moment,
    /// When lists are due.
    pub due: Moment,
    /// The same, for the columns of a table.
    pub due_short: Moment,
    /// Until when a list counts as in time, where that is later.
    pub accepted_until: Option<Moment>,
    /// When games must be played.
    pub play_until: Moment,
    /// Its nights.
    pub nights: Vec<NightLine>,
}

/// A night.
pub struct NightLine {
    /// Its short name.
    pub key: String,
    /// When it begins.
    pub begins: Moment,
    /// Tables.
    pub tables: u16,
}

/// A scenario, as far as it may be seen.
pub enum ScenarioPanel {
    /// Nothing.
    Hidden,
    /// The title alone.
    Title(String),
    /// All of it.
    Full(Box<SheetPanel>),
}

/// A whole scenario sheet.
pub struct SheetPanel {
    /// Its title.
    pub title: String,
    /// In short.
    pub summary: String,
    /// At length.
    pub briefing: String,
    /// What counts.
    pub sentences: Vec<String>,
    /// The table.
    pub map: TableMap,
    /// Whether players do not see it yet.
    pub preview: bool,
}

impl WeekPanel {
    /// A week of a season.
    pub fn new(scene: &SeasonScene, (week, phase): &(Week, Phase), t: &'static Texts) -> Self {
        let clock = scene.clock(t);
        let facts = &week.facts;
        let lists_come_in = *phase == Phase::Announced;
        let due = facts.lists_due_at;
        let accepted = facts.accepted_until();
        Self {
            week: week.week,
            number: week.week.number(),
            link: scene.week_link(week.week),
            cap: week.cap.get(),
            phase: phase_word(t, *phase),
            under_way: (Phase::Announced..Phase::Closed).contains(phase),
            announced: *phase >= Phase::Announced,
            lists_come_in,
            announce: clock.at(facts.announce_at),
            due: if lists_come_in {
                clock.until(due)
            } else {
                clock.at(due)
            },
            due_short: clock.short(due),
            accepted_until: (accepted > due).then(|| clock.at(accepted)),
            play_until: clock.at(facts.play_until_at),
            nights: week
                .nights
                .iter()
                .map(|night| NightLine {
                    key: night.key.clone(),
                    begins: clock.at(night.begins.1),
                    tables: night.tables,
                })
                .collect(),
        }
    }
}

/// What this reader may see of a week's scenario.
///
/// # Errors
/// When the server cannot tell.
pub async fn scenario(
    desk: &Desk,
    visit: &Visit,
    scene: &SeasonScene,
    week: &Week,
) -> Result<ScenarioPanel, Problem> {
    let (club, season) = (scene.season.club, scene.season.id);
    let seen = app::seasons::find_scenario(desk, visit.viewer, club, season, week.week).await;
    let now = desk.now().await?;
    match seen {
        Err(Refusal::NotFound) => Ok(ScenarioPanel::Hidden),
        Err(other) => Err(other.into()),
        Ok(ScenarioSeen::Title(title)) => Ok(ScenarioPanel::Title(title)),
        Ok(ScenarioSeen::Full(sheet)) => {
            let known = revealed(week.title_reveal, week.full_reveal, &week.facts, now);
            let preview = known != Revealed::Full;
            Ok(ScenarioPanel::Full(Box::new(sheet_view(
                *sheet, preview, visit.t,
            )?)))
        }
    }
}

fn sheet_view(
    sheet: ScenarioSheetDocument,
    preview: bool,
    t: &'static Texts,
) -> Result<SheetPanel, Problem> {
    let map = TableMap::new(&sheet.table, t);
    let (title, summary) = (sheet.title.clone(), sheet.summary.clone());
    let briefing = sheet.briefing.clone();
    let sheet = ScenarioSheet::try_from(sheet)
        .map_err(|faults| Refusal::Broken(format!("a sheet that was kept: {faults:?}")))?;
    let sentences = t.speech().scenario(&sheet);
    Ok(SheetPanel {
        title,
        summary,
        briefing,
        sentences,
        map,
        preview,
    })
}

/// Where a week stands.
pub fn phase_word(t: &Texts, phase: Phase) -> Phrase {
    match phase {
        Phase::Planned => t.phase_planned,
        Phase::Announced => t.phase_announced,
        Phase::ListsDue => t.phase_lists_due,
        Phase::ListsOpened => t.phase_lists_opened,
        Phase::Paired => t.phase_paired,
        Phase::Closed => t.phase_closed,
    }
}
