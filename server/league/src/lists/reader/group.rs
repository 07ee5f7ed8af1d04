//! What a text says of one unit before it is settled what that means.

use super::names::Names;
use crate::catalogue::unit::{Unit, UnitOption};
use crate::points::Points;

/// A line and a part of it, both counted from 0.
pub type Place = (usize, usize);

/// A unit named by the text with everything said of it.
#[derive(Clone, Debug)]
pub struct Group<'a> {
    /// The unit.
    pub unit: &'a Unit,
    /// Its options by name.
    pub names: Names<&'a UnitOption>,
    /// The part that names it.
    pub at: Place,
    /// `2x`.
    pub times: Option<u32>,
    /// A number alone before the name.
    pub before: Option<u32>,
    /// `6 models`.
    pub models: Option<u32>,
    /// Numbers alone and points after the name, in order.
    pub numbers: Vec<Number>,
    /// Options taken.
    pub options: Vec<Taken<'a>>,
    /// The unit it joins.
    pub joins: Option<(&'a Unit, Place)>,
}

/// An option named by the text.
#[derive(Clone, Copy, Debug)]
pub struct Taken<'a> {
    /// The option.
    pub option: &'a UnitOption,
    /// How often.
    pub taken: u32,
}

/// A number that may be points of the unit, of the option before it, or models.
#[derive(Clone, Copy, Debug)]
pub struct Number {
    /// The number.
    pub number: u32,
    /// Whether the text says that it is points.
    pub surely_points: bool,
    /// The place in `options` of the option it follows.
    pub option: Option<usize>,
    /// The part it stands in.
    pub at: Place,
}

impl<'a> Group<'a> {
    /// A unit of which nothing else is said yet.
    pub fn new(unit: &'a Unit, at: Place) -> Self {
        let options = unit.options.iter();
        Self {
            unit,
            names: Names::new(options.map(|option| (option.name.as_str(), option))),
            at,
            times: None,
            before: None,
            models: None,
            numbers: Vec::new(),
            options: Vec::new(),
            joins: None,
        }
    }

    /// Points of one such unit without options; `None` when the size is not offered.
    pub fn body(&self, models: u32) -> Option<Points> {
        self.unit.points_at(models)
    }

    /// Points of the options of one such unit.
    pub fn option_points(&self, models: u32) -> Points {
        let options = self.options.iter();
        options
            .map(|taken| taken.option.price.for_models(models).times(taken.taken))
            .sum()
    }
}
