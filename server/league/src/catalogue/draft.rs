//! A catalogue draft: a catalogue as it was written, not checked yet.

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct CatalogueDraft {
    /// The factions in order.
    pub factions: Vec<FactionDraft>,
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct FactionDraft {
    /// Becomes a [`FactionKey`](super::key::FactionKey).
    pub key: String,
    /// As people call it.
    pub name: String,
    /// The units in order.
    pub units: Vec<UnitDraft>,
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct UnitDraft {
    /// Becomes a [`UnitKey`](super::key::UnitKey).
    pub key: String,
    /// As people call it.
    pub name: String,
    /// Becomes a [`KindKey`](super::key::KindKey).
    pub kind: String,
    /// Become [`Keyword`](super::key::Keyword)s.
    pub keywords: Vec<String>,
    pub sizes: Vec<SizeDraft>,
    /// The options in order.
    pub options: Vec<OptionDraft>,
    /// Keyword of the units it may join.
    pub joins: Option<String>,
    /// Most entries in one list.
    pub most_per_army: Option<i64>,
    /// Painting minutes for one model.
    pub minutes_per_model: i64,
}

#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct SizeDraft {
    /// Models in the unit.
    pub models: i64,
    /// Points at this size.
    pub points: i64,
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct OptionDraft {
    /// Becomes an [`OptionKey`](super::key::OptionKey).
    pub key: String,
    /// As people call it.
    pub name: String,
    /// Points for one taking.
    pub points: i64,
    /// Whether the points are for each model.
    pub per_model: bool,
    /// How often it may be taken; 1 when absent.
    pub limit: Option<i64>,
    /// Group of options that exclude each other.
    pub group: Option<String>,
}
