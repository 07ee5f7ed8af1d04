//! Resources: how a player stands in a season, and the record over several seasons.

use app::Refusal;
use app::standings::Board;
use document::table::standings::RecordDocument;
use league::ids::PlayerId;
use league::season::SeasonState;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

use super::standings::standings_table;
use document::csv::table::{CsvTable, columns, escape_formula};

/// A player's place in the table after the last paired week.
#[derive(Serialize, Deserialize, ToSchema)]
pub struct PublicPlace {
    season: Uuid,
    name: String,
    /// Whether the season is over.
    is_final: bool,
    /// Last week that counts.
    as_of: u8,
    player: Uuid,
    handle: String,
    faction: String,
    rank: u32,
    /// Rows of the table.
    of: usize,
    total: i32,
    record: RecordDocument,
}

/// # Errors
/// [`Refusal::NotFound`] for a player without a row.
pub fn player_place(board: &Board, player: PlayerId) -> Result<PublicPlace, Refusal> {
    let table = standings_table(board, None)?;
    let of = table.rows.len();
    let named = table.rows.into_iter().find(|it| it.row.player == player.0);
    let named = named.ok_or(Refusal::NotFound)?;
    Ok(PublicPlace {
        season: board.season.id.0,
        name: table.season,
        is_final: board.season.state == SeasonState::Ended,
        as_of: table.as_of,
        player: player.0,
        handle: named.handle,
        faction: named.faction,
        rank: named.row.rank,
        of,
        total: named.row.total,
        record: named.row.record,
    })
}

/// A person's places over the public seasons of a club.
#[derive(Serialize, ToSchema)]
pub struct PublicRecord {
    /// Games of all seasons by result.
    games: RecordDocument,
    /// The newest season first.
    places: Vec<PublicPlace>,
}

impl PublicRecord {
    pub fn from_places(places: Vec<PublicPlace>) -> Self {
        let sum = |of: fn(&RecordDocument) -> u32| {
            places.iter().map(|place| of(&place.record)).sum::<u32>()
        };
        Self {
            games: RecordDocument {
                won: sum(|record| record.won),
                drawn: sum(|record| record.drawn),
                lost: sum(|record| record.lost),
                unplayed: sum(|record| record.unplayed),
            },
            places,
        }
    }
}

const COLUMNS: [&str; 13] = [
    "season", "name", "is_final", "as_of", "player", "faction", "rank", "of", "total", "won",
    "drawn", "lost", "unplayed",
];

impl CsvTable for PublicPlace {
    fn header(&self) -> Vec<String> {
        columns(&COLUMNS)
    }

    fn rows(&self) -> Vec<Vec<String>> {
        vec![self.cells()]
    }
}

impl CsvTable for PublicRecord {
    fn header(&self) -> Vec<String> {
        columns(&COLUMNS)
    }

    fn rows(&self) -> Vec<Vec<String>> {
        self.places.iter().map(PublicPlace::cells).collect()
    }
}

impl PublicPlace {
    fn cells(&self) -> Vec<String> {
        vec![
            self.season.to_string(),
            escape_formula(&self.name),
            self.is_final.to_string(),
            self.as_of.to_string(),
            escape_formula(&self.handle),
            escape_formula(&self.faction),
            self.rank.to_string(),
            self.of.to_string(),
            self.total.to_string(),
            self.record.won.to_string(),
            self.record.drawn.to_string(),
            self.record.lost.to_string(),
            self.record.unplayed.to_string(),
        ]
    }
}
