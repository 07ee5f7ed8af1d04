//! Scenario sheets: what is counted in a game, by whom, and what it is worth. All of it is data.

mod fault;
mod item;
mod map;
mod read_back;

use messages::Message;

use crate::name::{Name, Text};
use crate::share::Share;
use crate::side::GameRole;

pub use crate::catalogue::key::ItemKey;
pub use fault::{MAX_NUMBER, SheetFault};
pub use item::{
    ArmyOwner, Grade, GradeBand, ItemMeasure, JointCap, ScoreItem, ScoringSide, ScoringTime,
    ShareBase,
};
pub use map::{MAX_TABLE_EDGE, Marker, ScenarioTable, Zone, ZoneUse};

/// Most items on one sheet; a phone screen holds no more. Common practice, no source.
pub const MAX_ITEMS: usize = 24;
/// Most turns of one leg. Common practice is 4 to 8, no source.
pub const MAX_TURNS: u8 = 20;

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
    pub roles: ScenarioRoles,
    /// How many games the scenario is.
    pub legs: Legs,
    /// What is counted, in the order of the form.
    pub items: Vec<ScoreItem>,
    /// Caps over several items of one side.
    pub joint_caps: Vec<JointCap>,
    /// Largest difference of game points that still is a draw.
    pub draw_margin: u32,
    /// The table as a map.
    pub table: ScenarioTable,
}

/// Whether both sides have the same task.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScenarioRoles {
    /// Both the same.
    Symmetric,
    /// One attacks, one defends.
    AttackAndDefence {
        /// Share of the opened list that the attacker starts with.
        attacker_fields: Share,
        /// Share of the opened list that the defender starts with.
        defender_fields: Share,
        attacker: AttackerChoice,
        /// The role that is harder to win with, where the organiser says so.
        harder: Option<GameRole>,
    },
}

/// Who attacks in the first leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AttackerChoice {
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
        let faults = fault::find_faults(&terms);
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
    pub fn item(&self, key: &ItemKey) -> Option<&ScoreItem> {
        self.0.items.iter().find(|item| item.key == *key)
    }

    /// Share of the opened list that `role` starts with.
    pub fn fielded_share(&self, role: GameRole) -> Share {
        match (self.0.roles, role) {
            (ScenarioRoles::Symmetric, _) => Share::ALL,
            (
                ScenarioRoles::AttackAndDefence {
                    attacker_fields, ..
                },
                GameRole::Attacker,
            ) => attacker_fields,
            (
                ScenarioRoles::AttackAndDefence {
                    defender_fields, ..
                },
                GameRole::Defender,
            ) => defender_fields,
        }
    }

    /// The role that is harder to win with; with two legs both sides play it and it says nothing.
    pub fn harder_role(&self) -> Option<GameRole> {
        match (self.0.roles, self.0.legs) {
            (ScenarioRoles::AttackAndDefence { harder, .. }, Legs::One) => harder,
            _ => None,
        }
    }

    /// What a side reads: one sentence for each rule of the sheet.
    pub fn messages(&self) -> Vec<Message> {
        read_back::messages(&self.0)
    }
}
