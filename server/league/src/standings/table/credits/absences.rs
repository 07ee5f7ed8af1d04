//! Credit for announced absences: no opponent waits, so they are worth as much as a game missed
//! with notice.

use crate::ledger::{LineKind, LineReason};
use crate::points::LeaguePoints;
use crate::standings::table::season::IndexedSeason;
use crate::week::WeekNo;

use super::{Credit, Credits};

impl Credits<'_> {
    pub(super) fn absences(&self, player: usize, week: WeekNo, credit: &mut impl FnMut(Credit)) {
        for _ in self.season.absences.get(player, week) {
            let (amount, reason) = (value(self.season, week), LineReason::AbsentWithNotice);
            credit(Credit::by_rule(week, LineKind::Absence, amount, reason));
        }
    }
}

pub(super) fn value(season: &IndexedSeason<'_>, week: WeekNo) -> LeaguePoints {
    let scoring = &season.facts.scoring;
    scoring.weighted(scoring.terms().no_show.absent_with_notice, week)
}
