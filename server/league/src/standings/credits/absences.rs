//! Weeks away that were said in time: no opponent waits, so they are worth as much as a game missed
//! with notice.

use crate::ledger::{Kind, Reason};

use super::super::rounds::away;
use super::{Credit, Credits};

impl Credits<'_> {
    pub(super) fn absences(&mut self) {
        let (season, as_of) = (self.season, self.as_of);
        let value = season.facts.scoring.terms().no_show.absent_with_notice;
        for absence in season
            .absences
            .iter()
            .filter(|absence| absence.fact.week <= as_of)
        {
            let week = absence.fact.week;
            let amount = self.weighted(value, week);
            if let Some(rounds) = self.rounds.get_mut(absence.player) {
                rounds.push(away(week, amount));
            }
            let credit = Credit::by_rule(week, Kind::Absence, amount, Reason::AbsentWithNotice);
            self.credit(absence.player, credit);
        }
    }
}
