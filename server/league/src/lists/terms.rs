//! List terms: cap, rules and last list that the check of one player in one week applies.

use crate::catalogue::Catalogue;
use crate::catalogue::key::FactionKey;
use crate::lists::army_list::{ArmyList, PaintedModels};
use crate::lists::carry_over::{Comparison, PreviousList};
use crate::lists::line::lines;
use crate::lists::list_facts::ListFacts;
use crate::lists::rules::ListRule;
use crate::points::Points;
use crate::week::WeekNo;

/// What the check applies to a list of one player in one week.
#[derive(Clone, Copy, Debug)]
pub struct ListTerms<'a> {
    pub week: WeekNo,
    /// The points cap of the week for this player.
    pub cap: Points,
    /// The season's rules; those of other weeks are passed over.
    pub rules: &'a [ListRule],
    /// The faction the player declared for the season.
    pub faction: Option<&'a FactionKey>,
    /// The player's last list; rules from week to week wait until there is one.
    pub previous: Option<PreviousList<'a>>,
    /// Finished models of each entry; `None` when nothing is painted.
    pub painted: Option<&'a PaintedModels>,
}

impl<'a> ListTerms<'a> {
    /// What the rules need to know about a list under these terms, with the prices of `catalogue`.
    pub(super) fn facts(&self, list: &'a ArmyList, catalogue: &'a Catalogue) -> ListFacts<'a> {
        let lines = lines(list, catalogue);
        ListFacts {
            cap: self.cap,
            declared_faction: self.faction,
            painted: self.painted,
            list,
            faction: catalogue.faction(list.faction()),
            total: lines.iter().map(|line| line.points).sum(),
            comparison: self.previous.map(|previous| {
                Comparison::new(previous, list, &lines, catalogue).with_cap(self.cap)
            }),
            lines,
        }
    }
}
