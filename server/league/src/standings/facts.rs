//! The facts of a season: the input of its table.

use std::collections::BTreeMap;

use crate::ids::{GameId, PlayerId, RulingId};
use crate::name::Text;
use crate::painting::{PaintedWeek, Painting};
use crate::points::{LeaguePoints, Points};
use crate::result::Outcome;
use crate::scoring::Scoring;
use crate::side::{PerSide, Side};
use crate::week::WeekNo;

use super::tiebreaks::TieBreaks;

/// The facts of one season.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SeasonFacts {
    /// How results become points.
    pub scoring: Scoring,
    /// What painting is worth.
    pub painting: Painting,
    /// What decides between equal totals.
    pub tie_breaks: TieBreaks,
    /// The cap of each week, for margins in percent of it.
    pub caps: BTreeMap<WeekNo, Points>,
    /// Everyone who ever had a place.
    pub players: Vec<PlayerFact>,
    /// Every game and bye of every published round.
    pub games: Vec<GameFact>,
    /// Weeks away that were said in time; the round of such a week has the player in no game.
    pub absences: Vec<Absence>,
    /// Lists that came after their deadline.
    pub late_lists: Vec<LateList>,
    /// Checked painting, at most one for each player and week.
    pub painted: Vec<PaintedWeek>,
    /// Points that a referee gave or took.
    pub adjustments: Vec<Adjustment>,
}

/// A player's time in the season.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlayerFact {
    pub player: PlayerId,
    /// First week.
    pub joined: WeekNo,
    /// First week without the player; the games before it stand.
    pub left: Option<WeekNo>,
}

/// A game or bye of a published round.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GameFact {
    pub game: GameId,
    /// The week it belongs to, whenever it was played.
    pub week: WeekNo,
    pub fixture: Fixture,
    /// Version of the result.
    pub version: u32,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fixture {
    Bye(PlayerId),
    Game {
        /// In the order of the pairing.
        players: PerSide<PlayerId>,
        /// The side with the harder role, where the scenario names one.
        harder: Option<Side>,
        /// What stands; `None` while open or disputed.
        outcome: Option<Outcome>,
        /// The ruling behind it.
        ruling: Option<RulingId>,
    },
}

/// A week whose round left a player out, because they had said that they could not come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Absence {
    pub player: PlayerId,
    /// The week, which is paired.
    pub week: WeekNo,
}

/// A list that came late.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LateList {
    pub player: PlayerId,
    pub week: WeekNo,
    /// Seconds after the deadline.
    pub seconds: u32,
}

/// Points that a referee gave or took.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Adjustment {
    pub ruling: RulingId,
    pub player: PlayerId,
    pub week: WeekNo,
    /// How many; negative when taken.
    pub amount: LeaguePoints,
    pub reason: Text,
    /// Version of the ruling.
    pub version: u32,
}

impl PlayerFact {
    /// Whether the player has a place in `week`.
    pub fn takes_part_in(&self, week: WeekNo) -> bool {
        self.joined <= week && self.left.is_none_or(|left| week < left)
    }
}
