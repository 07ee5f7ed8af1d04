//! The locked inputs of one pairing round: all that the result depends on.

use std::cmp::Ordering;

use crate::ids::PlayerId;
use crate::name::Name;
use crate::points::LeaguePoints;
use crate::side::GameRole;
use crate::week::WeekNo;

use super::draw::Draw;
use super::game::{FixedGame, Game, Meeting, Pair};
use super::hall::{Night, NightSet, TableNo};
use super::wishes::Wishes;

/// Everything a round's pairing is computed from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Task {
    /// The week this round belongs to.
    pub week: WeekNo,
    /// Players who want a game this round; their order here has no influence.
    pub contenders: Vec<Contender>,
    /// Every game that was played or forfeited after it had been published.
    pub history: Vec<Meeting>,
    /// The nights of this round with their free tables.
    pub nights: Vec<Night>,
    /// The season's order of wishes.
    pub wishes: Wishes,
    /// Games the organiser has fixed.
    pub pins: Vec<Pair>,
    /// Games the organiser has ruled out.
    pub forbidden: Vec<Pair>,
    /// Games that must be whatever anybody wishes: those of the round robin's table, and those of a
    /// repaired round that are reported already.
    pub fixed: Vec<FixedGame>,
    /// Who may meet at all, where a table says so; everybody where there is none.
    pub allowed: Option<Vec<Pair>>,
    /// Games already published that stay where they can: empty for a new round, the published round
    /// for a repair.
    pub published: Vec<Game>,
    /// Rounds still to come after this one; they are kept playable where the numbers allow.
    pub rounds_left: u8,
    pub draw: Draw,
}

/// Fewest players that make a round.
pub const MIN_CONTENDERS: usize = 2;

impl Task {
    pub fn has_enough_contenders(&self) -> bool {
        self.contenders.len() >= MIN_CONTENDERS
    }
}

/// One player as the pairing sees them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Contender {
    pub player: PlayerId,
    /// Score that counts for pairing; within ±[`MAX_SCORE`].
    pub score: LeaguePoints,
    /// Nights on which they can play.
    pub nights: NightSet,
    /// Members of one household are never paired.
    pub household: Option<Household>,
    /// Home club, where several clubs share a league.
    pub club: Option<Name>,
    pub faction: Option<Name>,
    /// Rounds in which they scored at least a win without playing, a forfeit win included
    /// (FIDE Handbook C.04.1, article 4).
    pub byes: u8,
    /// They offered to sit out when the number is odd.
    pub spare: bool,
    /// Float in the round before, and in the one before that. A bye counts as a downfloat (C.04.3,
    /// article 1.4.3).
    pub floats: [Option<Float>; 2],
    pub roles: RoleHistory,
    /// Tables they have played on.
    pub tables: Vec<TableNo>,
}

/// Largest score, either sign: squares of differences then stay exact.
pub const MAX_SCORE: i32 = 1_000_000;

/// Players who live together share a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Household(pub u32);

/// A float: the opponent had another score.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Float {
    /// Met a lower score, or had a bye.
    Down,
    /// Met a higher score.
    Up,
}

/// The roles a player has had, balanced like colours in FIDE Handbook C.04.1, articles 6 to 8.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct RoleHistory {
    pub attacker: u16,
    pub defender: u16,
    /// The latest role and how often in a row, unplayed rounds left out.
    pub streak: Option<(GameRole, u8)>,
}

impl RoleHistory {
    /// The role this player should have next, and whether the other would break the difference of
    /// two or make three in a row. `None`: either is fine.
    pub fn due_role(&self) -> Option<(GameRole, bool)> {
        let must =
            self.attacker.abs_diff(self.defender) >= 2 || matches!(self.streak, Some((_, 2..)));
        let role = match (self.attacker.cmp(&self.defender), self.streak) {
            (_, Some((last, 2..))) => last.other(),
            (Ordering::Greater, _) => GameRole::Defender,
            (Ordering::Less, _) => GameRole::Attacker,
            (Ordering::Equal, Some((last, _))) => last.other(),
            (Ordering::Equal, None) => return None,
        };
        Some((role, must))
    }
}
