//! Points that a referee gave or took by a ruling.

use crate::ledger::{LineKind, LineReason, LineSource};
use crate::week::WeekNo;

use super::{Credit, Credits};

impl Credits<'_> {
    pub(super) fn rulings(&self, player: usize, week: WeekNo, credit: &mut impl FnMut(Credit)) {
        for ruled in self.season.adjustments.get(player, week) {
            credit(Credit {
                week,
                kind: LineKind::Ruling,
                amount: ruled.amount,
                reason: LineReason::Ruled(ruled.reason.clone()),
                source: LineSource::Ruling(ruled.ruling),
                version: ruled.version,
            });
        }
    }
}
