//! Parser of pasted lists: from text to a list, with what was understood of every line.
//!
//! The grammar is the league's own and tolerant. A line names a unit with what belongs to it, or
//! an option of the unit above it, or a heading, or a total:
//!
//! ```text
//! Sodwether Moot, 300 points
//! Leader:
//! - Mire Speaker (reed mask) 85
//! 2x Turf Cutters, 8 models, mud sledges: 128
//! * Rushlight Kin [6]
//!   marsh gas +12
//! Total: 275
//! ```
//!
//! Marks (`, ; : | ( ) [ ] + =`, free-standing dashes, bullets) part a line; `2x` or `x2` counts
//! units, `6 models` models, `112 points` points, and a number alone what fits the catalogue. `1,250`,
//! `1.250` and `56.0` are whole numbers; the words for models, points and totals may be German.
//! Names may have small typing errors, which makes them guesses; without marks between them, names
//! and their numbers are taken from the left. Nothing is dropped in silence: every word and number of
//! every line is part of a meaning, of a guess with its alternatives, or is reported as not understood.
//! The time taken is linear in the length of the text.

mod entry_keys;
mod mentions;
mod name_index;
mod numerals;
mod resolve;
mod scan;
mod segment;
mod tokens;
mod vocabulary;

use messages::Message;

use crate::catalogue::Catalogue;
use crate::catalogue::key::{FactionKey, KindKey, OptionKey, UnitKey};
use crate::lists::army_list::{ArmyList, EntryKey};
use crate::lists::finding::Finding;
use crate::points::Points;

/// Lines that are read; further ones are reported as not understood.
pub const MAX_LINES: usize = 500;
/// Longest line that is read, in bytes; a longer one is reported as not understood.
pub const MAX_LINE_BYTES: usize = 400;

/// How sure the reading of a part is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Certainty {
    Understood,
    /// It probably means so.
    Guessed,
    /// It means nothing that the reader knows.
    NotUnderstood,
}

/// What a part of a line means.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Meaning {
    /// The faction of the list.
    Faction(FactionKey),
    /// A heading: units of this kind follow.
    Kind(KindKey),
    /// A unit, as one or more entries of the list.
    Unit {
        unit: UnitKey,
        name: String,
        /// Models of each entry.
        models: u32,
        /// The entries made of it.
        entries: Vec<EntryKey>,
    },
    /// A unit that the list cannot have, since it belongs to another faction.
    ForeignUnit { faction: FactionKey, name: String },
    /// An option of the unit before.
    Option {
        option: OptionKey,
        name: String,
        /// How often each entry takes it.
        taken: u32,
    },
    /// The unit before has so many models.
    Models(u32),
    /// There are so many of the unit before.
    Times(u32),
    /// The unit before joins a unit of this key.
    Joins(UnitKey),
    /// Points stated for the unit, option or heading before.
    StatedPoints(Points),
    /// Points stated for the whole list.
    StatedTotal(Points),
    /// A stated cap.
    StatedCap(Points),
    /// A word that only introduces what follows.
    Label,
    /// Nothing that the reader knows.
    Nothing,
}

/// A part of a line with its meaning.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LinePart {
    /// The text as it stands.
    pub text: String,
    pub meaning: Meaning,
    /// How sure that is.
    pub certainty: Certainty,
    /// Of a guess: what else it could mean, as people say it.
    pub alternatives: Vec<Message>,
}

/// One line of the text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ReadLine {
    /// Counted from 1.
    pub number: usize,
    /// The line as it stands.
    pub text: String,
    /// Its parts in order; none when nothing but marks stands there.
    pub parts: Vec<LinePart>,
}

impl ReadLine {
    /// How sure the reading of the whole line is: as its least sure part.
    pub fn certainty(&self) -> Certainty {
        let certainties = self.parts.iter().map(|part| part.certainty);
        certainties.max().unwrap_or(Certainty::Understood)
    }
}

/// What came of a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reading {
    /// Every line of the text.
    pub lines: Vec<ReadLine>,
    /// The list as far as it was understood or guessed; `None` without a faction.
    pub list: Option<ArmyList>,
    /// Stated points and factions that disagree with the catalogue, as remarks.
    pub findings: Vec<Finding>,
}

/// Reads a text. With `faction` names are looked for in that faction alone; without it the text
/// must name the faction, or enough units that only one faction has.
pub fn parse(text: &str, catalogue: &Catalogue, faction: Option<&FactionKey>) -> Reading {
    let scanned = scan::scan(text, catalogue, faction);
    resolve::resolve(scanned)
}

#[cfg(test)]
mod leftover_tests;
#[cfg(test)]
mod property_tests;
#[cfg(test)]
mod tests;
