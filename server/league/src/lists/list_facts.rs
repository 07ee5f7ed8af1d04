//! List facts: what the rules need to know about a list, computed once.

use crate::catalogue::Faction;
use crate::catalogue::key::FactionKey;
use crate::lists::army_list::{ArmyList, PaintedModels};
use crate::lists::carry_over::Comparison;
use crate::lists::line::ListLine;
use crate::points::Points;

/// A list seen through its catalogue and the terms of its week.
#[derive(Debug)]
pub struct ListFacts<'a> {
    /// The points cap of the week for this player.
    pub cap: Points,
    /// The faction that the player declared for the season.
    pub declared_faction: Option<&'a FactionKey>,
    /// Finished models of each entry; `None` when nothing is painted.
    pub painted: Option<&'a PaintedModels>,
    pub list: &'a ArmyList,
    /// The list's faction in the catalogue.
    pub faction: Option<&'a Faction>,
    /// The entries in the list's order.
    pub lines: Vec<ListLine<'a>>,
    /// Points of all entries.
    pub total: Points,
    /// The list beside the player's last one, where there is one.
    pub comparison: Option<Comparison<'a>>,
}
