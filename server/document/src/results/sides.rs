//! The sides of a game and their roles as JSON.

use league::side::{GameRole, PerSide, Side};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::mirror_enum::mirror_enum;

mirror_enum! {
    /// A side of a game, in the order of the pairing.
    SideDocument is Side {
        /// Named first; attacks in the first leg.
        First,
        /// Named second.
        Second,
    }
}

mirror_enum! {
    /// A role in a scenario.
    RoleDocument is GameRole {
        /// Must achieve the aim.
        Attacker,
        /// Must prevent it.
        Defender,
    }
}

/// The same thing once for each side.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct BothDocument<T> {
    /// Of the side named first.
    pub first: T,
    /// Of the side named second.
    pub second: T,
}

impl<T> From<PerSide<T>> for BothDocument<T> {
    fn from(both: PerSide<T>) -> Self {
        let PerSide { first, second } = both;
        Self { first, second }
    }
}

impl<T> From<BothDocument<T>> for PerSide<T> {
    fn from(document: BothDocument<T>) -> Self {
        Self::new(document.first, document.second)
    }
}

impl SideDocument {
    /// The word used in data and in pointers.
    pub(crate) const fn as_str(self) -> &'static str {
        match self {
            Self::First => "first",
            Self::Second => "second",
        }
    }
}
