//! Resource: the weeks, each with as much of its scenario as is revealed.

use app::seasons::VisibleScenario;
use app::standings::{Board, BoardWeek};
use chrono::{DateTime, Utc};
use document::csv::table::{CsvTable, columns, escape_formula, optional_cell};
use document::season::scenario::ScenarioSheetDocument;
use league::season::WeekPhase;
use serde::Serialize;
use utoipa::ToSchema;

/// The weeks of a season in order.
#[derive(Serialize, ToSchema)]
pub struct PublicWeeks {
    version: i64,
    weeks: Vec<PublicWeek>,
}

#[derive(Serialize, ToSchema)]
struct PublicWeek {
    week: u8,
    cap: u32,
    phase: &'static str,
    announce_at: DateTime<Utc>,
    lists_due_at: DateTime<Utc>,
    lists_accepted_until: DateTime<Utc>,
    play_until_at: DateTime<Utc>,
    nights: Vec<PublicNight>,
    /// As far as it is revealed.
    #[serde(skip_serializing_if = "Option::is_none")]
    scenario: Option<PublicScenario>,
}

#[derive(Serialize, ToSchema)]
struct PublicNight {
    key: String,
    begins_at: DateTime<Utc>,
    tables: u16,
}

#[derive(Serialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case")]
enum PublicScenario {
    Title { title: String },
    Full { sheet: Box<ScenarioSheetDocument> },
}

impl PublicScenario {
    fn title(&self) -> &str {
        match self {
            Self::Title { title } => title,
            Self::Full { sheet } => &sheet.title,
        }
    }
}

/// The weeks with their scenarios.
pub fn weeks(board: &Board) -> PublicWeeks {
    PublicWeeks {
        version: board.season.version,
        weeks: board.weeks.iter().map(week).collect(),
    }
}

fn week(known: &BoardWeek) -> PublicWeek {
    let nights = known.nights.iter().map(|night| PublicNight {
        key: night.key.clone(),
        begins_at: night.begins.1,
        tables: night.tables,
    });
    let scenario = known
        .scenario
        .as_ref()
        .map(|client_version| match client_version {
            VisibleScenario::Title(title) => PublicScenario::Title {
                title: title.clone(),
            },
            VisibleScenario::Full(sheet) => PublicScenario::Full {
                sheet: sheet.clone(),
            },
        });
    PublicWeek {
        week: known.week.number(),
        cap: known.cap.get(),
        phase: phase_word(known.phase),
        announce_at: known.facts.announce_at,
        lists_due_at: known.facts.lists_due_at,
        lists_accepted_until: known.facts.accepted_until(),
        play_until_at: known.facts.play_until_at,
        nights: nights.collect(),
        scenario,
    }
}

fn phase_word(phase: WeekPhase) -> &'static str {
    match phase {
        WeekPhase::Planned => "planned",
        WeekPhase::Announced => "announced",
        WeekPhase::ListsDue => "lists_due",
        WeekPhase::ListsOpened => "lists_opened",
        WeekPhase::Paired => "paired",
        WeekPhase::Closed => "closed",
    }
}

impl CsvTable for PublicWeeks {
    fn header(&self) -> Vec<String> {
        columns(&[
            "week",
            "cap",
            "phase",
            "announce_at",
            "lists_due_at",
            "lists_accepted_until",
            "play_until_at",
            "scenario",
        ])
    }

    fn rows(&self) -> Vec<Vec<String>> {
        let cells = |week: &PublicWeek| {
            vec![
                week.week.to_string(),
                week.cap.to_string(),
                week.phase.to_owned(),
                week.announce_at.to_rfc3339(),
                week.lists_due_at.to_rfc3339(),
                week.lists_accepted_until.to_rfc3339(),
                week.play_until_at.to_rfc3339(),
                optional_cell(
                    week.scenario
                        .as_ref()
                        .map(|client_version| escape_formula(client_version.title())),
                ),
            ]
        };
        self.weeks.iter().map(cells).collect()
    }
}
