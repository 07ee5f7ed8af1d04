//! Tie-breaks: an ordered list, one file each, in exact arithmetic.
//!
//! Where a name is the handbook's (FIDE Handbook C.07, Tie-Break Regulations, editions in force
//! from 2023 to 2025) its definition is followed; each file names its article. The texts of the
//! articles are from memory, so the numbers of the articles are too.

mod adjusted_margin;
mod direct_encounter;
mod fewest_byes;
mod fewest_late_lists;
pub mod inputs;
mod opponents;
mod opponents_score;
mod opponents_score_cut;
mod opponents_score_median;
mod painted_share;
mod painting_points;
mod score_margin;
mod sonneborn_berger;
mod wins;
mod wins_in_harder_role;

use inputs::{Exact, TieBreakInputs};
use messages::{Message, Value, policy, tie_breaks as said, values};

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum TieBreak {
    /// Sum of the opponents' scores.
    OpponentsScore,
    /// The same without the lowest.
    OpponentsScoreCut,
    /// The same without the lowest and the highest.
    OpponentsScoreMedian,
    /// Own result times the opponent's score, added up.
    SonnebornBerger,
    /// Results among those who are still equal.
    DirectEncounter,
    /// Games won on the table.
    Wins,
    /// Games won with the harder role.
    WinsInHarderRole,
    /// Differences of game points, added up.
    ScoreMargin,
    /// Differences of game points, adjusted for the opponents' strength.
    AdjustedMargin,
    /// League points for painting, before caps.
    PaintingPoints,
    /// Painted share of the latest list.
    PaintedShare,
    FewestByes,
    /// Fewest lists after their deadline.
    FewestLateLists,
}

/// How a tie-break is computed.
pub enum TieBreakRule {
    /// For each player alone.
    Each(fn(&TieBreakInputs<'_>, usize) -> Exact),
    /// For players who are still equal, in their order.
    Among(fn(&TieBreakInputs<'_>, &[usize]) -> Vec<Option<Exact>>),
}

impl TieBreak {
    pub fn rule(self) -> TieBreakRule {
        match self {
            Self::OpponentsScore => TieBreakRule::Each(opponents_score::value),
            Self::OpponentsScoreCut => TieBreakRule::Each(opponents_score_cut::value),
            Self::OpponentsScoreMedian => TieBreakRule::Each(opponents_score_median::value),
            Self::SonnebornBerger => TieBreakRule::Each(sonneborn_berger::value),
            Self::DirectEncounter => TieBreakRule::Among(direct_encounter::values),
            Self::Wins => TieBreakRule::Each(wins::value),
            Self::WinsInHarderRole => TieBreakRule::Each(wins_in_harder_role::value),
            Self::ScoreMargin => TieBreakRule::Each(score_margin::value),
            Self::AdjustedMargin => TieBreakRule::Each(adjusted_margin::value),
            Self::PaintingPoints => TieBreakRule::Each(painting_points::value),
            Self::PaintedShare => TieBreakRule::Each(painted_share::value),
            Self::FewestByes => TieBreakRule::Each(fewest_byes::value),
            Self::FewestLateLists => TieBreakRule::Each(fewest_late_lists::value),
        }
    }

    /// Whether the smaller value is ahead.
    pub const fn fewer_is_better(self) -> bool {
        matches!(self, Self::FewestByes | Self::FewestLateLists)
    }

    /// Its name in the words of the trade.
    pub fn message(self) -> Message {
        match self {
            Self::OpponentsScore => said::criterion_opponents_score(),
            Self::OpponentsScoreCut => said::criterion_opponents_score_cut(),
            Self::OpponentsScoreMedian => said::criterion_opponents_score_median(),
            Self::SonnebornBerger => said::criterion_sonneborn_berger(),
            Self::DirectEncounter => said::criterion_direct_encounter(),
            Self::Wins => said::criterion_wins(),
            Self::WinsInHarderRole => said::criterion_wins_in_harder_role(),
            Self::ScoreMargin => said::criterion_score_margin(),
            Self::AdjustedMargin => said::criterion_adjusted_margin(),
            Self::PaintingPoints => said::criterion_painting_points(),
            Self::PaintedShare => said::criterion_painted_share(),
            Self::FewestByes => said::criterion_fewest_byes(),
            Self::FewestLateLists => said::criterion_fewest_late_lists(),
        }
    }

    /// How it is counted.
    pub fn counting(self) -> Message {
        match self {
            Self::OpponentsScore => said::counting_opponents_score(),
            Self::OpponentsScoreCut => said::counting_opponents_score_cut(),
            Self::OpponentsScoreMedian => said::counting_opponents_score_median(),
            Self::SonnebornBerger => said::counting_sonneborn_berger(),
            Self::DirectEncounter => said::counting_direct_encounter(),
            Self::Wins => said::counting_wins(),
            Self::WinsInHarderRole => said::counting_wins_in_harder_role(),
            Self::ScoreMargin => said::counting_score_margin(),
            Self::AdjustedMargin => said::counting_adjusted_margin(),
            Self::PaintingPoints => said::counting_painting_points(),
            Self::PaintedShare => said::counting_painted_share(),
            Self::FewestByes => said::counting_fewest_byes(),
            Self::FewestLateLists => said::counting_fewest_late_lists(),
        }
    }
}

/// What opponents' scores are counted in. League points and tie-break points are two numbers: the
/// handbook's edition of 2026 counts 1, ½ and 0 even where the event scores otherwise.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Basis {
    /// 1 for a win, ½ for a draw; a bye and an opponent's absence count as a win.
    StandardPoints,
    /// League points of games and byes, bonuses and penalties left out.
    GamePoints,
    /// The total of the table.
    Total,
}

/// How rounds without a game count in opponents' scores (FIDE Handbook C.07; variants by edition).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum UnplayedRounds {
    /// Not at all: only opponents who were met.
    LeftOut,
    /// Edition in force to 2022: a virtual opponent with the score before the round, the rest of
    /// that round, and a draw in every round after it; opponents' own unplayed rounds are draws.
    VirtualOpponent,
    /// Editions from 2023: a dummy with the player's own final score; an opponent's voluntary
    /// absences at the end are draws. Voluntary ones are cut first.
    OwnScore,
}

/// The season's tie-breaks as written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TieBreaksTerms {
    /// What opponents' scores are counted in.
    pub basis: Basis,
    /// How unplayed rounds count.
    pub unplayed: UnplayedRounds,
    /// Applied in turn while a tie persists; equal after all is a shared rank.
    pub order: Vec<TieBreak>,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TieBreaks(TieBreaksTerms);

/// One fault of the tie-breaks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TieBreaksFault {
    /// The second time decides nothing.
    Twice(TieBreak),
}

impl TieBreaksFault {
    pub fn message(&self) -> Message {
        match self {
            Self::Twice(tie_break) => policy::policy_tie_break_twice(tie_break.message()),
        }
    }

    /// The stable code.
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Twice(_) => "tie-breaks.twice",
        }
    }
}

impl TieBreaks {
    /// # Errors
    /// [`TieBreaksFault::Twice`] for every repetition.
    pub fn build(terms: TieBreaksTerms) -> Result<Self, Vec<TieBreaksFault>> {
        let repeats = terms.order.iter().enumerate().filter(|(at, tie_break)| {
            terms
                .order
                .iter()
                .take(*at)
                .any(|before| before == *tie_break)
        });
        let faults: Vec<_> = repeats
            .map(|(_, repeat)| TieBreaksFault::Twice(*repeat))
            .collect();
        if faults.is_empty() {
            Ok(Self(terms))
        } else {
            Err(faults)
        }
    }

    /// The terms as written.
    pub fn terms(&self) -> &TieBreaksTerms {
        &self.0
    }

    /// The order as players read it.
    pub fn messages(&self) -> [Message; 2] {
        let basis = match self.0.basis {
            Basis::StandardPoints => "standard-points",
            Basis::GamePoints => "game-points",
            Basis::Total => "total",
        };
        let unplayed = match self.0.unplayed {
            UnplayedRounds::LeftOut => "left-out",
            UnplayedRounds::VirtualOpponent => "virtual-opponent",
            UnplayedRounds::OwnScore => "own-score",
        };
        let order = self.0.order.iter().map(|tie_break| tie_break.message());
        let order = Value::joined(order, values::then);
        let decided = if self.0.order.is_empty() {
            said::tie_breaks_none()
        } else {
            said::tie_breaks_order(order)
        };
        [decided, said::tie_breaks_basis(basis, unplayed)]
    }
}
