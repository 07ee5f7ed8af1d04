//! The league points that one game gives each side.

use crate::ledger::LineReason;
use crate::points::{LeaguePoints, Points};
use crate::result::{AbsenceNotice, GameScore, Outcome, Verdict};
use crate::side::{PerSide, Side};

use super::band::find_band;
use super::{GamePoints, ScoringTerms};

/// What one side gets, and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GameAward {
    /// League points.
    pub amount: LeaguePoints,
    /// The reason of the ledger line.
    pub reason: LineReason,
}

pub(super) fn verdict(games: &GamePoints, score: &GameScore, cap: Points) -> Verdict {
    match games {
        GamePoints::WinDrawLoss { draw_margin, .. } if score.margin() <= *draw_margin => {
            Verdict::Drawn
        }
        GamePoints::WinDrawLoss { .. } => score.verdict,
        GamePoints::Bands { unit, bands, .. } => match find_band(bands, *unit, score.margin(), cap)
        {
            Some(band) if band.winner == band.loser => Verdict::Drawn,
            _ => score.verdict,
        },
    }
}

pub(super) fn award(
    terms: &ScoringTerms,
    outcome: &Outcome,
    cap: Points,
) -> Option<PerSide<GameAward>> {
    match outcome {
        Outcome::Played(score) => Some(played(&terms.games, score, cap)),
        Outcome::Conceded { by, score } => Some(conceded(terms, *by, score.as_ref(), cap)),
        Outcome::NoShow { absent, notice } => {
            let points = terms.no_show;
            let (amount, reason) = match notice {
                AbsenceNotice::Given => (points.absent_with_notice, LineReason::AbsentWithNotice),
                AbsenceNotice::NotGiven => (
                    points.absent_without_notice,
                    LineReason::AbsentWithoutNotice,
                ),
            };
            let present = GameAward {
                amount: points.present,
                reason: LineReason::OpponentAbsent,
            };
            Some(PerSide::from_view_of(
                *absent,
                GameAward { amount, reason },
                present,
            ))
        }
        Outcome::DoubleLoss => Some(PerSide::from_fn(|_| GameAward {
            amount: terms.double_loss,
            reason: LineReason::DoubleLoss,
        })),
        Outcome::Void => None,
    }
}

fn played(games: &GamePoints, score: &GameScore, cap: Points) -> PerSide<GameAward> {
    let amounts = amounts(games, score, cap);
    let verdict = verdict(games, score, cap);
    PerSide::from_fn(|side| {
        let (own, other) = (score.total[side], score.total[side.other()]);
        let reason = match verdict {
            Verdict::Drawn => LineReason::Drew { own, other },
            Verdict::Won(winner) if winner == side => LineReason::Won { own, other },
            Verdict::Won(_) => LineReason::Lost { own, other },
        };
        GameAward {
            amount: amounts[side],
            reason,
        }
    })
}

fn amounts(games: &GamePoints, score: &GameScore, cap: Points) -> PerSide<LeaguePoints> {
    match (verdict(games, score, cap), games) {
        (Verdict::Won(side), GamePoints::WinDrawLoss { win, loss, .. }) => {
            PerSide::from_view_of(side, *win, *loss)
        }
        (Verdict::Drawn, GamePoints::WinDrawLoss { draw, .. }) => PerSide::from_fn(|_| *draw),
        (Verdict::Won(side), GamePoints::Bands { unit, bands, .. }) => {
            let band = find_band(bands, *unit, score.margin(), cap);
            let (winner, loser) = band.map_or_else(Default::default, |b| (b.winner, b.loser));
            PerSide::from_view_of(side, winner, loser)
        }
        (Verdict::Drawn, GamePoints::Bands { bands, .. }) => {
            let even = bands.first().map_or(LeaguePoints::ZERO, |band| band.winner);
            PerSide::from_fn(|_| even)
        }
    }
}

fn conceded(
    terms: &ScoringTerms,
    by: Side,
    score: Option<&GameScore>,
    cap: Points,
) -> PerSide<GameAward> {
    let counted = score.map(|score| amounts(&terms.games, score, cap));
    let limits = terms.concession;
    let conceder = counted.map_or(limits.loser_at_most, |points| {
        points[by].min(limits.loser_at_most)
    });
    let winner = counted.map_or(limits.winner_at_least, |points| {
        points[by.other()].max(limits.winner_at_least)
    });
    let mine = GameAward {
        amount: conceder,
        reason: LineReason::Conceded,
    };
    let theirs = GameAward {
        amount: winner,
        reason: LineReason::OpponentConceded,
    };
    PerSide::from_view_of(by, mine, theirs)
}
