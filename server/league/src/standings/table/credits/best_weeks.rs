//! The best-weeks rule: takes off the weeks that do not count among a player's best.

use crate::ledger::{LineKind, LineReason};
use crate::standings::by_player::week_index;
use crate::week::WeekNo;

use super::{Credit, Credits};

impl Credits<'_> {
    /// Drops the worst weeks beyond those that count; of equal ones the earliest.
    pub(super) fn weeks_beyond_the_best(&mut self) {
        let best = self.season.facts.scoring.terms().best_weeks;
        let surplus = best.map_or(0, |best| self.as_of.number().saturating_sub(best));
        for (player, sums) in self.sums.iter_mut().enumerate() {
            let weeks = self.weeks.get_mut(player);
            for _ in 0..surplus {
                let counting = weeks.iter_mut().filter(|week| week.counts);
                if let Some(worst) = counting.min_by_key(|week| week.points) {
                    worst.counts = false;
                    sums.add(LineKind::DroppedWeek, -worst.points);
                }
            }
        }
    }

    pub(super) fn not_among_the_best(
        &self,
        player: usize,
        week: WeekNo,
        credit: &mut impl FnMut(Credit),
    ) {
        let total = self.weeks.get(player).get(week_index(week));
        let best = self.season.facts.scoring.terms().best_weeks;
        if let (Some(total), Some(best)) = (total.filter(|total| !total.counts), best) {
            let (amount, reason) = (-total.points, LineReason::NotAmongBest { best });
            credit(Credit::by_rule(week, LineKind::DroppedWeek, amount, reason));
        }
    }
}
