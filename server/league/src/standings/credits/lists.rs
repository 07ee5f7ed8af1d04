//! Lists after their deadline.

use crate::ledger::{Kind, Reason};
use crate::points::LeaguePoints;

use super::{Credit, Credits};

impl Credits<'_> {
    pub(super) fn late_lists(&mut self) {
        let (season, as_of) = (self.season, self.as_of);
        for late in season
            .late_lists
            .iter()
            .filter(|late| late.fact.week <= as_of)
        {
            let seconds = late.fact.seconds;
            let penalty = season.facts.scoring.late_penalty(seconds);
            if penalty > LeaguePoints::ZERO {
                let reason = Reason::Late { seconds };
                let credit = Credit::by_rule(late.fact.week, Kind::LateList, -penalty, reason);
                self.credit(late.player, credit);
            }
        }
    }
}
