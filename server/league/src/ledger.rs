//! The ledger: every credited point with its reason. A score is the sum of its lines and nothing else.

use messages::{Message, ledger as said};

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

impl LineReason {
    pub fn message(&self) -> Message {
        match self {
            Self::Won { own, other } => said::credited_won(own, other),
            Self::Drew { own, other } => said::credited_drew(own, other),
            Self::Lost { own, other } => said::credited_lost(own, other),
            Self::Conceded => said::credited_conceded(),
            Self::OpponentConceded => said::credited_opponent_conceded(),
            Self::OpponentAbsent => said::credited_opponent_absent(),
            Self::AbsentWithNotice => said::credited_absent_with_notice(),
            Self::AbsentWithoutNotice => said::credited_absent_without_notice(),
            Self::DoubleLoss => said::credited_double_loss(),
            Self::Bye => said::credited_bye(),
            Self::ByeByAverage { games } => said::credited_bye_by_average(games),
            Self::Attended => said::credited_attended(),
            Self::PaintedShare(share) => said::credited_painted_share(share),
            Self::NewlyFinished { count } => said::credited_newly_finished(count),
            Self::AboveBonusCap { limit, earned } => said::credited_above_bonus_cap(earned, limit),
            Self::Late { seconds } => said::credited_late(seconds / 3600, seconds / 60 % 60),
            Self::MedianOfWeek { median, less } => said::credited_median_of_week(median, less),
            Self::MissedWeek => said::credited_missed_week(),
            Self::Ruled(words) => said::credited_ruled(words.as_str()),
            Self::NotAmongBest { best } => said::credited_not_among_best(best),
        }
    }
}
