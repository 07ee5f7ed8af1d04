//! Weeks away that were said in time: no opponent waits, so they are worth as much as a game missed
//! with notice.

use crate::ledger::{Kind, Reason};
use crate::points::LeaguePoints;
use crate::standings::table::season::Season;
use crate::week::WeekNo;

use super::{Credit, Credits};

impl Credits<'_> {
    pub(super) fn absences(&self, player: usize, week: WeekNo, credit: &mut impl FnMut(Credit)) {
        for _ in self.season.absences.of(player, week) {
            let (amount, reason) = (value(self.season, week), Reason::AbsentWithNotice);
            credit(Credit::by_rule(week, Kind::Absence, amount, reason));
        }
    }
}

pub(super) fn value(season: &Season<'_>, week: WeekNo) -> LeaguePoints {
    let scoring = &season.facts.scoring;
    scoring.weighted(scoring.terms().no_show.absent_with_notice, week)
}
