//! Composite keys: a season, week or game with the keys of what it belongs to. Whoever holds one
//! cannot take the club of one season together with the id of another.

use crate::ids::{ClubId, GameId, SeasonId};
use crate::week::WeekNo;

/// A season of a club.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct SeasonKey {
    /// The club that owns the season.
    pub club: ClubId,
    /// The season within the club.
    pub season: SeasonId,
}

impl SeasonKey {
    /// A week of the season.
    #[must_use]
    pub fn week(self, week: WeekNo) -> WeekKey {
        WeekKey { season: self, week }
    }

    /// A game of the season.
    #[must_use]
    pub fn game(self, game: GameId) -> GameKey {
        GameKey { season: self, game }
    }
}

/// A week of a season.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct WeekKey {
    /// The season that the week belongs to.
    pub season: SeasonKey,
    /// The week within the season.
    pub week: WeekNo,
}

/// A published game of a season.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct GameKey {
    /// The season that the game is played in.
    pub season: SeasonKey,
    /// The game within the season.
    pub game: GameId,
}
