//! Faults of a catalogue draft, each with its JSON pointer.

use messages::{Message, catalogue_faults as said};

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
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CatalogueFaultKind {
    Key(KeyFault),
    Name(TextFault),
    /// The same key, size or keyword twice.
    Twice(String),
    /// A number outside its range.
    OutOfRange {
        least: i64,
        most: i64,
        actual: i64,
    },
    /// Fewer or more members than allowed.
    Count {
        least: usize,
        most: usize,
        actual: usize,
    },
    /// A leader joins a keyword that no unit of its faction carries.
    JoinsNothing(String),
}

impl From<KeyFault> for CatalogueFaultKind {
    fn from(fault: KeyFault) -> Self {
        Self::Key(fault)
    }
}

impl From<TextFault> for CatalogueFaultKind {
    fn from(fault: TextFault) -> Self {
        Self::Name(fault)
    }
}

impl CatalogueFaultKind {
    pub fn message(&self) -> Message {
        match self {
            Self::Key(fault) => fault.message(),
            Self::Name(fault) => fault.message(),
            Self::Twice(name) => said::catalogue_fault_twice(name),
            Self::OutOfRange {
                least,
                most,
                actual,
            } => said::catalogue_fault_out_of_range(actual, least, most),
            Self::Count {
                least,
                most,
                actual,
            } => said::catalogue_fault_count(*actual, *least, *most),
            Self::JoinsNothing(keyword) => said::catalogue_fault_joins_nothing(keyword),
        }
    }
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
