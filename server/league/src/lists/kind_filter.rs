//! Filter of unit kinds: which kinds a rule applies to.

use crate::catalogue::key::KindKey;

/// A choice of unit kinds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum KindFilter {
    Every,
    Only(Vec<KindKey>),
    /// Every kind but these.
    Except(Vec<KindKey>),
}

impl KindFilter {
    /// Whether the choice holds the kind.
    pub fn contains(&self, kind: &KindKey) -> bool {
        match self {
            Self::Every => true,
            Self::Only(kinds) => kinds.contains(kind),
            Self::Except(kinds) => !kinds.contains(kind),
        }
    }

    /// The kinds it names.
    pub fn listed_kinds(&self) -> &[KindKey] {
        match self {
            Self::Every => &[],
            Self::Only(kinds) | Self::Except(kinds) => kinds,
        }
    }
}
