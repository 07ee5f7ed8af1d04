//! The ledger: every credited point with its reason. A score is the sum of its lines and nothing else.

use std::fmt;

use crate::ids::{ClaimId, GameId, PlayerId, RulingId};
use crate::name::Text;
use crate::points::LeaguePoints;
use crate::share::Share;
use crate::week::WeekNo;

#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LedgerLine {
    pub player: PlayerId,
    /// The week it belongs to.
    pub week: WeekNo,
    pub kind: LineKind,
    /// How much; a penalty is negative.
    pub amount: LeaguePoints,
    /// Why, as data.
    pub reason: LineReason,
    /// Where it comes from.
    pub source: LineSource,
    /// Version of the source: 1 at first, more after corrections.
    pub version: u32,
}

/// What an amount is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LineKind {
    /// A game of two players, played or not.
    Game,
    /// A week without an opponent.
    Bye,
    /// A week away, announced before the round was paired.
    Absence,
    /// Turning up.
    Attendance,
    Painting,
    /// Bonuses above the season's cap, taken off.
    BonusCap,
    /// A list after its deadline.
    LateList,
    /// A week before the player joined.
    CatchUp,
    Ruling,
    /// A week that does not count among the best.
    DroppedWeek,
}

impl LineKind {
    /// All kinds in the order of the ledger.
    pub const ALL: [Self; 10] = [
        Self::Game,
        Self::Bye,
        Self::Absence,
        Self::Attendance,
        Self::Painting,
        Self::BonusCap,
        Self::LateList,
        Self::CatchUp,
        Self::Ruling,
        Self::DroppedWeek,
    ];
}

/// Where an amount comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LineSource {
    /// The slip of a game, or a bye of the round.
    Game(GameId),
    /// A claim of the painting log.
    Claim(ClaimId),
    Ruling(RulingId),
    /// The season's rules alone.
    Rule,
}

/// Why an amount was credited.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LineReason {
    /// Won with this score.
    Won {
        /// Game points.
        own: u32,
        /// Game points of the opponent.
        other: u32,
    },
    /// Drew with this score.
    Drew {
        /// Game points.
        own: u32,
        /// Game points of the opponent.
        other: u32,
    },
    /// Lost with this score.
    Lost {
        /// Game points.
        own: u32,
        /// Game points of the opponent.
        other: u32,
    },
    /// Gave the game up.
    Conceded,
    /// The opponent gave the game up.
    OpponentConceded,
    /// The opponent was not there.
    OpponentAbsent,
    /// Was not there, with word in time.
    AbsentWithNotice,
    /// Was not there, without word.
    AbsentWithoutNotice,
    /// Both sides lose.
    DoubleLoss,
    /// No opponent: a fixed value.
    Bye,
    /// No opponent: the average of the player's own games, or the floor.
    ByeByAverage {
        /// Games averaged.
        games: u32,
    },
    /// Came to the table.
    Attended,
    /// Share of the list that is painted.
    PaintedShare(Share),
    /// Units finished this week.
    NewlyFinished {
        /// Units, or models where the season counts models.
        count: u32,
    },
    /// Bonuses of the week above what a win allows.
    AboveBonusCap {
        /// Most bonus points of a week.
        limit: LeaguePoints,
        /// Bonus points earned.
        earned: LeaguePoints,
    },
    /// The list came late.
    Late {
        /// Seconds after the deadline.
        seconds: u32,
    },
    /// Joined later: the median of that week.
    MedianOfWeek {
        median: LeaguePoints,
        /// What the season takes off.
        less: LeaguePoints,
    },
    /// Joined later: a fixed value for a missed week.
    MissedWeek,
    Ruled(Text),
    /// Not among the best weeks.
    NotAmongBest {
        /// Weeks that count.
        best: u8,
    },
}

impl fmt::Display for LineReason {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Won { own, other } => write!(f, "won {own} to {other}"),
            Self::Drew { own, other } => write!(f, "drew {own} to {other}"),
            Self::Lost { own, other } => write!(f, "lost {own} to {other}"),
            Self::Conceded => f.write_str("conceded"),
            Self::OpponentConceded => f.write_str("the opponent conceded"),
            Self::OpponentAbsent => f.write_str("the opponent was absent"),
            Self::AbsentWithNotice => f.write_str("absent with notice"),
            Self::AbsentWithoutNotice => f.write_str("absent without notice"),
            Self::DoubleLoss => f.write_str("both sides lose"),
            Self::Bye => f.write_str("bye"),
            Self::ByeByAverage { games } => {
                let games = match games {
                    1 => "1 own game".to_owned(),
                    more => format!("{more} own games"),
                };
                write!(f, "bye, by the average of {games}")
            }
            Self::Attended => f.write_str("came to the table"),
            Self::PaintedShare(share) => write!(f, "{share} of the list painted"),
            Self::NewlyFinished { count } => write!(f, "{count} newly finished"),
            Self::AboveBonusCap { limit, earned } => {
                write!(f, "bonuses of {earned} in a week that allows {limit}")
            }
            Self::Late { seconds } => {
                write!(
                    f,
                    "list late by {} h {} min",
                    seconds / 3600,
                    seconds / 60 % 60
                )
            }
            Self::MedianOfWeek { median, less } => {
                write!(f, "before joining: median {median} less {less}")
            }
            Self::MissedWeek => f.write_str("before joining"),
            Self::Ruled(words) => f.write_str(words.as_str()),
            Self::NotAmongBest { best } => write!(f, "not among the best {best} weeks"),
        }
    }
}
