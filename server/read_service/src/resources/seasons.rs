//! Resource: a page of the directory of public seasons.

use app::seasons::{DirectoryEntry, DirectoryPage};
use chrono::{DateTime, Utc};
use league::season::SeasonState;
use serde::Serialize;
use utoipa::ToSchema;
use uuid::Uuid;

use document::csv::table::{CsvTable, columns, escape_formula, optional_cell};

/// Some seasons of the directory, the newest start first.
#[derive(Serialize, ToSchema)]
pub struct PublicSeasons {
    seasons: Vec<PublicSeason>,
    /// What to send as `after` for those that follow; absent on the last page.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub next: Option<String>,
}

/// A public season.
#[derive(Serialize, ToSchema)]
struct PublicSeason {
    club: Uuid,
    club_name: String,
    season: Uuid,
    name: String,
    /// Whether the season is over.
    is_final: bool,
    started_at: DateTime<Utc>,
    #[serde(skip_serializing_if = "Option::is_none")]
    ended_at: Option<DateTime<Utc>>,
    /// Below this address everything of the season is read.
    address: String,
}

impl PublicSeasons {
    /// A page of the directory, with the cursor of the next one.
    pub fn new(page: DirectoryPage, next: Option<String>) -> Self {
        Self {
            seasons: page.seasons.into_iter().map(listed).collect(),
            next,
        }
    }
}

fn listed(season: DirectoryEntry) -> PublicSeason {
    let (club, id) = (season.season.club.0, season.season.season.0);
    PublicSeason {
        club,
        club_name: season.club_name,
        season: id,
        name: season.name,
        is_final: season.state == SeasonState::Ended,
        started_at: season.started_at,
        ended_at: season.ended_at,
        address: format!("/public/clubs/{club}/seasons/{id}"),
    }
}

impl CsvTable for PublicSeasons {
    fn header(&self) -> Vec<String> {
        columns(&[
            "club",
            "club_name",
            "season",
            "name",
            "is_final",
            "started_at",
            "ended_at",
            "address",
        ])
    }

    fn rows(&self) -> Vec<Vec<String>> {
        let cells = |season: &PublicSeason| {
            vec![
                season.club.to_string(),
                escape_formula(&season.club_name),
                season.season.to_string(),
                escape_formula(&season.name),
                season.is_final.to_string(),
                season.started_at.to_rfc3339(),
                optional_cell(season.ended_at.map(|at| at.to_rfc3339())),
                season.address.clone(),
            ]
        };
        self.seasons.iter().map(cells).collect()
    }
}
