//! Penalties for lists after their deadline.

use crate::ledger::{LineKind, LineReason};
use crate::points::LeaguePoints;
use crate::week::WeekNo;

use super::{Credit, Credits};

impl Credits<'_> {
    pub(super) fn late_lists(&self, player: usize, week: WeekNo, credit: &mut impl FnMut(Credit)) {
        for late in self.season.late_lists.get(player, week) {
            let seconds = late.seconds;
            let penalty = self.season.facts.scoring.late_penalty(seconds);
            if penalty > LeaguePoints::ZERO {
                let reason = LineReason::Late { seconds };
                credit(Credit::by_rule(week, LineKind::LateList, -penalty, reason));
            }
        }
    }
}
