//! Weeks that do not count among a player's best.

use crate::ledger::{Kind, Reason};

use super::super::table::WeekTotal;
use super::{Credit, Credits, place_of};

impl Credits<'_> {
    /// Drops the worst weeks beyond those that count; of equal ones the earliest.
    pub(super) fn weeks_beyond_the_best(&mut self) {
        let Some(best) = self.season.facts.scoring.terms().best_weeks else {
            return;
        };
        let surplus = usize::from(self.as_of.number().saturating_sub(best));
        if surplus == 0 {
            return;
        }
        let mut worst: Vec<WeekTotal> = Vec::new();
        for player in 0..self.season.players.len() {
            worst.clear();
            worst.extend(self.weeks.get(player).into_iter().flatten());
            worst.sort_by_key(|total| total.points);
            for dropped in worst.iter().take(surplus) {
                let weeks = self.weeks.get_mut(player);
                let total = weeks.and_then(|weeks| weeks.get_mut(place_of(dropped.week)));
                if let Some(total) = total {
                    total.counts = false;
                }
                let reason = Reason::NotAmongBest { best };
                let (week, amount) = (dropped.week, -dropped.points);
                self.credit(
                    player,
                    Credit::by_rule(week, Kind::DroppedWeek, amount, reason),
                );
            }
        }
    }
}
