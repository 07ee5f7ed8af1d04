//! One unit of a faction: its sizes, options, kind and keywords.

use crate::catalogue::key::{GroupKey, Keyword, KindKey, OptionKey, UnitKey};
use crate::name::Name;
use crate::points::Points;

/// One allowed size of a unit. Points need not grow in line with models.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Size {
    /// Models in the unit, at least 1.
    pub models: u32,
    /// Points of the unit at this size, without options.
    pub points: Points,
}

/// What taking an option once costs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OptionPrice {
    /// So many points for the unit, whatever its size.
    PerUnit(Points),
    /// So many points for every model of the unit.
    PerModel(Points),
}

impl OptionPrice {
    /// Points for one taking in a unit of so many models.
    pub fn for_models(self, models: u32) -> Points {
        match self {
            Self::PerUnit(points) => points,
            Self::PerModel(points) => points.saturating_mul(models),
        }
    }
}

/// Something a unit may take beside its models.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UnitOption {
    /// Unique within the unit.
    pub key: OptionKey,
    /// As people call it.
    pub name: Name,
    /// Cost of taking it once.
    pub price: OptionPrice,
    /// How often one unit may take it, at least 1.
    pub limit: u32,
    /// At most one option of a group may be taken by one unit.
    pub group: Option<GroupKey>,
}

/// A unit that an army list of its faction may hold.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unit {
    /// Unique within the faction.
    pub key: UnitKey,
    /// As people call it.
    pub name: Name,
    /// Its kind, which count and share rules refer to.
    pub kind: KindKey,
    /// In the catalogue's order, without doubles.
    pub keywords: Vec<Keyword>,
    /// At least one, ascending by models, no model count twice.
    pub sizes: Vec<Size>,
    /// In the catalogue's order.
    pub options: Vec<UnitOption>,
    /// A leader with this may join a unit that carries the keyword.
    pub joins: Option<Keyword>,
    /// Most entries of this unit in one list, whatever the season's rules say.
    pub most_per_army: Option<u32>,
    /// Painting time to the season's standard, in minutes for one model.
    pub minutes_per_model: u32,
}

impl Unit {
    /// Points at exactly this size, without options; `None` when the size is not offered.
    pub fn points_at(&self, models: u32) -> Option<Points> {
        self.sizes
            .iter()
            .find(|size| size.models == models)
            .map(|size| size.points)
    }

    /// The largest offered size of at most so many models.
    pub fn size_within(&self, models: u32) -> Option<Size> {
        self.sizes
            .iter()
            .rev()
            .find(|size| size.models <= models)
            .copied()
    }

    /// The option of this key.
    pub fn option(&self, key: &OptionKey) -> Option<&UnitOption> {
        self.options.iter().find(|option| &option.key == key)
    }

    /// Whether the unit carries the keyword.
    pub fn has_keyword(&self, keyword: &Keyword) -> bool {
        self.keywords.contains(keyword)
    }

    /// The cheapest it can be fielded for.
    pub fn min_points(&self) -> Points {
        self.sizes
            .iter()
            .map(|size| size.points)
            .min()
            .unwrap_or_default()
    }
}
