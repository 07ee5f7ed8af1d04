//! A season's scoring: how games, byes, absences and lists become league points.

use messages::Message;

mod award;
mod band;
mod fault;
mod read_back;

#[cfg(test)]
mod tests;

use std::collections::BTreeMap;

use crate::points::{LeaguePoints, Points};
use crate::result::{GameScore, Outcome, Verdict};
use crate::share::Share;
use crate::side::PerSide;
use crate::week::WeekNo;

pub use award::GameAward;
pub use band::{Band, MarginUnit};
pub use fault::{ScoringFault, ScoringPart};

/// Scoring as it is written, before it is checked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ScoringTerms {
    /// Games played to the end.
    pub games: GamePoints,
    /// Games given up during play.
    pub concession: Concession,
    /// Games that one side did not come to.
    pub no_show: NoShow,
    /// For each side when neither came, or both lose by ruling.
    pub double_loss: LeaguePoints,
    /// A week without an opponent.
    pub bye: Bye,
    /// What a late list costs, by lateness; empty when nothing.
    pub late_list: Vec<LateStep>,
    /// For coming to the table, once a week.
    pub attendance: LeaguePoints,
    /// Most painted bonus of a week, as a share of a win.
    pub painting_cap: Option<Share>,
    /// Most painted bonus and attendance of a week together, as a share of a win.
    pub bonus_cap: Option<Share>,
    /// How many of a player's best weeks count; all when `None`.
    pub best_weeks: Option<u8>,
    /// What a player gets for the weeks before joining.
    pub late_joiner: LateJoiner,
    /// Factor on games and byes of a week; 1 where none is named.
    pub weights: BTreeMap<WeekNo, u8>,
}

/// How the score of a game becomes league points.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum GamePoints {
    /// By win, draw and loss.
    WinDrawLoss {
        win: LeaguePoints,
        /// For each side of a draw.
        draw: LeaguePoints,
        loss: LeaguePoints,
        /// Largest difference of game points that still is a draw.
        draw_margin: u32,
    },
    /// By the margin of the score.
    Bands {
        /// What margins are measured in.
        unit: MarginUnit,
        /// What winner and loser share out in every band, when that is declared.
        sum: Option<LeaguePoints>,
        /// From margin zero upwards, without gap or overlap.
        bands: Vec<Band>,
    },
}

/// A game given up during play counts by its score, but at least this much for the winner.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Concession {
    /// Least for the side that played on.
    pub winner_at_least: LeaguePoints,
    /// Most for the side that gave up.
    pub loser_at_most: LeaguePoints,
}

/// League points when one side did not come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoShow {
    /// For the side that came.
    pub present: LeaguePoints,
    /// For the other, with word in time.
    pub absent_with_notice: LeaguePoints,
    /// For the other, without.
    pub absent_without_notice: LeaguePoints,
}

/// The value of a bye.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bye {
    /// Always the same.
    Fixed(LeaguePoints),
    /// As much as the best win.
    Win,
    /// The average of the player's own played games so far, rounded down.
    OwnAverage {
        /// Never less than this.
        floor: LeaguePoints,
    },
}

/// What a list costs that comes this late.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LateStep {
    /// From so many minutes after the deadline; the grace time is the first step's.
    pub from_minutes: u32,
    /// League points taken off.
    pub penalty: LeaguePoints,
}

/// What a player gets for each week before joining.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LateJoiner {
    Nothing,
    /// Always the same.
    Fixed(LeaguePoints),
    /// The median of that week's points of all who took part, less something, never below zero.
    /// Of an even number the lower of the two middle ones.
    MedianLess(LeaguePoints),
}

/// Scoring that has one reading only.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Scoring(ScoringTerms);

impl Scoring {
    /// # Errors
    /// Every [`ScoringFault`] at once.
    pub fn build(terms: ScoringTerms) -> Result<Self, Vec<ScoringFault>> {
        let faults = fault::find_faults(&terms);
        if faults.is_empty() {
            Ok(Self(terms))
        } else {
            Err(faults)
        }
    }

    /// The terms as written.
    pub fn terms(&self) -> &ScoringTerms {
        &self.0
    }

    /// The value of the best win.
    pub fn win(&self) -> LeaguePoints {
        win_of(&self.0.games)
    }

    /// The value of a draw with equal scores.
    pub fn draw(&self) -> LeaguePoints {
        match &self.0.games {
            GamePoints::WinDrawLoss { draw, .. } => *draw,
            GamePoints::Bands { bands, .. } => {
                bands.first().map_or(LeaguePoints::ZERO, |band| band.winner)
            }
        }
    }

    /// Who won for the season: a draw where the sheet or the season says draw, or where the band
    /// gives both the same.
    pub fn verdict(&self, score: &GameScore, cap: Points) -> Verdict {
        award::verdict(&self.0.games, score, cap)
    }

    /// League points of both sides for an outcome, before the week's weight.
    pub fn award(&self, outcome: &Outcome, cap: Points) -> Option<PerSide<GameAward>> {
        award::award(&self.0, outcome, cap)
    }

    /// League points of both sides for an outcome in `week`, its weight included.
    pub fn points_in(
        &self,
        week: WeekNo,
        outcome: &Outcome,
        cap: Points,
    ) -> Option<PerSide<LeaguePoints>> {
        let awards = self.award(outcome, cap)?;
        Some(PerSide::from_fn(|side| {
            self.weighted(awards[side].amount, week)
        }))
    }

    /// The amount with the factor of its week.
    pub fn weighted(&self, amount: LeaguePoints, week: WeekNo) -> LeaguePoints {
        LeaguePoints::new(amount.get().saturating_mul(self.weight(week)))
    }

    /// Every way in which a played game can be shared out, before the week's weight.
    pub fn possible_results(&self) -> Vec<PerSide<LeaguePoints>> {
        let (winners, draw) = match &self.0.games {
            GamePoints::WinDrawLoss { win, loss, .. } => (vec![(*win, *loss)], self.draw()),
            GamePoints::Bands { bands, .. } => {
                let bands = bands.iter().map(|band| (band.winner, band.loser));
                (bands.collect(), self.draw())
            }
        };
        let each_way = winners
            .into_iter()
            .flat_map(|(winner, loser)| [PerSide::new(winner, loser), PerSide::new(loser, winner)]);
        let mut possible = vec![PerSide::new(draw, draw)];
        for result in each_way {
            if !possible.contains(&result) {
                possible.push(result);
            }
        }
        possible
    }

    /// What a list that came so many seconds after its deadline costs.
    pub fn late_penalty(&self, seconds: u32) -> LeaguePoints {
        let reached = |step: &&LateStep| u64::from(step.from_minutes) * 60 <= u64::from(seconds);
        let step = self.0.late_list.iter().rev().find(reached);
        step.map_or(LeaguePoints::ZERO, |step| step.penalty)
    }

    /// The factor on games and byes of `week`.
    pub fn weight(&self, week: WeekNo) -> i32 {
        self.0.weights.get(&week).copied().unwrap_or(1).into()
    }

    /// Most bonus points that `share` of a win allows, rounded down.
    pub fn cap_in_points(&self, share: Share) -> LeaguePoints {
        let win = Points::new(u32::try_from(self.win().get()).unwrap_or(0));
        LeaguePoints::new(i32::try_from(share.floor_of(win).get()).unwrap_or(i32::MAX))
    }

    /// The scoring as players read it.
    pub fn messages(&self) -> Vec<Message> {
        read_back::messages(self)
    }
}

fn win_of(games: &GamePoints) -> LeaguePoints {
    match games {
        GamePoints::WinDrawLoss { win, .. } => *win,
        GamePoints::Bands { bands, .. } => {
            bands.last().map_or(LeaguePoints::ZERO, |band| band.winner)
        }
    }
}
