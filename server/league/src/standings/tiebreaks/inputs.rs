//! The input of the tie-breaks, by player.

use std::cell::OnceCell;

use num_rational::Ratio;

use crate::points::LeaguePoints;
use crate::share::Share;
use crate::standings::by_player::ByPlayer;
use crate::standings::rounds::PlayerRound;

/// An exact value: the order of a table must not depend on rounding.
pub type Exact = Ratio<i64>;

/// Everything a tie-break may read. Players are indices into the season's list.
pub struct TieBreakInputs<'c> {
    pub rounds: &'c ByPlayer<PlayerRound>,
    /// The scores met, round by round, unplayed rounds as the season says.
    pub met: ByPlayer<OpponentScore>,
    pub painting_points: Vec<LeaguePoints>,
    pub painted_share: Vec<Share>,
    /// Lists that came after their deadline.
    pub late_lists: Vec<usize>,
    /// Strengths that explain all margins together, computed when one is first asked for.
    pub adjusted_margins: OnceCell<Vec<Exact>>,
}

/// The score met in one round, doubled, with the own result in half points.
#[derive(Clone, Copy, Debug)]
pub struct OpponentScore {
    pub score: i64,
    pub result: i64,
    /// Missed by the player's own choice: cut before all others (C.07, art. 16.5).
    pub voluntary: bool,
}
