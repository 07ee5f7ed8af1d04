//! The weeks, each with as much of its scenario as may be known.

use app::seasons::ScenarioSeen;
use app::standings::{Board, BoardWeek};
use chrono::{DateTime, Utc};
use document::scenario::ScenarioSheetDocument;
use document::sheet::{Sheet, columns, or_empty, typed};
use league::season::Phase;
use serde::Serialize;
use utoipa::ToSchema;

/// The weeks of a season in order.
#[derive(Serialize, ToSchema)]
pub struct Weeks {
    version: i64,
    weeks: Vec<Week>,
}

#[derive(Serialize, ToSchema)]
struct Week {
    week: u8,
    cap: u32,
    phase: &'static str,
    announce_at: DateTime<Utc>,
    lists_due_at: DateTime<Utc>,
    lists_accepted_until: DateTime<Utc>,
    play_until_at: DateTime<Utc>,
    nights: Vec<Night>,
    /// As far as it is revealed.
    #[serde(skip_serializing_if = "Option::is_none")]
    scenario: Option<Scenario>,
}

#[derive(Serialize, ToSchema)]
struct Night {
    key: String,
    begins_at: DateTime<Utc>,
    tables: u16,
}

#[derive(Serialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case")]
enum Scenario {
    Title { title: String },
    Full { sheet: Box<ScenarioSheetDocument> },
}

impl Scenario {
    fn title(&self) -> &str {
        match self {
            Self::Title { title } => title,
            Self::Full { sheet } => &sheet.title,
        }
    }
}

/// The weeks with their scenarios.
pub fn weeks(board: &Board) -> Weeks {
    Weeks {
        version: board.season.version,
        weeks: board.weeks.iter().map(week).collect(),
    }
}

fn week(known: &BoardWeek) -> Week {
    let nights = known.nights.iter().map(|night| Night {
        key: night.key.clone(),
        begins_at: night.begins.1,
        tables: night.tables,
    });
    let scenario = known.scenario.as_ref().map(|seen| match seen {
        ScenarioSeen::Title(title) => Scenario::Title {
            title: title.clone(),
        },
        ScenarioSeen::Full(sheet) => Scenario::Full {
            sheet: sheet.clone(),
        },
    });
    Week {
        week: known.week.number(),
        cap: known.cap.get(),
        phase: word(known.phase),
        announce_at: known.facts.announce_at,
        lists_due_at: known.facts.lists_due_at,
        lists_accepted_until: known.facts.accepted_until(),
        play_until_at: known.facts.play_until_at,
        nights: nights.collect(),
        scenario,
    }
}

fn word(phase: Phase) -> &'static str {
    match phase {
        Phase::Planned => "planned",
        Phase::Announced => "announced",
        Phase::ListsDue => "lists_due",
        Phase::ListsOpened => "lists_opened",
        Phase::Paired => "paired",
        Phase::Closed => "closed",
    }
}

impl Sheet for Weeks {
    fn head(&self) -> Vec<String> {
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
        let cells = |week: &Week| {
            vec![
                week.week.to_string(),
                week.cap.to_string(),
                week.phase.to_owned(),
                week.announce_at.to_rfc3339(),
                week.lists_due_at.to_rfc3339(),
                week.lists_accepted_until.to_rfc3339(),
                week.play_until_at.to_rfc3339(),
                or_empty(week.scenario.as_ref().map(|seen| typed(seen.title()))),
            ]
        };
        self.weeks.iter().map(cells).collect()
    }
}
