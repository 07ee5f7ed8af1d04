//! Faults of scoring: rules that contradict each other, or leave a case open.

use messages::{Message, scoring_faults as said};

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
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScoringFault {
    /// An amount is negative where it may not be, or beyond reason.
    Amount {
        part: ScoringPart,
        actual: LeaguePoints,
    },
    /// A win is worth less than a draw, or a draw less than a loss, or nothing lies between them.
    WinDrawLoss,
    /// The table has no bands.
    NoBands,
    /// The table does not start at zero.
    NotFromZero(u32),
    /// The last band ends.
    LastBandEnds(u32),
    /// A band in the middle is open or ends before it starts.
    BandEnd(u32),
    /// Margins that no band holds.
    Gap {
        /// First margin without a band.
        from: u32,
        /// Last margin without a band.
        to: u32,
    },
    /// Margins that two bands hold.
    Overlap(u32),
    /// The winner gets less for more, or the loser more.
    NotMonotone(u32),
    /// The winner gets less than the loser.
    LoserAhead(u32),
    /// Margin zero is a draw, so both sides get the same.
    UnevenDraw,
    /// A band does not share out the declared sum.
    Sum {
        from: u32,
        /// The declared sum.
        limit: LeaguePoints,
        /// The band's sum.
        actual: LeaguePoints,
    },
    /// A game that was not played gives more than the best win.
    MoreThanWin {
        part: ScoringPart,
        /// The best win.
        limit: LeaguePoints,
        /// What the rule gives.
        actual: LeaguePoints,
    },
    /// The side that gave up or stayed away gets more than the other, or silence pays better than
    /// word.
    FaultPays(ScoringPart),
    /// Late steps do not rise.
    LateSteps(u32),
    /// A cap of nothing: leave the bonus out instead.
    Cap(Share),
    /// No week would count.
    BestWeeks,
    /// A factor of zero or beyond reason.
    Weight { week: WeekNo, actual: u8 },
}

/// The part of scoring that a fault is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScoringPart {
    Win,
    Draw,
    Loss,
    Band,
    Concession,
    NoShow,
    DoubleLoss,
    Attendance,
    LateList,
    Bye,
    LateJoiner,
}

impl ScoringPart {
    fn message(self) -> Message {
        match self {
            Self::Win => said::scoring_part_win(),
            Self::Draw => said::scoring_part_draw(),
            Self::Loss => said::scoring_part_loss(),
            Self::Band => said::scoring_part_band(),
            Self::Concession => said::scoring_part_concession(),
            Self::NoShow => said::scoring_part_no_show(),
            Self::DoubleLoss => said::scoring_part_double_loss(),
            Self::Attendance => said::scoring_part_attendance(),
            Self::LateList => said::scoring_part_late_list(),
            Self::Bye => said::scoring_part_bye(),
            Self::LateJoiner => said::scoring_part_late_joiner(),
        }
    }
}

impl ScoringFault {
    pub fn message(&self) -> Message {
        match *self {
            Self::Amount { part, actual } => {
                said::scoring_fault_amount(part.message(), MAX_AMOUNT, actual)
            }
            Self::WinDrawLoss => said::scoring_fault_win_draw_loss(),
            Self::NoBands => said::scoring_fault_no_bands(),
            Self::NotFromZero(from) => said::scoring_fault_not_from_zero(from),
            Self::LastBandEnds(to) => said::scoring_fault_last_band_ends(to),
            Self::BandEnd(from) => said::scoring_fault_band_end(from),
            Self::Gap { from, to } => said::scoring_fault_gap(from, to),
            Self::Overlap(margin) => said::scoring_fault_overlap(margin),
            Self::NotMonotone(margin) => said::scoring_fault_not_monotone(margin),
            Self::LoserAhead(margin) => said::scoring_fault_loser_ahead(margin),
            Self::UnevenDraw => said::scoring_fault_uneven_draw(),
            Self::Sum {
                from,
                limit,
                actual,
            } => said::scoring_fault_sum(from, actual, limit),
            Self::MoreThanWin {
                part,
                limit,
                actual,
            } => said::scoring_fault_more_than_win(part.message(), limit, actual),
            Self::FaultPays(part) => said::scoring_fault_fault_pays(part.message()),
            Self::LateSteps(minutes) => said::scoring_fault_late_steps(minutes),
            Self::Cap(share) => said::scoring_fault_cap(share),
            Self::BestWeeks => said::scoring_fault_best_weeks(),
            Self::Weight { week, actual } => said::scoring_fault_weight(week, MAX_WEIGHT, actual),
        }
    }

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
    let mut check = |part, actual: LeaguePoints| {
        if !(0..=MAX_AMOUNT).contains(&actual.get()) {
            faults.push(ScoringFault::Amount { part, actual });
        }
    };
    match &terms.games {
        GamePoints::WinDrawLoss {
            win, draw, loss, ..
        } => {
            check(ScoringPart::Win, *win);
            check(ScoringPart::Draw, *draw);
            check(ScoringPart::Loss, *loss);
        }
        GamePoints::Bands { bands, .. } => {
            for band in bands {
                check(ScoringPart::Band, band.winner);
                check(ScoringPart::Band, band.loser);
            }
        }
    }
    check(ScoringPart::Concession, terms.concession.winner_at_least);
    check(ScoringPart::Concession, terms.concession.loser_at_most);
    check(ScoringPart::NoShow, terms.no_show.present);
    check(ScoringPart::NoShow, terms.no_show.absent_with_notice);
    check(ScoringPart::NoShow, terms.no_show.absent_without_notice);
    check(ScoringPart::DoubleLoss, terms.double_loss);
    check(ScoringPart::Attendance, terms.attendance);
    for step in &terms.late_list {
        check(ScoringPart::LateList, step.penalty);
    }
    match terms.bye {
        Bye::Fixed(value) | Bye::OwnAverage { floor: value } => check(ScoringPart::Bye, value),
        Bye::Win => {}
    }
    match terms.late_joiner {
        LateJoiner::Fixed(value) | LateJoiner::MedianLess(value) => {
            check(ScoringPart::LateJoiner, value)
        }
        LateJoiner::Nothing => {}
    }
}

fn find_in_unplayed(terms: &ScoringTerms, faults: &mut Vec<ScoringFault>) {
    let limit = win_of(&terms.games);
    let mut at_most_a_win = |part, actual| {
        if actual > limit {
            faults.push(ScoringFault::MoreThanWin {
                part,
                limit,
                actual,
            });
        }
    };
    at_most_a_win(ScoringPart::NoShow, terms.no_show.present);
    at_most_a_win(ScoringPart::Concession, terms.concession.winner_at_least);
    at_most_a_win(ScoringPart::DoubleLoss, terms.double_loss);
    if let Bye::Fixed(value) | Bye::OwnAverage { floor: value } = terms.bye {
        at_most_a_win(ScoringPart::Bye, value);
    }
    let absent = terms.no_show;
    if absent.absent_with_notice > absent.present
        || absent.absent_without_notice > absent.absent_with_notice
    {
        faults.push(ScoringFault::FaultPays(ScoringPart::NoShow));
    }
    if terms.concession.loser_at_most > terms.concession.winner_at_least {
        faults.push(ScoringFault::FaultPays(ScoringPart::Concession));
    }
}
