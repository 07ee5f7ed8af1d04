//! Catch-up credit for the weeks before a player joined.

use crate::ledger::{LineKind, LineReason};
use crate::points::LeaguePoints;
use crate::scoring::LateJoiner;
use crate::standings::by_player::week_index;
use crate::week::WeekNo;

use super::{Credit, Credits, all_weeks};

/// What a week gives to those who had not joined yet.
pub(super) struct CatchUp {
    amount: LeaguePoints,
    reason: LineReason,
}

impl Credits<'_> {
    /// Finds what late joiners get, which depends on what the others got, and adds it.
    pub(super) fn weeks_before_joining(&mut self) {
        let joined = self.season.players.iter().map(|player| player.joined);
        let last_to_join = joined.filter(|week| *week <= self.as_of).max();
        let before = all_weeks(self.as_of).take_while(|week| Some(*week) < last_to_join);
        self.catch_up = before.map(|week| self.catch_up_of(week)).collect();
        if self.catch_up.is_empty() {
            return;
        }
        for player in 0..self.season.players.len() {
            for week in all_weeks(self.as_of).filter(|week| !self.season.has_row(player, *week)) {
                let mut amount = LeaguePoints::ZERO;
                self.before_joining(player, week, &mut |credit| amount += credit.amount);
                if let Some(sums) = self.sums.get_mut(player) {
                    sums.add(LineKind::CatchUp, amount);
                }
                if let Some(total) = self.weeks.get_mut(player).get_mut(week_index(week)) {
                    total.points += amount;
                }
            }
        }
    }

    pub(super) fn before_joining(
        &self,
        player: usize,
        week: WeekNo,
        credit: &mut impl FnMut(Credit),
    ) {
        let joins_later =
            self.season.has_row(player, self.as_of) && !self.season.has_row(player, week);
        let catch_up = self.catch_up.get(week_index(week)).and_then(Option::as_ref);
        if let Some(catch_up) = catch_up.filter(|_| joins_later) {
            let (amount, reason) = (catch_up.amount, catch_up.reason.clone());
            credit(Credit::by_rule(week, LineKind::CatchUp, amount, reason));
        }
    }

    fn catch_up_of(&self, week: WeekNo) -> Option<CatchUp> {
        let (amount, reason) = match self.season.facts.scoring.terms().late_joiner {
            LateJoiner::Nothing => return None,
            LateJoiner::Fixed(value) => (value, LineReason::MissedWeek),
            LateJoiner::MedianLess(less) => {
                let median = self.median_of(week);
                let amount = (median - less).max(LeaguePoints::ZERO);
                (amount, LineReason::MedianOfWeek { median, less })
            }
        };
        Some(CatchUp { amount, reason })
    }

    /// The lower median of what the week gave to those who took part.
    fn median_of(&self, week: WeekNo) -> LeaguePoints {
        let players = self.season.players.iter().zip(self.weeks.iter());
        let there = players.filter(|(player, _)| player.takes_part_in(week));
        let points = there.filter_map(|(_, weeks)| weeks.get(week_index(week)));
        let mut points: Vec<_> = points.map(|total| total.points).collect();
        let middle = points.len().saturating_sub(1) / 2;
        match points.is_empty() {
            true => LeaguePoints::ZERO,
            false => *points.select_nth_unstable(middle).1,
        }
    }
}
