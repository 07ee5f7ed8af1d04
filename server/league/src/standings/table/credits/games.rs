//! Credit for games of two players.

use crate::ledger::LineKind;
use crate::week::WeekNo;

use super::{Credit, Credits};

impl Credits<'_> {
    pub(super) fn games(&self, player: usize, week: WeekNo, credit: &mut impl FnMut(Credit)) {
        for game in self.season.games.get(player, week) {
            if let Some(counted) = &game.counted {
                credit(Credit {
                    week,
                    kind: LineKind::Game,
                    amount: counted.amount,
                    reason: counted.reason.clone(),
                    source: counted.source,
                    version: game.fact.version,
                });
            }
        }
    }
}
