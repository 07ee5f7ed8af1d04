//! Validation of scoring: from JSON to the value of the league, with every fault.

use std::collections::BTreeMap;

use league::points::LeaguePoints;
use league::scoring::{
    Band, Bye, Concession, GamePoints, LateJoiner, LateStep, NoShow, Scoring, ScoringFault,
    ScoringPart, ScoringTerms,
};
use league::share::Share;
use league::week::WeekNo;
use messages::scoring_faults;

use super::{BandDocument, ByeDocument, GamePointsDocument, LateJoinerDocument, ScoringDocument};
use crate::fault::{DocumentFault, ok_or_note};
use crate::share::ShareDocument;

const fn points(amount: i32) -> LeaguePoints {
    LeaguePoints::new(amount)
}

impl TryFrom<ScoringDocument> for Scoring {
    type Error = Vec<DocumentFault>;

    fn try_from(document: ScoringDocument) -> Result<Self, Vec<DocumentFault>> {
        let mut faults = Vec::new();
        let painting_cap = cap(&mut faults, "/painting_cap", document.painting_cap);
        let bonus_cap = cap(&mut faults, "/bonus_cap", document.bonus_cap);
        let weights = weights(&mut faults, &document.weights);
        if !faults.is_empty() {
            return Err(faults);
        }
        let terms = ScoringTerms {
            games: games(&document.games),
            concession: Concession {
                winner_at_least: points(document.concession.winner_at_least),
                loser_at_most: points(document.concession.loser_at_most),
            },
            no_show: NoShow {
                present: points(document.no_show.present),
                absent_with_notice: points(document.no_show.absent_with_notice),
                absent_without_notice: points(document.no_show.absent_without_notice),
            },
            double_loss: points(document.double_loss),
            bye: match document.bye {
                ByeDocument::Fixed { points: value } => Bye::Fixed(points(value)),
                ByeDocument::Win => Bye::Win,
                ByeDocument::OwnAverage { floor } => Bye::OwnAverage {
                    floor: points(floor),
                },
            },
            late_list: document
                .late_list
                .iter()
                .map(|step| LateStep {
                    from_minutes: step.from_minutes,
                    penalty: points(step.penalty),
                })
                .collect(),
            attendance: points(document.attendance),
            painting_cap,
            bonus_cap,
            best_weeks: document.best_weeks,
            late_joiner: match document.late_joiner {
                LateJoinerDocument::Nothing => LateJoiner::Nothing,
                LateJoinerDocument::Fixed { points: value } => LateJoiner::Fixed(points(value)),
                LateJoinerDocument::MedianLess { less } => LateJoiner::MedianLess(points(less)),
            },
            weights,
        };
        Self::build(terms).map_err(|faults| {
            faults
                .iter()
                .map(|fault| locate(&document, fault))
                .collect()
        })
    }
}

fn games(document: &GamePointsDocument) -> GamePoints {
    match document {
        GamePointsDocument::WinDrawLoss {
            win,
            draw,
            loss,
            draw_margin,
        } => GamePoints::WinDrawLoss {
            win: points(*win),
            draw: points(*draw),
            loss: points(*loss),
            draw_margin: *draw_margin,
        },
        GamePointsDocument::Bands { unit, sum, bands } => GamePoints::Bands {
            unit: (*unit).into(),
            sum: sum.map(points),
            bands: bands.iter().map(band).collect(),
        },
    }
}

fn band(document: &BandDocument) -> Band {
    Band {
        from: document.from,
        to: document.to,
        winner: points(document.winner),
        loser: points(document.loser),
    }
}

fn cap(
    faults: &mut Vec<DocumentFault>,
    pointer: &str,
    document: Option<ShareDocument>,
) -> Option<Share> {
    document.and_then(|share| ok_or_note(faults, pointer, "scoring.share", Share::try_from(share)))
}

fn weights(faults: &mut Vec<DocumentFault>, document: &BTreeMap<u8, u8>) -> BTreeMap<WeekNo, u8> {
    let weights = document.iter().filter_map(|(&number, &weight)| {
        let week = WeekNo::new(number).ok_or_else(scoring_faults::scoring_fault_no_week);
        let pointer = format!("/weights/{number}");
        ok_or_note(faults, pointer, "scoring.week", week).map(|week| (week, weight))
    });
    weights.collect()
}

fn locate(document: &ScoringDocument, fault: &ScoringFault) -> DocumentFault {
    let band = |from: u32| match &document.games {
        GamePointsDocument::Bands { bands, .. } => {
            let at = bands.iter().position(|band| band.from == from);
            at.map_or_else(
                || "/games/bands".to_owned(),
                |at| format!("/games/bands/{at}"),
            )
        }
        GamePointsDocument::WinDrawLoss { .. } => "/games".to_owned(),
    };
    let pointer = match fault {
        ScoringFault::Amount { part, .. }
        | ScoringFault::MoreThanWin { part, .. }
        | ScoringFault::FaultPays(part) => part_at(*part),
        ScoringFault::WinDrawLoss => "/games".to_owned(),
        ScoringFault::NoBands | ScoringFault::Gap { .. } => "/games/bands".to_owned(),
        ScoringFault::UnevenDraw => "/games/bands/0".to_owned(),
        ScoringFault::LastBandEnds(_) => match &document.games {
            GamePointsDocument::Bands { bands, .. } => {
                format!("/games/bands/{}/to", bands.len().saturating_sub(1))
            }
            GamePointsDocument::WinDrawLoss { .. } => "/games".to_owned(),
        },
        ScoringFault::NotFromZero(from)
        | ScoringFault::BandEnd(from)
        | ScoringFault::Overlap(from)
        | ScoringFault::NotMonotone(from)
        | ScoringFault::LoserAhead(from)
        | ScoringFault::Sum { from, .. } => band(*from),
        ScoringFault::LateSteps(minutes) => {
            let steps = &document.late_list;
            let at = steps.iter().rposition(|step| step.from_minutes == *minutes);
            at.map_or_else(|| "/late_list".to_owned(), |at| format!("/late_list/{at}"))
        }
        ScoringFault::Cap(_) if document.painting_cap.is_some_and(|cap| cap.part == 0) => {
            "/painting_cap".to_owned()
        }
        ScoringFault::Cap(_) => "/bonus_cap".to_owned(),
        ScoringFault::BestWeeks => "/best_weeks".to_owned(),
        ScoringFault::Weight { week, .. } => format!("/weights/{week}"),
    };
    DocumentFault::new(pointer, fault.code(), fault.message())
        .with_limit_if_any(fault.limit_and_actual())
}

fn part_at(part: ScoringPart) -> String {
    let member = match part {
        ScoringPart::Win => "games/win",
        ScoringPart::Draw => "games/draw",
        ScoringPart::Loss => "games/loss",
        ScoringPart::Band => "games/bands",
        ScoringPart::Concession => "concession",
        ScoringPart::NoShow => "no_show",
        ScoringPart::DoubleLoss => "double_loss",
        ScoringPart::Attendance => "attendance",
        ScoringPart::LateList => "late_list",
        ScoringPart::Bye => "bye",
        ScoringPart::LateJoiner => "late_joiner",
    };
    format!("/{member}")
}
