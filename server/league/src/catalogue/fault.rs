//! Faults of a catalogue draft, each with its JSON pointer.

use crate::catalogue::key::KeyFault;
use crate::name::TextFault;

/// One fault of a catalogue draft.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CatalogueFault {
    /// JSON Pointer (RFC 6901) into the draft, such as `/factions/0/units/3/sizes/1/points`.
    pub pointer: String,
    /// What is wrong there.
    pub kind: CatalogueFaultKind,
}

/// What can be wrong with a catalogue draft.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum CatalogueFaultKind {
    #[error("{0}")]
    Key(#[from] KeyFault),
    #[error("{0}")]
    Name(#[from] TextFault),
    /// The same key, size or keyword twice.
    #[error("\"{0}\" is there more than once")]
    Twice(String),
    /// A number outside its range.
    #[error("is {actual}; it must be from {least} to {most}")]
    OutOfRange { least: i64, most: i64, actual: i64 },
    /// Fewer or more members than allowed.
    #[error("has {actual} members; it must have from {least} to {most}")]
    Count {
        least: usize,
        most: usize,
        actual: usize,
    },
    /// A leader joins a keyword that no unit of its faction carries.
    #[error("no unit of this faction carries \"{0}\"")]
    JoinsNothing(String),
}

impl CatalogueFaultKind {
    /// The stable code of the fault.
    pub fn code(&self) -> &'static str {
        match self {
            Self::Key(_) => "catalogue.key",
            Self::Name(_) => "catalogue.name",
            Self::Twice(_) => "catalogue.twice",
            Self::OutOfRange { .. } => "catalogue.out-of-range",
            Self::Count { .. } => "catalogue.count",
            Self::JoinsNothing(_) => "catalogue.joins-nothing",
        }
    }
}
