//! Scenario sheets: what is counted in a game, by whom, and what it is worth. Data, not code.

mod fault;
mod item;
mod map;
mod sentences;

use crate::name::{Name, Text};
use crate::share::Share;
use crate::side::Role;

pub use crate::catalogue::key::ItemKey;
pub use fault::SheetFault;
pub use item::{Against, Army, Grade, GradeBand, Item, JointCap, Measure, When, Who};
pub use map::{Marker, Table, Zone, ZoneUse};

/// Most items on one sheet; a phone screen holds no more. Common practice, no source.
pub const MOST_ITEMS: usize = 24;
/// Most turns of one leg. Common practice is 4 to 8, no source.
pub const MOST_TURNS: u8 = 20;

/// A sheet as it is written, before it is checked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SheetTerms {
    /// Shown as soon as the week announces the title.
    pub title: Name,
    /// What everyone may read once the sheet is announced.
    pub summary: Text,
    /// The whole briefing, deployment and special rules included.
    pub briefing: Text,
    /// Turns of one leg.
    pub turns: u8,
    /// Whether the sides do the same.
    pub roles: Roles,
    /// How many games the scenario is.
    pub legs: Legs,
    /// What is counted, in the order of the form.
    pub items: Vec<Item>,
    /// Caps over several items of one side.
    pub joint_caps: Vec<JointCap>,
    /// Largest difference of game points that still is a draw.
    pub draw_margin: u32,
    /// The table as a map.
    pub table: Table,
}

/// Whether both sides have the same task.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Roles {
    /// Both the same.
    Symmetric,
    /// One attacks, one defends.
    AttackAndDefence {
        /// Share of the opened list that the attacker starts with.
        attacker_fields: Share,
        /// Share of the opened list that the defender starts with.
        defender_fields: Share,
        /// Who attacks first.
        attacker: AttackerIs,
        /// The role that is harder to win with, where the organiser says so.
        harder: Option<Role>,
    },
}

/// Who attacks in the first leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AttackerIs {
    /// Balanced over the season by the pairing, then drawn.
    Paired,
    /// The player with the lower standing.
    LowerStanding,
    /// The player with the higher standing.
    HigherStanding,
}

/// The games of a scenario.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Legs {
    /// One game.
    One,
    /// Two games with roles swapped; their points are added.
    TwoSummed,
    /// Two games with roles swapped; each is won on its own and the game score counts legs won.
    TwoWonSeparately,
}

impl Legs {
    /// How many.
    pub const fn count(self) -> usize {
        match self {
            Self::One => 1,
            Self::TwoSummed | Self::TwoWonSeparately => 2,
        }
    }
}

/// A sheet that can be played and scored without doubt.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ScenarioSheet(SheetTerms);

impl ScenarioSheet {
    /// # Errors
    /// Every [`SheetFault`] at once.
    pub fn build(terms: SheetTerms) -> Result<Self, Vec<SheetFault>> {
        let faults = fault::find(&terms);
        if faults.is_empty() {
            Ok(Self(terms))
        } else {
            Err(faults)
        }
    }

    /// The terms as written.
    pub fn terms(&self) -> &SheetTerms {
        &self.0
    }

    /// The item with this key.
    pub fn item(&self, key: &ItemKey) -> Option<&Item> {
        self.0.items.iter().find(|item| item.key == *key)
    }

    /// Share of the opened list that `role` starts with.
    pub fn fields(&self, role: Role) -> Share {
        match (self.0.roles, role) {
            (Roles::Symmetric, _) => Share::ALL,
            (
                Roles::AttackAndDefence {
                    attacker_fields, ..
                },
                Role::Attacker,
            ) => attacker_fields,
            (
                Roles::AttackAndDefence {
                    defender_fields, ..
                },
                Role::Defender,
            ) => defender_fields,
        }
    }

    /// The role that is harder to win with; with two legs both sides play it and it says nothing.
    pub fn harder_role(&self) -> Option<Role> {
        match (self.0.roles, self.0.legs) {
            (Roles::AttackAndDefence { harder, .. }, Legs::One) => harder,
            _ => None,
        }
    }

    /// What a side reads: one sentence for each rule of the sheet.
    pub fn sentences(&self) -> Vec<String> {
        sentences::of(&self.0)
    }
}
