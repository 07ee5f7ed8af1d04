//! The panel of a week that several pages show: cap, deadline, nights, scenario as far as it is revealed.

use std::borrow::Cow;

use app::Refusal;
use app::seasons::{VisibleScenario, Week};
use document::season::scenario::ScenarioSheetDocument;
use league::scenario::ScenarioSheet;
use league::season::{Revealed, WeekPhase, revealed_at};
use league::week::WeekNo;

use crate::pages::pictures::table_map::TableMap;
use crate::pages::season::context::SeasonContext;
use crate::pages::season::season_page::SeasonPage;
use crate::pages::words::local_time::LocalTime;
use crate::problem::Problem;
use messages::Texts;

pub struct WeekPanel {
    pub week: WeekNo,
    pub number: u8,
    pub link: String,
    pub cap: u32,
    /// Where it stands.
    pub phase: Cow<'static, str>,
    /// Whether it is under way.
    pub under_way: bool,
    /// Whether it is announced.
    pub announced: bool,
    /// Whether lists may still come in as a matter of course.
    pub lists_come_in: bool,
    /// When it is announced.
    pub announce: LocalTime,
    /// When lists are due.
    pub due: LocalTime,
    /// The same, for the columns of a table.
    pub due_short: LocalTime,
    /// Until when a list counts as in time, where that is later.
    pub accepted_until: Option<LocalTime>,
    /// When games must be played.
    pub play_until: LocalTime,
    pub nights: Vec<NightLine>,
}

pub struct NightLine {
    pub key: String,
    pub begins: LocalTime,
    pub tables: u16,
}

/// A scenario, as far as it may be seen.
pub enum ScenarioPanel {
    /// Nothing.
    Hidden,
    /// The title alone.
    Title(String),
    Full(Box<ScenarioSheetPanel>),
}

/// A whole scenario sheet.
pub struct ScenarioSheetPanel {
    pub title: String,
    /// In short.
    pub summary: String,
    /// At length.
    pub briefing: String,
    pub sentences: Vec<String>,
    pub map: TableMap,
    /// Whether players do not see it yet.
    pub preview: bool,
}

impl WeekPanel {
    /// A week of a season.
    pub fn new(context: &SeasonContext, (week, phase): &(Week, WeekPhase), t: Texts) -> Self {
        let times = context.times(t);
        let facts = &week.facts;
        let lists_come_in = *phase == WeekPhase::Announced;
        let due = facts.lists_due_at;
        let accepted = facts.accepted_until();
        Self {
            week: week.week,
            number: week.week.number(),
            link: context.week_link(week.week),
            cap: week.cap.get(),
            phase: phase_label(t, *phase),
            under_way: (WeekPhase::Announced..WeekPhase::Closed).contains(phase),
            announced: *phase >= WeekPhase::Announced,
            lists_come_in,
            announce: times.date_time(facts.announce_at),
            due: if lists_come_in {
                times.countdown(due)
            } else {
                times.date_time(due)
            },
            due_short: times.short(due),
            accepted_until: (accepted > due).then(|| times.date_time(accepted)),
            play_until: times.date_time(facts.play_until_at),
            nights: week
                .nights
                .iter()
                .map(|night| NightLine {
                    key: night.key.clone(),
                    begins: times.date_time(night.begins.1),
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
pub async fn load_scenario(page: &SeasonPage, week: &Week) -> Result<ScenarioPanel, Problem> {
    let key = page.key().week(week.week);
    let seen = app::seasons::find_scenario(&page.app, page.viewer(), key).await;
    let now = page.app.now().await?;
    match seen {
        Err(Refusal::NotFound) => Ok(ScenarioPanel::Hidden),
        Err(other) => Err(other.into()),
        Ok(VisibleScenario::Title(title)) => Ok(ScenarioPanel::Title(title)),
        Ok(VisibleScenario::Full(sheet)) => {
            let known = revealed_at(week.title_reveal, week.full_reveal, &week.facts, now);
            let panel = sheet_panel(*sheet, known != Revealed::Full, page.t())?;
            Ok(ScenarioPanel::Full(Box::new(panel)))
        }
    }
}

fn sheet_panel(
    sheet: ScenarioSheetDocument,
    preview: bool,
    t: Texts,
) -> Result<ScenarioSheetPanel, Problem> {
    let map = TableMap::new(&sheet.table, t);
    let (title, summary) = (sheet.title.clone(), sheet.summary.clone());
    let briefing = sheet.briefing.clone();
    let sheet = ScenarioSheet::try_from(sheet)
        .map_err(|faults| Refusal::Internal(format!("a sheet that was kept: {faults:?}")))?;
    let sentences = t.say_all(&sheet.messages());
    Ok(ScenarioSheetPanel {
        title,
        summary,
        briefing,
        sentences,
        map,
        preview,
    })
}

/// Where a week stands.
pub fn phase_label(t: Texts, phase: WeekPhase) -> Cow<'static, str> {
    match phase {
        WeekPhase::Planned => t.phase_planned(),
        WeekPhase::Announced => t.phase_announced(),
        WeekPhase::ListsDue => t.phase_lists_due(),
        WeekPhase::ListsOpened => t.phase_lists_opened(),
        WeekPhase::Paired => t.phase_paired(),
        WeekPhase::Closed => t.phase_closed(),
    }
}
