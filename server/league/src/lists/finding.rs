//! Findings: the breaches and remarks of a check, with their numbers.

use messages::Message;

use crate::lists::army_list::EntryKey;

/// How much a finding weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// The list may not be sealed like this.
    Breach,
    /// Worth knowing; the list may be sealed.
    Remark,
}

/// What the numbers of a finding count.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Measure {
    /// Army points.
    Points,
    Models,
    /// Units, that is entries of the list.
    Units,
    /// Takings of an option.
    Takings,
}

/// Limit and actual value of a finding in the same measure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Measured {
    /// What both numbers count.
    pub measure: Measure,
    /// The most or the least that the rule allows.
    pub limit: u32,
    /// What the list has.
    pub actual: u32,
}

impl Measured {
    /// How far the list is from the limit.
    pub fn difference(self) -> u32 {
        self.limit.abs_diff(self.actual)
    }
}

/// One finding of a check.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Finding {
    /// Stable code such as `list.over-cap`.
    pub code: &'static str,
    /// Whether it stops the list.
    pub severity: Severity,
    /// Limit and actual value, where the rule is about a number.
    pub measured: Option<Measured>,
    /// The key of the unit, option, kind, keyword or faction it is about.
    pub about: Option<String>,
    /// The entries meant; an entry that left is named by its key in last week's list.
    pub entries: Vec<EntryKey>,
    message: Message,
}

impl Finding {
    /// A breach with what it says to people: with names and numbers, no markup.
    pub fn new(code: &'static str, message: Message) -> Self {
        Self {
            code,
            severity: Severity::Breach,
            measured: None,
            about: None,
            entries: Vec::new(),
            message,
        }
    }

    /// The same as a remark.
    pub fn remark(mut self) -> Self {
        self.severity = Severity::Remark;
        self
    }

    /// The same with its numbers.
    pub fn measured(mut self, measure: Measure, limit: u32, actual: u32) -> Self {
        self.measured = Some(Measured {
            measure,
            limit,
            actual,
        });
        self
    }

    /// The same with the key of what it is about.
    pub fn about(mut self, key: impl ToString) -> Self {
        self.about = Some(key.to_string());
        self
    }

    /// The same with the entries meant.
    pub fn entries<'a>(mut self, keys: impl IntoIterator<Item = &'a EntryKey>) -> Self {
        self.entries = keys.into_iter().cloned().collect();
        self
    }

    pub fn message(&self) -> &Message {
        &self.message
    }
}
