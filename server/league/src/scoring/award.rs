//! League points of one game.

use crate::ledger::Reason;
use crate::points::{LeaguePoints, Points};
use crate::result::{GameScore, Notice, Outcome, Verdict};
use crate::side::{Both, Side};

use super::band::holding;
use super::{GamePoints, ScoringTerms};

/// What one side gets, and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Award {
    /// League points.
    pub amount: LeaguePoints,
    /// The reason of the ledger line.
    pub reason: Reason,
}

pub(super) fn verdict(games: &GamePoints, score: &GameScore, cap: Points) -> Verdict {
    match games {
        GamePoints::WinDrawLoss { draw_margin, .. } if score.margin() <= *draw_margin => {
            Verdict::Drawn
        }
        GamePoints::WinDrawLoss { .. } => score.verdict,
        GamePoints::Bands { unit, bands, .. } => match holding(bands, *unit, score.margin(), cap) {
            Some(band) if band.winner == band.loser => Verdict::Drawn,
            _ => score.verdict,
        },
    }
}

pub(super) fn award(terms: &ScoringTerms, outcome: &Outcome, cap: Points) -> Option<Both<Award>> {
    match outcome {
        Outcome::Played(score) => Some(played(&terms.games, score, cap)),
        Outcome::Conceded { by, score } => Some(conceded(terms, *by, score.as_ref(), cap)),
        Outcome::NoShow { absent, notice } => {
            let points = terms.no_show;
            let (amount, reason) = match notice {
                Notice::Given => (points.absent_with_notice, Reason::AbsentWithNotice),
                Notice::NotGiven => (points.absent_without_notice, Reason::AbsentWithoutNotice),
            };
            let present = Award {
                amount: points.present,
                reason: Reason::OpponentAbsent,
            };
            Some(Both::from_view_of(
                *absent,
                Award { amount, reason },
                present,
            ))
        }
        Outcome::DoubleLoss => Some(Both::each(|_| Award {
            amount: terms.double_loss,
            reason: Reason::DoubleLoss,
        })),
        Outcome::Void => None,
    }
}

fn played(games: &GamePoints, score: &GameScore, cap: Points) -> Both<Award> {
    let amounts = amounts(games, score, cap);
    let verdict = verdict(games, score, cap);
    Both::each(|side| {
        let (own, other) = (score.total[side], score.total[side.other()]);
        let reason = match verdict {
            Verdict::Drawn => Reason::Drew { own, other },
            Verdict::Won(winner) if winner == side => Reason::Won { own, other },
            Verdict::Won(_) => Reason::Lost { own, other },
        };
        Award {
            amount: amounts[side],
            reason,
        }
    })
}

fn amounts(games: &GamePoints, score: &GameScore, cap: Points) -> Both<LeaguePoints> {
    match (verdict(games, score, cap), games) {
        (Verdict::Won(side), GamePoints::WinDrawLoss { win, loss, .. }) => {
            Both::from_view_of(side, *win, *loss)
        }
        (Verdict::Drawn, GamePoints::WinDrawLoss { draw, .. }) => Both::each(|_| *draw),
        (Verdict::Won(side), GamePoints::Bands { unit, bands, .. }) => {
            let band = holding(bands, *unit, score.margin(), cap);
            let (winner, loser) = band.map_or_else(Default::default, |b| (b.winner, b.loser));
            Both::from_view_of(side, winner, loser)
        }
        (Verdict::Drawn, GamePoints::Bands { bands, .. }) => {
            let even = bands.first().map_or(LeaguePoints::ZERO, |band| band.winner);
            Both::each(|_| even)
        }
    }
}

fn conceded(terms: &ScoringTerms, by: Side, score: Option<&GameScore>, cap: Points) -> Both<Award> {
    let counted = score.map(|score| amounts(&terms.games, score, cap));
    let limits = terms.concession;
    let conceder = counted.map_or(limits.loser_at_most, |points| {
        points[by].min(limits.loser_at_most)
    });
    let winner = counted.map_or(limits.winner_at_least, |points| {
        points[by.other()].max(limits.winner_at_least)
    });
    let mine = Award {
        amount: conceder,
        reason: Reason::Conceded,
    };
    let theirs = Award {
        amount: winner,
        reason: Reason::OpponentConceded,
    };
    Both::from_view_of(by, mine, theirs)
}
