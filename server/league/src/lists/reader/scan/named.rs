//! Parts that name something: a unit, an option, a faction, a kind.

use super::{About, Scanner};
use crate::catalogue::key::{FactionKey, KindKey};
use crate::catalogue::unit::{Unit, UnitOption};
use crate::lists::reader::group::{Group, Number, Place, Taken};
use crate::lists::reader::names::{EXACT, Found};
use crate::lists::reader::segment::{Counts, Quantity, Segment};
use crate::lists::reader::{Certainty, Meaning};

/// What a name stands for.
enum Named<'a> {
    Unit(Found<&'a Unit>),
    Option(Found<&'a UnitOption>),
    Faction(Found<&'a FactionKey>),
    Kind(&'a KindKey),
}

impl<'a> Scanner<'a> {
    pub(super) fn named(&mut self, segment: &Segment<'_>) {
        if segment.whole != segment.name && self.is_name(&segment.whole) {
            return self.named(&segment.clone().without_numbers());
        }
        if self.about == About::Joins {
            return self.joined(segment);
        }
        match self.name(segment) {
            Some(Named::Unit(found)) => self.unit(segment, &found),
            Some(Named::Option(found)) => self.taken(segment, &found),
            Some(Named::Faction(found)) => self.faction(segment, &found),
            Some(Named::Kind(kind)) => {
                self.understood(segment.text, Meaning::Kind(kind.clone()));
                self.about = About::Kind(kind.clone());
                for quantity in segment.quantities() {
                    self.number(quantity, segment.text);
                }
            }
            None => self.unnamed(segment),
        }
    }

    /// Whether a unit or an option of the open unit is called just this.
    fn is_name(&mut self, form: &str) -> bool {
        let unit = self.words.units.find_exactly(form).is_some();
        let option = self
            .group()
            .and_then(|group| group.names.find_exactly(form));
        unit || option.is_some()
    }

    /// The best of what a segment may name. Of equals, an option counts on the line of its unit,
    /// the unit elsewhere.
    fn name(&mut self, segment: &Segment<'_>) -> Option<Named<'a>> {
        let on_line = matches!(self.about, About::Unit | About::Option(_));
        let unit = self.words.units.find(&segment.name);
        let option = self
            .group()
            .and_then(|group| group.names.find(&segment.name));
        let kind = self.words.kinds.find_exactly(&segment.name);
        let faction = self.words.factions.find(&segment.name);
        let score = |found: Option<usize>| found.unwrap_or(0);
        let (unit_score, option_score) = (
            score(unit.as_ref().map(|found| found.score)),
            score(option.as_ref().map(|found| found.score)),
        );
        let faction_score = score(faction.as_ref().map(|found| found.score));
        if let Some(kind) = kind
            && unit_score < EXACT
            && option_score < EXACT
        {
            return Some(Named::Kind(kind));
        }
        if faction_score > unit_score && faction_score > option_score {
            return faction.map(Named::Faction);
        }
        if option_score > unit_score || (on_line && option_score == unit_score) {
            return option.map(Named::Option);
        }
        unit.map(Named::Unit)
    }

    fn unit(&mut self, segment: &Segment<'_>, found: &Found<&'a Unit>) {
        let unit = found.what;
        let meaning = Meaning::Unit {
            unit: unit.key.clone(),
            name: unit.name.to_string(),
            models: 0,
            entries: Vec::new(),
        };
        let place = self.understood(segment.text, meaning);
        if found.score < EXACT {
            let others = found.alternatives.iter();
            self.guess(place, others.map(|unit| unit.name.to_string()).collect());
        }
        let mut group = Group::new(unit, place);
        for quantity in &segment.before {
            match quantity.counts {
                Counts::Bare => group.before = Some(quantity.number),
                Counts::Times => group.times = Some(quantity.number),
                Counts::Models => group.models = Some(quantity.number),
                Counts::Points => group.numbers.push(number_at(*quantity, place)),
            }
        }
        for quantity in &segment.after {
            match quantity.counts {
                Counts::Times => group.times = Some(quantity.number),
                Counts::Models => group.models = Some(quantity.number),
                Counts::Bare | Counts::Points => group.numbers.push(number_at(*quantity, place)),
            }
        }
        self.open = Some(self.out.groups.len());
        self.out.groups.push(group);
        self.about = About::Unit;
    }

    fn taken(&mut self, segment: &Segment<'_>, found: &Found<&'a UnitOption>) {
        let option = found.what;
        let times = segment.quantities().find(|q| q.counts == Counts::Times);
        let before = segment.before.iter().find(|q| q.counts == Counts::Bare);
        let taken = times.or(before.copied()).map_or(1, |q| q.number);
        let meaning = Meaning::Option {
            option: option.key.clone(),
            name: option.name.to_string(),
            taken,
        };
        let place = self.understood(segment.text, meaning);
        if found.score < EXACT {
            let others = found.alternatives.iter();
            self.guess(
                place,
                others.map(|option| option.name.to_string()).collect(),
            );
        }
        let Some(group) = self.group() else { return };
        let number = group.options.len();
        group.options.push(Taken { option, taken });
        for quantity in &segment.after {
            match quantity.counts {
                Counts::Bare | Counts::Points => group.numbers.push(Number {
                    option: Some(number),
                    ..number_at(*quantity, place)
                }),
                Counts::Models => group.models = Some(quantity.number),
                Counts::Times => {}
            }
        }
        self.about = About::Option(number);
    }

    fn faction(&mut self, segment: &Segment<'_>, found: &Found<&'a FactionKey>) {
        let place = self.understood(segment.text, Meaning::Faction(found.what.clone()));
        if found.score < EXACT {
            let others = found.alternatives.iter();
            self.guess(place, others.map(ToString::to_string).collect());
        }
        if self.out.faction.is_some_and(|own| own.key() != found.what) {
            self.out.other_faction = Some((found.what.clone(), place));
        }
        self.about = About::Cap;
        for quantity in segment.quantities() {
            self.number(quantity, segment.text);
        }
    }

    fn joined(&mut self, segment: &Segment<'_>) {
        self.about = About::Unit;
        let Some(found) = self
            .words
            .units
            .find(&segment.name)
            .filter(|_| self.open.is_some())
        else {
            self.part(segment.text, Meaning::Nothing, Certainty::NotUnderstood);
            return;
        };
        let place = self.understood(segment.text, Meaning::Joins(found.what.key.clone()));
        if found.score < EXACT {
            let others = found.alternatives.iter();
            self.guess(place, others.map(|unit| unit.name.to_string()).collect());
        }
        if let Some(group) = self.group() {
            group.joins = Some((found.what, place));
        }
    }

    /// A segment that names nothing as a whole may name several things.
    fn unnamed(&mut self, segment: &Segment<'_>) {
        let joint = [" and ", " & ", " with "].into_iter().find_map(|word| {
            let at = segment.text.to_ascii_lowercase().find(word)?;
            let first = segment.text.get(..at)?;
            Some((first, segment.text.get(at + word.len()..)?))
        });
        let names_something = |half: &str| {
            let half = Segment::read(half);
            !half.name.is_empty()
        };
        match joint.filter(|(first, second)| names_something(first) && names_something(second)) {
            Some((first, second)) => {
                self.segment(&Segment::read(first));
                self.segment(&Segment::read(second));
            }
            None => {
                self.part(segment.text, Meaning::Nothing, Certainty::NotUnderstood);
            }
        }
    }
}

fn number_at(quantity: Quantity, at: Place) -> Number {
    Number {
        number: quantity.number,
        surely_points: quantity.counts == Counts::Points,
        option: None,
        at,
    }
}
