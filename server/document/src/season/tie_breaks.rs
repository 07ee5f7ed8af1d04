//! The season's tie-breaks as JSON.

use league::standings::{Basis, TieBreak, TieBreaks, TieBreaksTerms, UnplayedRounds};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::fault::DocumentFault;
use crate::mirror_enum::mirror_enum;

/// What decides between equal totals.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TieBreaksDocument {
    /// What opponents' scores are counted in.
    pub basis: BasisDocument,
    /// How rounds without a game count in opponents' scores.
    pub unplayed: UnplayedRoundsDocument,
    /// Applied in turn while a tie persists; equal after all is a shared rank.
    pub order: Vec<TieBreakDocument>,
}

mirror_enum! {
    /// One tie-break. Names of the FIDE Handbook (C.07) mean what it says.
    TieBreakDocument is TieBreak {
        /// Sum of the opponents' scores (Buchholz).
        OpponentsScore,
        /// The same without the lowest (Cut-1).
        OpponentsScoreCut,
        /// The same without the lowest and the highest (Median-1).
        OpponentsScoreMedian,
        /// Own result times the opponent's score.
        SonnebornBerger,
        /// Results among those who are still equal.
        DirectEncounter,
        /// Games won on the table.
        Wins,
        /// Games won with the harder role.
        WinsInHarderRole,
        /// Differences of game points, added up.
        ScoreMargin,
        /// Differences of game points, adjusted for the opponents' strength (least squares).
        AdjustedMargin,
        /// League points for painting, before caps.
        PaintingPoints,
        /// Painted share of the latest list.
        PaintedShare,
        /// Fewest byes.
        FewestByes,
        /// Fewest lists after their deadline.
        FewestLateLists,
    }
}

mirror_enum! {
    /// What opponents' scores are counted in.
    BasisDocument is Basis {
        /// 1 for a win, ½ for a draw.
        StandardPoints,
        /// League points of games and byes.
        GamePoints,
        /// The total of the table.
        Total,
    }
}

mirror_enum! {
    /// How rounds without a game count in opponents' scores.
    UnplayedRoundsDocument is UnplayedRounds {
        /// Not at all.
        LeftOut,
        /// A virtual opponent, as the handbook had it to 2022.
        VirtualOpponent,
        /// An opponent with one's own score, as the handbook has it since 2023.
        OwnScore,
    }
}

impl TryFrom<TieBreaksDocument> for TieBreaks {
    type Error = Vec<DocumentFault>;

    fn try_from(document: TieBreaksDocument) -> Result<Self, Vec<DocumentFault>> {
        let terms = TieBreaksTerms {
            basis: document.basis.into(),
            unplayed: document.unplayed.into(),
            order: document.order.into_iter().map(Into::into).collect(),
        };
        let locate = |fault: league::standings::TieBreaksFault| {
            DocumentFault::new("/order", fault.code(), fault.message())
        };
        Self::build(terms).map_err(|faults| faults.into_iter().map(locate).collect())
    }
}

impl From<&TieBreaks> for TieBreaksDocument {
    fn from(tie_breaks: &TieBreaks) -> Self {
        let terms = tie_breaks.terms();
        Self {
            basis: terms.basis.into(),
            unplayed: terms.unplayed.into(),
            order: terms
                .order
                .iter()
                .map(|&tie_break| tie_break.into())
                .collect(),
        }
    }
}
