//! Points that a referee gave or took.

use crate::ledger::{Kind, Reason, Source};
use crate::week::WeekNo;

use super::{Credit, Credits};

impl Credits<'_> {
    pub(super) fn rulings(&self, player: usize, week: WeekNo, credit: &mut impl FnMut(Credit)) {
        for ruled in self.season.adjustments.of(player, week) {
            credit(Credit {
                week,
                kind: Kind::Ruling,
                amount: ruled.amount,
                reason: Reason::Ruled(ruled.reason.clone()),
                source: Source::Ruling(ruled.ruling),
                version: ruled.version,
            });
        }
    }
}
