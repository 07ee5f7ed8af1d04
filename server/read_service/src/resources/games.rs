//! Resources: pairings and results. A report that does not stand yet is for its two players alone.

use app::Refusal;
use app::results::GameRow;
use app::standings::Board;
use document::csv::table::{CsvTable, columns, escape_formula, optional_cell};
use document::results::OutcomeDocument;
use league::result::{Outcome, Slip};
use league::week::WeekNo;
use serde::Serialize;
use utoipa::ToSchema;
use uuid::Uuid;

use super::lookup::{player_name, resolve_week};

/// Who meets whom, in the order of weeks and rounds.
#[derive(Serialize, ToSchema)]
pub struct PublicPairings {
    /// The season's version that they belong to.
    version: i64,
    games: Vec<PublicPairing>,
}

/// What came of the games.
#[derive(Serialize, ToSchema)]
pub struct PublicResults {
    /// The season's version that they belong to.
    version: i64,
    games: Vec<PublicResult>,
}

/// Who meets whom.
#[derive(Serialize, ToSchema)]
struct PublicPairing {
    game: Uuid,
    week: u8,
    round: u8,
    #[serde(skip_serializing_if = "Option::is_none")]
    night: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    table: Option<u16>,
    /// The attacker where the scenario has roles.
    first: PublicSeat,
    /// Absent for a bye.
    #[serde(skip_serializing_if = "Option::is_none")]
    second: Option<PublicSeat>,
}

/// Who sits where.
#[derive(Serialize, ToSchema)]
struct PublicSeat {
    player: Uuid,
    handle: String,
    faction: String,
}

/// A game and what came of it.
#[derive(Serialize, ToSchema)]
struct PublicResult {
    #[serde(flatten)]
    pairing: PublicPairing,
    state: PublicResultState,
    /// Present once it stands.
    #[serde(skip_serializing_if = "Option::is_none")]
    outcome: Option<OutcomeDocument>,
    /// Points of the game, where it was played.
    #[serde(skip)]
    score: Option<(u32, u32)>,
}

/// How far a result is.
#[derive(Clone, Copy, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
enum PublicResultState {
    Open,
    Bye,
    Confirmed,
    Ruled,
}

/// # Errors
/// [`Refusal::NotFound`] for a week that the season does not have.
pub fn pairings(board: &Board, week: Option<WeekNo>) -> Result<PublicPairings, Refusal> {
    let games = games_of(board, week)?;
    Ok(PublicPairings {
        version: board.season.version,
        games: games.map(|game| pairing(board, game)).collect(),
    })
}

/// # Errors
/// [`Refusal::NotFound`] for a week that the season does not have.
pub fn results(board: &Board, week: Option<WeekNo>) -> Result<PublicResults, Refusal> {
    let games = games_of(board, week)?;
    Ok(PublicResults {
        version: board.season.version,
        games: games.map(|game| game_result(board, game)).collect(),
    })
}

fn games_of(
    board: &Board,
    week: Option<WeekNo>,
) -> Result<impl Iterator<Item = &GameRow>, Refusal> {
    let week = week
        .map(|week| resolve_week(board, Some(week)))
        .transpose()?;
    let games = board.games.iter();
    Ok(games.filter(move |game| week.is_none_or(|week| game.week == week)))
}

fn pairing(board: &Board, game: &GameRow) -> PublicPairing {
    let meeting = game.meeting.as_ref();
    PublicPairing {
        game: game.id.0,
        week: game.week.number(),
        round: game.round_no,
        night: meeting.map(|meeting| meeting.night.clone()),
        table: meeting.map(|meeting| meeting.table),
        first: seat(board, game.first.0),
        second: meeting.map(|meeting| seat(board, meeting.second.0)),
    }
}

fn seat(board: &Board, player: Uuid) -> PublicSeat {
    let (handle, faction) = player_name(board, player);
    PublicSeat {
        player,
        handle: handle.to_owned(),
        faction: faction.to_owned(),
    }
}

fn game_result(board: &Board, game: &GameRow) -> PublicResult {
    let settled = game.slip.settled();
    let state = match (&game.meeting, &game.slip) {
        (None, _) => PublicResultState::Bye,
        (_, Slip::Confirmed { .. }) => PublicResultState::Confirmed,
        (_, Slip::Ruled(_)) => PublicResultState::Ruled,
        (_, Slip::Awaited | Slip::Reported { .. } | Slip::Disputed { .. }) => {
            PublicResultState::Open
        }
    };
    let score = settled.as_ref().and_then(|settled| match settled.outcome {
        Outcome::Played(score) => Some(score),
        Outcome::Conceded { score, .. } => score.as_ref(),
        Outcome::NoShow { .. } | Outcome::DoubleLoss | Outcome::Void => None,
    });
    PublicResult {
        pairing: pairing(board, game),
        state,
        outcome: settled.map(|settled| settled.outcome.into()),
        score: score.map(|score| (score.total.first, score.total.second)),
    }
}

const PAIRING_COLUMNS: [&str; 9] = [
    "week",
    "round",
    "night",
    "table",
    "first",
    "first_faction",
    "second",
    "second_faction",
    "game",
];

impl PublicPairing {
    fn cells(&self) -> Vec<String> {
        let second = self.second.as_ref();
        vec![
            self.week.to_string(),
            self.round.to_string(),
            escape_formula(self.night.as_deref().unwrap_or_default()),
            optional_cell(self.table),
            escape_formula(&self.first.handle),
            escape_formula(&self.first.faction),
            optional_cell(second.map(|seat| escape_formula(&seat.handle))),
            optional_cell(second.map(|seat| escape_formula(&seat.faction))),
            self.game.to_string(),
        ]
    }
}

impl CsvTable for PublicPairings {
    fn header(&self) -> Vec<String> {
        columns(&PAIRING_COLUMNS)
    }

    fn rows(&self) -> Vec<Vec<String>> {
        self.games.iter().map(PublicPairing::cells).collect()
    }
}

impl CsvTable for PublicResults {
    fn header(&self) -> Vec<String> {
        let mut head = columns(&PAIRING_COLUMNS);
        head.extend(columns(&["state", "first_score", "second_score"]));
        head
    }

    fn rows(&self) -> Vec<Vec<String>> {
        let cells = |game: &PublicResult| {
            let state = match game.state {
                PublicResultState::Open => "open",
                PublicResultState::Bye => "bye",
                PublicResultState::Confirmed => "confirmed",
                PublicResultState::Ruled => "ruled",
            };
            let mut cells = game.pairing.cells();
            cells.push(state.to_owned());
            cells.push(optional_cell(game.score.map(|(first, _)| first)));
            cells.push(optional_cell(game.score.map(|(_, second)| second)));
            cells
        };
        self.games.iter().map(cells).collect()
    }
}
