//! Default policy: rules that suit most leagues. Common practice, no source.

use std::collections::BTreeMap;

use league::pairing::Wishes;
use league::share::Share;

use super::PolicyDocument;
use crate::painting::rules::{
    CheckerDocument, CountingDocument, PaintedBonusDocument, PaintingDocument, StageDocument,
};
use crate::rounds::method::RoundsDocument;
use crate::season::scoring::{
    ByeDocument, ConcessionDocument, GamePointsDocument, LateJoinerDocument, NoShowDocument,
    ScoringDocument,
};
use crate::season::tie_breaks::{
    BasisDocument, TieBreakDocument, TieBreaksDocument, UnplayedRoundsDocument,
};

impl Default for PolicyDocument {
    fn default() -> Self {
        Self {
            list_rules: Vec::new(),
            scoring: scoring(),
            painting: painting(),
            tie_breaks: tie_breaks(),
            rounds: RoundsDocument::default(),
            pairing: (&Wishes::default()).into(),
            confirm_within_hours: 48,
        }
    }
}

/// A win is worth three, a bye a little less than a win.
fn scoring() -> ScoringDocument {
    ScoringDocument {
        games: GamePointsDocument::WinDrawLoss {
            win: 3,
            draw: 1,
            loss: 0,
            draw_margin: 0,
        },
        concession: ConcessionDocument {
            winner_at_least: 3,
            loser_at_most: 0,
        },
        no_show: NoShowDocument {
            present: 3,
            absent_with_notice: 1,
            absent_without_notice: 0,
        },
        double_loss: 0,
        bye: ByeDocument::Fixed { points: 2 },
        late_list: Vec::new(),
        attendance: 0,
        painting_cap: None,
        bonus_cap: None,
        best_weeks: None,
        late_joiner: LateJoinerDocument::Nothing,
        weights: BTreeMap::new(),
    }
}

/// One point for a fully painted list: a third of a win.
fn painting() -> PaintingDocument {
    PaintingDocument {
        painted_from: StageDocument::Finished,
        counting: CountingDocument::ByModel,
        bonuses: vec![PaintedBonusDocument::AtThreshold {
            share: Share::ALL.into(),
            points: 1,
        }],
        checked_by: vec![CheckerDocument::Opponent, CheckerDocument::Referee],
    }
}

fn tie_breaks() -> TieBreaksDocument {
    TieBreaksDocument {
        basis: BasisDocument::GamePoints,
        unplayed: UnplayedRoundsDocument::OwnScore,
        order: vec![
            TieBreakDocument::DirectEncounter,
            TieBreakDocument::OpponentsScore,
            TieBreakDocument::ScoreMargin,
            TieBreakDocument::PaintedShare,
        ],
    }
}
