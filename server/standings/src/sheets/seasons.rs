//! The directory of public seasons.

use app::seasons::{DirectoryPage, Listed};
use chrono::{DateTime, Utc};
use league::season::SeasonState;
use serde::Serialize;
use utoipa::ToSchema;
use uuid::Uuid;

use document::sheet::{Sheet, columns, or_empty, typed};

/// Some seasons of the directory, the newest start first.
#[derive(Serialize, ToSchema)]
pub struct Seasons {
    seasons: Vec<ListedSeason>,
    /// What to send as `after` for those that follow; absent on the last page.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub next: Option<String>,
}

/// A public season.
#[derive(Serialize, ToSchema)]
struct ListedSeason {
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

impl Seasons {
    /// A page of the directory; `next` leads on.
    pub fn of(page: DirectoryPage, next: Option<String>) -> Self {
        Self {
            seasons: page.seasons.into_iter().map(listed).collect(),
            next,
        }
    }
}

fn listed(season: Listed) -> ListedSeason {
    let (club, id) = (season.club.0, season.season.0);
    ListedSeason {
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

impl Sheet for Seasons {
    fn head(&self) -> Vec<String> {
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
        let cells = |season: &ListedSeason| {
            vec![
                season.club.to_string(),
                typed(&season.club_name),
                season.season.to_string(),
                typed(&season.name),
                season.is_final.to_string(),
                season.started_at.to_rfc3339(),
                or_empty(season.ended_at.map(|at| at.to_rfc3339())),
                season.address.clone(),
            ]
        };
        self.seasons.iter().map(cells).collect()
    }
}
