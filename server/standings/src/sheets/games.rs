//! Pairings and results. A report that does not stand yet is the business of its two players.

use app::Refusal;
use app::results::Game;
use app::standings::Board;
use document::result::OutcomeDocument;
use document::sheet::{Sheet, columns, or_empty, typed};
use league::result::{Outcome, Slip};
use league::week::WeekNo;
use serde::Serialize;
use utoipa::ToSchema;
use uuid::Uuid;

use super::{as_of, named};

/// Who meets whom, in the order of weeks and rounds.
#[derive(Serialize, ToSchema)]
pub struct Pairings {
    /// The season's version that they belong to.
    version: i64,
    games: Vec<Pairing>,
}

/// What came of the games.
#[derive(Serialize, ToSchema)]
pub struct Results {
    /// The season's version that they belong to.
    version: i64,
    games: Vec<GameResult>,
}

/// Who meets whom.
#[derive(Serialize, ToSchema)]
struct Pairing {
    game: Uuid,
    week: u8,
    round: u8,
    #[serde(skip_serializing_if = "Option::is_none")]
    night: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    table: Option<u16>,
    /// The attacker where the scenario has roles.
    first: Seat,
    /// Absent for a bye.
    #[serde(skip_serializing_if = "Option::is_none")]
    second: Option<Seat>,
}

/// Who sits where.
#[derive(Serialize, ToSchema)]
struct Seat {
    player: Uuid,
    handle: String,
    faction: String,
}

/// A game and what came of it.
#[derive(Serialize, ToSchema)]
struct GameResult {
    #[serde(flatten)]
    pairing: Pairing,
    state: State,
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
enum State {
    Open,
    Bye,
    Confirmed,
    Ruled,
}

/// # Errors
/// [`Refusal::NotFound`] for a week that the season does not have.
pub fn pairings(board: &Board, week: Option<WeekNo>) -> Result<Pairings, Refusal> {
    let games = of_week(board, week)?;
    Ok(Pairings {
        version: board.season.version,
        games: games.map(|game| pairing(board, game)).collect(),
    })
}

/// # Errors
/// [`Refusal::NotFound`] for a week that the season does not have.
pub fn results(board: &Board, week: Option<WeekNo>) -> Result<Results, Refusal> {
    let games = of_week(board, week)?;
    Ok(Results {
        version: board.season.version,
        games: games.map(|game| game_result(board, game)).collect(),
    })
}

fn of_week(board: &Board, week: Option<WeekNo>) -> Result<impl Iterator<Item = &Game>, Refusal> {
    let week = week.map(|week| as_of(board, Some(week))).transpose()?;
    let games = board.games.iter();
    Ok(games.filter(move |game| week.is_none_or(|week| game.week == week)))
}

fn pairing(board: &Board, game: &Game) -> Pairing {
    let meeting = game.meeting.as_ref();
    Pairing {
        game: game.id.0,
        week: game.week.number(),
        round: game.round_no,
        night: meeting.map(|meeting| meeting.night.clone()),
        table: meeting.map(|meeting| meeting.table),
        first: seat(board, game.first.0),
        second: meeting.map(|meeting| seat(board, meeting.second.0)),
    }
}

fn seat(board: &Board, player: Uuid) -> Seat {
    let (handle, faction) = named(board, player);
    Seat {
        player,
        handle: handle.to_owned(),
        faction: faction.to_owned(),
    }
}

fn game_result(board: &Board, game: &Game) -> GameResult {
    let settled = game.slip.settled();
    let state = match (&game.meeting, &game.slip) {
        (None, _) => State::Bye,
        (_, Slip::Confirmed { .. }) => State::Confirmed,
        (_, Slip::Ruled(_)) => State::Ruled,
        (_, Slip::Awaited | Slip::Reported { .. } | Slip::Disputed { .. }) => State::Open,
    };
    let score = settled.as_ref().and_then(|settled| match settled.outcome {
        Outcome::Played(score) => Some(score),
        Outcome::Conceded { score, .. } => score.as_ref(),
        Outcome::NoShow { .. } | Outcome::DoubleLoss | Outcome::Void => None,
    });
    GameResult {
        pairing: pairing(board, game),
        state,
        outcome: settled.map(|settled| settled.outcome.into()),
        score: score.map(|score| (score.total.first, score.total.second)),
    }
}

const PAIRING: [&str; 9] = [
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

impl Pairing {
    fn cells(&self) -> Vec<String> {
        let second = self.second.as_ref();
        vec![
            self.week.to_string(),
            self.round.to_string(),
            typed(self.night.as_deref().unwrap_or_default()),
            or_empty(self.table),
            typed(&self.first.handle),
            typed(&self.first.faction),
            or_empty(second.map(|seat| typed(&seat.handle))),
            or_empty(second.map(|seat| typed(&seat.faction))),
            self.game.to_string(),
        ]
    }
}

impl Sheet for Pairings {
    fn head(&self) -> Vec<String> {
        columns(&PAIRING)
    }

    fn rows(&self) -> Vec<Vec<String>> {
        self.games.iter().map(Pairing::cells).collect()
    }
}

impl Sheet for Results {
    fn head(&self) -> Vec<String> {
        let mut head = columns(&PAIRING);
        head.extend(columns(&["state", "first_score", "second_score"]));
        head
    }

    fn rows(&self) -> Vec<Vec<String>> {
        let cells = |game: &GameResult| {
            let state = match game.state {
                State::Open => "open",
                State::Bye => "bye",
                State::Confirmed => "confirmed",
                State::Ruled => "ruled",
            };
            let mut cells = game.pairing.cells();
            cells.push(state.to_owned());
            cells.push(or_empty(game.score.map(|(first, _)| first)));
            cells.push(or_empty(game.score.map(|(_, second)| second)));
            cells
        };
        self.games.iter().map(cells).collect()
    }
}
