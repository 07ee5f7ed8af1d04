//! List facts: what the rules need to know about a list, computed once.

use crate::catalogue::{Catalogue, Faction};
use crate::lists::army_list::ArmyList;
use crate::lists::carry_over::Comparison;
use crate::lists::line::{ListLine, lines};
use crate::lists::terms::ListTerms;
use crate::points::Points;

/// A list seen through its catalogue and the terms of its week.
#[derive(Debug)]
pub struct ListFacts<'a> {
    /// The terms of the week.
    pub terms: &'a ListTerms<'a>,
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

impl<'a> ListFacts<'a> {
    /// Looks every entry up.
    pub fn new(list: &'a ArmyList, catalogue: &'a Catalogue, terms: &'a ListTerms<'a>) -> Self {
        let lines = lines(list, catalogue);
        Self {
            terms,
            list,
            faction: catalogue.faction(list.faction()),
            total: lines.iter().map(|line| line.points).sum(),
            comparison: terms.previous.map(|previous| {
                Comparison::new(previous, list, &lines, catalogue).with_cap(terms.cap)
            }),
            lines,
        }
    }
}
