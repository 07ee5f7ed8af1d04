//! List terms: cap, rules and last list that the check of one player in one week applies.

use std::collections::BTreeMap;

use crate::catalogue::Catalogue;
use crate::catalogue::key::FactionKey;
use crate::lists::army_list::{ArmyList, EntryKey};
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

/// Finished models by entry.
pub type PaintedModels = BTreeMap<EntryKey, u32>;

/// A player's last list with the catalogue version it was pinned to.
#[derive(Clone, Copy, Debug)]
pub struct PreviousList<'a> {
    pub list: &'a ArmyList,
    /// Its own catalogue version: it keeps the points it was sealed with.
    pub catalogue: &'a Catalogue,
}
