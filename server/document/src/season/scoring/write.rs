//! From scoring to JSON.

use league::scoring::{Band, Bye, GamePoints, LateJoiner, LateStep, Scoring};

use super::{
    BandDocument, ByeDocument, ConcessionDocument, GamePointsDocument, LateJoinerDocument,
    LateStepDocument, NoShowDocument, ScoringDocument,
};

impl From<&Scoring> for ScoringDocument {
    fn from(scoring: &Scoring) -> Self {
        let terms = scoring.terms();
        let weights = terms.weights.iter();
        Self {
            games: (&terms.games).into(),
            concession: ConcessionDocument {
                winner_at_least: terms.concession.winner_at_least.get(),
                loser_at_most: terms.concession.loser_at_most.get(),
            },
            no_show: NoShowDocument {
                present: terms.no_show.present.get(),
                absent_with_notice: terms.no_show.absent_with_notice.get(),
                absent_without_notice: terms.no_show.absent_without_notice.get(),
            },
            double_loss: terms.double_loss.get(),
            bye: terms.bye.into(),
            late_list: terms.late_list.iter().map(|&step| step.into()).collect(),
            attendance: terms.attendance.get(),
            painting_cap: terms.painting_cap.map(Into::into),
            bonus_cap: terms.bonus_cap.map(Into::into),
            best_weeks: terms.best_weeks,
            late_joiner: terms.late_joiner.into(),
            weights: weights
                .map(|(week, &weight)| (week.number(), weight))
                .collect(),
        }
    }
}

impl From<&GamePoints> for GamePointsDocument {
    fn from(games: &GamePoints) -> Self {
        match games {
            GamePoints::WinDrawLoss {
                win,
                draw,
                loss,
                draw_margin,
            } => Self::WinDrawLoss {
                win: win.get(),
                draw: draw.get(),
                loss: loss.get(),
                draw_margin: *draw_margin,
            },
            GamePoints::Bands { unit, sum, bands } => Self::Bands {
                unit: (*unit).into(),
                sum: sum.map(|sum| sum.get()),
                bands: bands.iter().map(|&band| band.into()).collect(),
            },
        }
    }
}

impl From<Band> for BandDocument {
    fn from(band: Band) -> Self {
        Self {
            from: band.from,
            to: band.to,
            winner: band.winner.get(),
            loser: band.loser.get(),
        }
    }
}

impl From<Bye> for ByeDocument {
    fn from(bye: Bye) -> Self {
        match bye {
            Bye::Fixed(value) => Self::Fixed {
                points: value.get(),
            },
            Bye::Win => Self::Win,
            Bye::OwnAverage { floor } => Self::OwnAverage { floor: floor.get() },
        }
    }
}

impl From<LateStep> for LateStepDocument {
    fn from(step: LateStep) -> Self {
        Self {
            from_minutes: step.from_minutes,
            penalty: step.penalty.get(),
        }
    }
}

impl From<LateJoiner> for LateJoinerDocument {
    fn from(late_joiner: LateJoiner) -> Self {
        match late_joiner {
            LateJoiner::Nothing => Self::Nothing,
            LateJoiner::Fixed(value) => Self::Fixed {
                points: value.get(),
            },
            LateJoiner::MedianLess(less) => Self::MedianLess { less: less.get() },
        }
    }
}
