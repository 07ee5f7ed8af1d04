//! What a text says of one unit before it is settled what that means.

use super::names::Names;
use super::segment::{Counts, Quantity};
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

impl Number {
    fn of(quantity: Quantity, option: Option<usize>, at: Place) -> Self {
        Self {
            number: quantity.number,
            surely_points: quantity.counts == Counts::Points,
            option,
            at,
        }
    }
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

    /// Takes a number that stands before the name; false when all it could mean is said already.
    pub fn says_before(&mut self, quantity: Quantity) -> bool {
        match quantity.counts {
            Counts::Bare if self.before.is_none() => self.before = Some(quantity.number),
            Counts::Bare if self.times.is_none() => {
                self.times = self.before.replace(quantity.number);
            }
            Counts::Times if self.times.is_none() => self.times = Some(quantity.number),
            Counts::Bare | Counts::Times => return false,
            Counts::Models => return self.says_models(quantity.number),
            Counts::Points => self.numbers.push(Number::of(quantity, None, self.at)),
        }
        true
    }

    /// Takes a number that stands after the name, or after the option at this place of `options`.
    pub fn says_after(&mut self, quantity: Quantity, option: Option<usize>, at: Place) -> bool {
        match quantity.counts {
            Counts::Times if self.times.is_none() => self.times = Some(quantity.number),
            Counts::Models => return self.says_models(quantity.number),
            Counts::Bare | Counts::Times | Counts::Points => {
                self.numbers.push(Number::of(quantity, option, at));
            }
        }
        true
    }

    fn says_models(&mut self, models: u32) -> bool {
        *self.models.get_or_insert(models) == models
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
