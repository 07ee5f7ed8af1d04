//! Points that a referee gave or took.

use crate::ledger::{Kind, Reason, Source};

use super::{Credit, Credits};

impl Credits<'_> {
    pub(super) fn rulings(&mut self) {
        let (season, as_of) = (self.season, self.as_of);
        for ruled in season
            .adjustments
            .iter()
            .filter(|ruled| ruled.fact.week <= as_of)
        {
            let credit = Credit {
                week: ruled.fact.week,
                kind: Kind::Ruling,
                amount: ruled.fact.amount,
                reason: Reason::Ruled(ruled.fact.reason.clone()),
                source: Source::Ruling(ruled.fact.ruling),
                version: ruled.fact.version,
            };
            self.credit(ruled.player, credit);
        }
    }
}
