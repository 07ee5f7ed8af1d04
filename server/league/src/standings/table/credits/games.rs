//! Games of two players.

use crate::ledger::Kind;
use crate::week::WeekNo;

use super::{Credit, Credits};

impl Credits<'_> {
    pub(super) fn games(&self, player: usize, week: WeekNo, credit: &mut impl FnMut(Credit)) {
        for seat in self.season.games.of(player, week) {
            if let Some(stands) = &seat.stands {
                credit(Credit {
                    week,
                    kind: Kind::Game,
                    amount: stands.amount,
                    reason: stands.reason.clone(),
                    source: stands.source,
                    version: seat.fact.version,
                });
            }
        }
    }
}
