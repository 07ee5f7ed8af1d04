//! Faults of scoring: rules that contradict each other, or leave a case open.

use crate::points::LeaguePoints;
use crate::share::Share;
use crate::week::WeekNo;

use super::band::Band;
use super::{Bye, GamePoints, LateJoiner, ScoringTerms, win_of};

/// Largest amount a rule may give or take.
pub(super) const MAX_AMOUNT: i32 = 1_000;
/// Largest factor of a week.
const MAX_WEIGHT: u8 = 5;

/// One fault of a season's scoring.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ScoringFault {
    /// An amount is negative where it may not be, or beyond reason.
    #[error("{rule}: points lie between 0 and {MAX_AMOUNT}, not {actual}")]
    Amount {
        rule: &'static str,
        actual: LeaguePoints,
    },
    /// A win is worth less than a draw, or a draw less than a loss, or nothing lies between them.
    #[error("a win must be worth more than a loss, and a draw neither more nor less than both")]
    WinDrawLoss,
    /// The table has no bands.
    #[error("the margin table is empty")]
    NoBands,
    /// The table does not start at zero.
    #[error("the margin table must start at 0, not at {0}")]
    NotFromZero(u32),
    /// The last band ends.
    #[error("the last band must be open, this one ends at {0}")]
    LastBandEnds(u32),
    /// A band in the middle is open or ends before it starts.
    #[error("the band from {0} must end, and not before it starts")]
    BandEnd(u32),
    /// Margins that no band holds.
    #[error("no band holds the margins {from} to {to}")]
    Gap {
        /// First margin without a band.
        from: u32,
        /// Last margin without a band.
        to: u32,
    },
    /// Margins that two bands hold.
    #[error("two bands hold the margin {0}")]
    Overlap(u32),
    /// The winner gets less for more, or the loser more.
    #[error("from margin {0} on, the winner gets less or the loser more than before")]
    NotMonotone(u32),
    /// The winner gets less than the loser.
    #[error("from margin {0} on, the loser gets more than the winner")]
    LoserAhead(u32),
    /// Margin zero is a draw, so both sides get the same.
    #[error("at margin 0 both sides must get the same")]
    UnevenDraw,
    /// A band does not share out the declared sum.
    #[error("the band from {from} shares out {actual}, not {limit}")]
    Sum {
        from: u32,
        /// The declared sum.
        limit: LeaguePoints,
        /// The band's sum.
        actual: LeaguePoints,
    },
    /// A game that was not played gives more than the best win.
    #[error("{rule}: at most a win's {limit}, not {actual}")]
    MoreThanWin {
        rule: &'static str,
        /// The best win.
        limit: LeaguePoints,
        /// What the rule gives.
        actual: LeaguePoints,
    },
    /// The side that gave up or stayed away gets more than the other, or silence pays better than
    /// word.
    #[error("{0}: the side at fault must not get more")]
    FaultPays(&'static str),
    /// Late steps do not rise.
    #[error("a later list must cost more: the step from {0} minutes does not")]
    LateSteps(u32),
    /// A cap of nothing: leave the bonus out instead.
    #[error("a bonus cap is more than 0 % of a win, not {0}")]
    Cap(Share),
    /// No week would count.
    #[error("at least one week must count")]
    BestWeeks,
    /// A factor of zero or beyond reason.
    #[error("the factor of week {week} lies between 1 and {MAX_WEIGHT}, not {actual}")]
    Weight { week: WeekNo, actual: u8 },
}

impl ScoringFault {
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Amount { .. } => "scoring.amount",
            Self::WinDrawLoss => "scoring.win-draw-loss",
            Self::NoBands => "scoring.no-bands",
            Self::NotFromZero(_) => "scoring.not-from-zero",
            Self::LastBandEnds(_) => "scoring.last-band-ends",
            Self::BandEnd(_) => "scoring.band-end",
            Self::Gap { .. } => "scoring.gap",
            Self::Overlap(_) => "scoring.overlap",
            Self::NotMonotone(_) => "scoring.not-monotone",
            Self::LoserAhead(_) => "scoring.loser-ahead",
            Self::UnevenDraw => "scoring.uneven-draw",
            Self::Sum { .. } => "scoring.sum",
            Self::MoreThanWin { .. } => "scoring.more-than-win",
            Self::FaultPays(_) => "scoring.fault-pays",
            Self::LateSteps(_) => "scoring.late-steps",
            Self::Cap(_) => "scoring.cap",
            Self::BestWeeks => "scoring.best-weeks",
            Self::Weight { .. } => "scoring.weight",
        }
    }
}

impl ScoringFault {
    /// What would have been allowed, and what was given, where the fault is one of size.
    pub fn limit_and_actual(&self) -> Option<(i64, i64)> {
        let (limit, actual) = match *self {
            Self::Amount { actual, .. } => {
                let actual = actual.get();
                (actual.clamp(0, MAX_AMOUNT), actual)
            }
            Self::Sum { limit, actual, .. } | Self::MoreThanWin { limit, actual, .. } => {
                (limit.get(), actual.get())
            }
            Self::BestWeeks => (1, 0),
            Self::Weight { actual, .. } => (actual.clamp(1, MAX_WEIGHT).into(), actual.into()),
            Self::NotFromZero(actual) => return Some((0, actual.into())),
            _ => return None,
        };
        Some((limit.into(), actual.into()))
    }
}

pub(super) fn find_faults(terms: &ScoringTerms) -> Vec<ScoringFault> {
    let mut faults = Vec::new();
    match &terms.games {
        GamePoints::WinDrawLoss {
            win, draw, loss, ..
        } => {
            if win <= loss || draw > win || draw < loss {
                faults.push(ScoringFault::WinDrawLoss);
            }
        }
        GamePoints::Bands { sum, bands, .. } => find_in_bands(bands, *sum, &mut faults),
    }
    find_in_amounts(terms, &mut faults);
    find_in_unplayed(terms, &mut faults);
    for (earlier, later) in terms.late_list.iter().zip(terms.late_list.iter().skip(1)) {
        if later.from_minutes <= earlier.from_minutes || later.penalty <= earlier.penalty {
            faults.push(ScoringFault::LateSteps(later.from_minutes));
        }
    }
    let caps = [terms.painting_cap, terms.bonus_cap].into_iter().flatten();
    faults.extend(
        caps.filter(|cap| *cap == Share::NOTHING)
            .map(ScoringFault::Cap),
    );
    if terms.best_weeks == Some(0) {
        faults.push(ScoringFault::BestWeeks);
    }
    let absurd = |weight: &u8| !(1..=MAX_WEIGHT).contains(weight);
    let weights = terms.weights.iter().filter(|(_, weight)| absurd(weight));
    faults.extend(weights.map(|(&week, &actual)| ScoringFault::Weight { week, actual }));
    faults
}

fn find_in_bands(bands: &[Band], sum: Option<LeaguePoints>, faults: &mut Vec<ScoringFault>) {
    let (Some(first), Some(last)) = (bands.first(), bands.last()) else {
        faults.push(ScoringFault::NoBands);
        return;
    };
    if first.from != 0 {
        faults.push(ScoringFault::NotFromZero(first.from));
    }
    if first.winner != first.loser {
        faults.push(ScoringFault::UnevenDraw);
    }
    faults.extend(last.to.map(ScoringFault::LastBandEnds));
    for band in bands {
        let actual = band.winner + band.loser;
        if let Some(limit) = sum.filter(|limit| *limit != actual) {
            let from = band.from;
            faults.push(ScoringFault::Sum {
                from,
                limit,
                actual,
            });
        }
        if band.winner < band.loser {
            faults.push(ScoringFault::LoserAhead(band.from));
        }
    }
    for (low, high) in bands.iter().zip(bands.iter().skip(1)) {
        if high.winner < low.winner || high.loser > low.loser {
            faults.push(ScoringFault::NotMonotone(high.from));
        }
        match low.to {
            Some(to) if to >= low.from && to < u32::MAX => {
                if high.from > to + 1 {
                    let (from, to) = (to + 1, high.from - 1);
                    faults.push(ScoringFault::Gap { from, to });
                } else if high.from <= to {
                    faults.push(ScoringFault::Overlap(high.from));
                }
            }
            _ => faults.push(ScoringFault::BandEnd(low.from)),
        }
    }
}

fn find_in_amounts(terms: &ScoringTerms, faults: &mut Vec<ScoringFault>) {
    let mut check = |rule, actual: LeaguePoints| {
        if !(0..=MAX_AMOUNT).contains(&actual.get()) {
            faults.push(ScoringFault::Amount { rule, actual });
        }
    };
    match &terms.games {
        GamePoints::WinDrawLoss {
            win, draw, loss, ..
        } => {
            check("win", *win);
            check("draw", *draw);
            check("loss", *loss);
        }
        GamePoints::Bands { bands, .. } => {
            for band in bands {
                check("band", band.winner);
                check("band", band.loser);
            }
        }
    }
    check("concession", terms.concession.winner_at_least);
    check("concession", terms.concession.loser_at_most);
    check("no-show", terms.no_show.present);
    check("no-show", terms.no_show.absent_with_notice);
    check("no-show", terms.no_show.absent_without_notice);
    check("double loss", terms.double_loss);
    check("attendance", terms.attendance);
    for step in &terms.late_list {
        check("late list", step.penalty);
    }
    match terms.bye {
        Bye::Fixed(value) | Bye::OwnAverage { floor: value } => check("bye", value),
        Bye::Win => {}
    }
    match terms.late_joiner {
        LateJoiner::Fixed(value) | LateJoiner::MedianLess(value) => check("late joiner", value),
        LateJoiner::Nothing => {}
    }
}

fn find_in_unplayed(terms: &ScoringTerms, faults: &mut Vec<ScoringFault>) {
    let limit = win_of(&terms.games);
    let mut at_most_a_win = |rule, actual| {
        if actual > limit {
            faults.push(ScoringFault::MoreThanWin {
                rule,
                limit,
                actual,
            });
        }
    };
    at_most_a_win("no-show", terms.no_show.present);
    at_most_a_win("concession", terms.concession.winner_at_least);
    at_most_a_win("double loss", terms.double_loss);
    if let Bye::Fixed(value) | Bye::OwnAverage { floor: value } = terms.bye {
        at_most_a_win("bye", value);
    }
    let absent = terms.no_show;
    if absent.absent_with_notice > absent.present
        || absent.absent_without_notice > absent.absent_with_notice
    {
        faults.push(ScoringFault::FaultPays("no-show"));
    }
    if terms.concession.loser_at_most > terms.concession.winner_at_least {
        faults.push(ScoringFault::FaultPays("concession"));
    }
}
