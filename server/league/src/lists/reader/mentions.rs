//! Mentions: what a text says of one unit, before its meaning is resolved.

use super::name_index::NameIndex;
use super::segment::{Quantity, QuantityKind};
use crate::catalogue::unit::{Unit, UnitOption};
use crate::points::Points;

/// A line and a part of it, both counted from 0.
pub type PartIndex = (usize, usize);

/// A unit named by the text, with everything that the text says about it.
#[derive(Clone, Debug)]
pub struct UnitMention<'a> {
    pub unit: &'a Unit,
    /// Its options by name.
    pub names: NameIndex<&'a UnitOption>,
    /// The part that names it.
    pub at: PartIndex,
    /// `2x`.
    pub times: Option<u32>,
    /// A number alone before the name.
    pub before: Option<u32>,
    /// `6 models`.
    pub models: Option<u32>,
    /// Numbers alone and points after the name, in order.
    pub numbers: Vec<NumberMention>,
    pub options: Vec<OptionMention<'a>>,
    /// The unit it joins.
    pub joins: Option<(&'a Unit, PartIndex)>,
}

/// An option named by the text.
#[derive(Clone, Copy, Debug)]
pub struct OptionMention<'a> {
    pub option: &'a UnitOption,
    pub taken: u32,
}

/// A number that may be points of the unit, of the option before it, or models.
#[derive(Clone, Copy, Debug)]
pub struct NumberMention {
    pub number: u32,
    /// Whether the text says that it is points.
    pub surely_points: bool,
    /// The place in `options` of the option it follows.
    pub option: Option<usize>,
    /// The part it stands in.
    pub at: PartIndex,
}

impl NumberMention {
    fn from_quantity(quantity: Quantity, option: Option<usize>, at: PartIndex) -> Self {
        Self {
            number: quantity.number,
            surely_points: quantity.kind == QuantityKind::Points,
            option,
            at,
        }
    }
}

impl<'a> UnitMention<'a> {
    /// A unit by name alone.
    pub fn new(unit: &'a Unit, at: PartIndex) -> Self {
        let options = unit.options.iter();
        Self {
            unit,
            names: NameIndex::new(options.map(|option| (option.name.as_str(), option))),
            at,
            times: None,
            before: None,
            models: None,
            numbers: Vec::new(),
            options: Vec::new(),
            joins: None,
        }
    }

    /// Takes a number that stands before the name; false when all that it could mean is known already.
    pub fn take_before(&mut self, quantity: Quantity) -> bool {
        match quantity.kind {
            QuantityKind::Bare if self.before.is_none() => self.before = Some(quantity.number),
            QuantityKind::Bare if self.times.is_none() => {
                self.times = self.before.replace(quantity.number);
            }
            QuantityKind::Times if self.times.is_none() => self.times = Some(quantity.number),
            QuantityKind::Bare | QuantityKind::Times => return false,
            QuantityKind::Models => return self.take_models(quantity.number),
            QuantityKind::Points => self
                .numbers
                .push(NumberMention::from_quantity(quantity, None, self.at)),
        }
        true
    }

    /// Takes a number that stands after the name, or after the option at this place of `options`.
    pub fn take_after(&mut self, quantity: Quantity, option: Option<usize>, at: PartIndex) -> bool {
        match quantity.kind {
            QuantityKind::Times if self.times.is_none() => self.times = Some(quantity.number),
            QuantityKind::Models => return self.take_models(quantity.number),
            QuantityKind::Bare | QuantityKind::Times | QuantityKind::Points => {
                self.numbers
                    .push(NumberMention::from_quantity(quantity, option, at));
            }
        }
        true
    }

    fn take_models(&mut self, models: u32) -> bool {
        *self.models.get_or_insert(models) == models
    }

    /// Points of one such unit without options; `None` when the size is not offered.
    pub fn unit_points(&self, models: u32) -> Option<Points> {
        self.unit.points_at(models)
    }

    /// Points of the options of one such unit.
    pub fn option_points(&self, models: u32) -> Points {
        let options = self.options.iter();
        options
            .map(|taken| {
                taken
                    .option
                    .price
                    .for_models(models)
                    .saturating_mul(taken.taken)
            })
            .sum()
    }
}
