//! What tie-breaks are computed from, player by player.

use std::cell::OnceCell;

use num_rational::Ratio;

use crate::points::LeaguePoints;
use crate::share::Share;
use crate::standings::by_player::Lists;
use crate::standings::rounds::Round;

/// An exact value.
pub type Exact = Ratio<i64>;

/// Everything a tie-break may look at, player by player.
pub struct Board<'c> {
    pub rounds: &'c Lists<Round>,
    /// The scores met, round by round, unplayed rounds as the season says.
    pub met: Lists<Met>,
    pub painting_points: Vec<LeaguePoints>,
    pub painted_share: Vec<Share>,
    /// Strengths that explain all margins together, computed when one is first asked for.
    pub adjusted_margins: OnceCell<Vec<Exact>>,
}

/// The score met in one round, doubled, with the own result in half points.
#[derive(Clone, Copy, Debug)]
pub struct Met {
    pub score: i64,
    pub result: i64,
    /// Missed by the player's own choice: cut before all others (C.07, art. 16.5).
    pub voluntary: bool,
}
