//! Game counts: what players type in, and the faults of counts that cannot be.

use std::collections::BTreeMap;

use messages::{Message, result_faults as said};

use crate::points::Points;
use crate::scenario::ItemKey;
use crate::side::{PerSide, Side};

/// Everything typed for one game. An item that is missing was counted as nothing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct GameCounts {
    /// One for each leg of the sheet.
    pub legs: Vec<LegCounts>,
}

/// What was typed for one leg.
pub type LegCounts = PerSide<SideCounts>;

/// What was typed for one side in one leg.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct SideCounts {
    /// A count, or army points for a share of an army.
    pub items: BTreeMap<ItemKey, u32>,
    /// Army points that started the leg, where the side had to leave units out; the most its role
    /// allows otherwise.
    pub started: Option<Points>,
}

/// The army points that shares are measured against.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ArmyPoints {
    /// Total of each opened list.
    pub lists: PerSide<Points>,
    /// The cap of the week.
    pub cap: Points,
}

/// A count that cannot be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CountFault {
    /// The leg, from zero.
    pub leg: usize,
    /// The side; `None` when it is about both.
    pub side: Option<Side>,
    /// Why, with limit and actual.
    pub kind: CountFaultKind,
}

impl CountFault {
    pub fn message(&self) -> Message {
        said::count_fault_in_leg(self.leg + 1, self.kind.message())
    }
}

/// Why a count cannot be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CountFaultKind {
    /// The sheet has no such item.
    UnknownItem(ItemKey),
    /// The item belongs to the other role.
    OtherRole(ItemKey),
    /// The server computes this item.
    Computed(ItemKey),
    /// More than one side can have, or both together when the item is exclusive.
    OverMost {
        item: ItemKey,
        /// Largest count.
        limit: u32,
        /// Count typed; of both sides together when the item is exclusive.
        actual: u32,
    },
    /// More army points than that army started with.
    OverArmy {
        item: ItemKey,
        /// Points that army started with.
        limit: Points,
        actual: Points,
    },
    /// More army points at the start than the role may field.
    OverField {
        /// Most points of the role.
        limit: Points,
        actual: Points,
    },
    /// Legs are missing or too many.
    Legs {
        /// Legs of the sheet.
        limit: usize,
        actual: usize,
    },
}

impl CountFaultKind {
    fn message(&self) -> Message {
        match self {
            Self::UnknownItem(item) => said::count_fault_unknown_item(item),
            Self::OtherRole(item) => said::count_fault_other_role(item),
            Self::Computed(item) => said::count_fault_computed(item),
            Self::OverMost {
                item,
                limit,
                actual,
            } => said::count_fault_over_most(item, limit, actual),
            Self::OverArmy {
                item,
                limit,
                actual,
            } => said::count_fault_over_army(item, limit, actual),
            Self::OverField { limit, actual } => said::count_fault_over_field(limit, actual),
            Self::Legs { limit, actual } => said::count_fault_legs(*limit, *actual),
        }
    }
    pub const fn code(&self) -> &'static str {
        match self {
            Self::UnknownItem(_) => "result.unknown-item",
            Self::OtherRole(_) => "result.other-role",
            Self::Computed(_) => "result.computed-item",
            Self::OverMost { .. } => "result.over-most",
            Self::OverArmy { .. } => "result.over-army",
            Self::OverField { .. } => "result.over-field",
            Self::Legs { .. } => "result.legs",
        }
    }

    /// The item it is about.
    pub const fn item(&self) -> Option<&ItemKey> {
        match self {
            Self::UnknownItem(item)
            | Self::OtherRole(item)
            | Self::Computed(item)
            | Self::OverMost { item, .. }
            | Self::OverArmy { item, .. } => Some(item),
            Self::OverField { .. } | Self::Legs { .. } => None,
        }
    }
}
