//! Parts that name something: a unit, an option, a faction, a kind.

use super::{About, Scanner};
use crate::catalogue::key::{FactionKey, KindKey};
use crate::catalogue::unit::{Unit, UnitOption};
use crate::lists::reader::group::{Group, Taken};
use crate::lists::reader::names::{EXACT, Found};
use crate::lists::reader::segment::{Counts, Quantity, Segment};
use crate::lists::reader::vocabulary::Foreign;
use crate::lists::reader::{Certainty, Meaning};

/// What a name stands for.
pub(super) enum Named<'a> {
    Unit(Found<&'a Unit>),
    Option(Found<&'a UnitOption>),
    Faction(Found<&'a FactionKey>),
    Kind(&'a KindKey),
    Foreign(Foreign<'a>),
}

impl Named<'_> {
    /// How well the name fits.
    pub(super) fn score(&self) -> usize {
        match self {
            Self::Unit(found) => found.score,
            Self::Option(found) => found.score,
            Self::Faction(found) => found.score,
            Self::Kind(_) | Self::Foreign(_) => EXACT,
        }
    }

    /// Whether it is the name itself or the name with small typing errors.
    pub(super) fn is_close(&self) -> bool {
        match self {
            Self::Unit(found) => found.is_close(),
            Self::Option(found) => found.is_close(),
            Self::Faction(found) => found.is_close(),
            Self::Kind(_) | Self::Foreign(_) => true,
        }
    }

    pub(super) fn is_option(&self) -> bool {
        matches!(self, Self::Option(_))
    }
}

impl<'a> Scanner<'a> {
    pub(super) fn named(&mut self, segment: &Segment<'_>) {
        if segment.whole != segment.name && self.is_name(&segment.whole) {
            return self.named(&segment.clone().without_numbers());
        }
        match self.name(segment) {
            Some(named) => self.place(segment, &named),
            None => self.pieces(segment.text),
        }
    }

    /// Notes what a segment names, and its numbers with it.
    pub(super) fn place(&mut self, segment: &Segment<'_>, named: &Named<'a>) {
        match named {
            Named::Unit(found) if self.about == About::Joins => self.joined(segment, found),
            Named::Unit(found) => self.unit(segment, found),
            Named::Option(found) => self.taken(segment, found),
            Named::Faction(found) => self.faction(segment, found),
            Named::Kind(kind) => {
                self.understood(segment.text, Meaning::Kind((*kind).clone()));
                self.about = About::Kind((*kind).clone());
                for quantity in segment.quantities() {
                    self.number(quantity, segment.text);
                }
            }
            Named::Foreign(foreign) => self.foreign(segment, foreign),
        }
    }

    /// Whether a unit or an option of the open unit is called just this.
    pub(super) fn is_name(&mut self, form: &str) -> bool {
        let unit = self.words.units.find_exactly(form).is_some();
        let option = self
            .group()
            .and_then(|group| group.names.find_exactly(form));
        unit || option.is_some()
    }

    /// The best of what a segment may name. Of equals, an option counts on the line of its unit,
    /// the unit elsewhere. The very name of another faction's unit goes before an abbreviation.
    pub(super) fn name(&mut self, segment: &Segment<'_>) -> Option<Named<'a>> {
        let own = self.own_name(&segment.name);
        if own.as_ref().is_some_and(Named::is_close) {
            return own;
        }
        let foreign = self.words.foreign().find_exactly(&segment.name);
        foreign.map(Named::Foreign).or(own)
    }

    fn own_name(&mut self, name: &str) -> Option<Named<'a>> {
        let on_line = matches!(self.about, About::Unit | About::Option(_));
        let unit = self.words.units.find(name);
        if self.about == About::Joins {
            return unit.map(Named::Unit);
        }
        let option = self.group().and_then(|group| group.names.find(name));
        let kind = self.words.kinds.find_exactly(name);
        let faction = self.words.factions.find(name);
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
        let mut left: Vec<Quantity> = Vec::new();
        left.extend(
            segment
                .before
                .iter()
                .filter(|q| !group.says_before(**q))
                .copied(),
        );
        let after = segment.after.iter();
        left.extend(
            after
                .filter(|q| !group.says_after(**q, None, place))
                .copied(),
        );
        self.open = Some(self.out.groups.len());
        self.out.groups.push(group);
        self.about = About::Unit;
        for quantity in left {
            self.left_over(segment.text, quantity.number);
        }
    }

    fn taken(&mut self, segment: &Segment<'_>, found: &Found<&'a UnitOption>) {
        let option = found.what;
        let all = || {
            segment
                .before
                .iter()
                .map(|q| (true, *q))
                .chain(segment.after.iter().map(|q| (false, *q)))
        };
        let counting = all().find(|(_, q)| q.counts == Counts::Times);
        let counting =
            counting.or_else(|| all().find(|(before, q)| *before && q.counts == Counts::Bare));
        let taken = counting.map_or(1, |(_, q)| q.number);
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
        let mut left = Vec::new();
        for (before, quantity) in all().filter(|told| Some(*told) != counting) {
            let counts_again =
                quantity.counts == Counts::Times || before && quantity.counts == Counts::Bare;
            if counts_again || !group.says_after(quantity, Some(number), place) {
                left.push(quantity.number);
            }
        }
        self.about = About::Option(number);
        for number in left {
            self.left_over(segment.text, number);
        }
    }

    fn faction(&mut self, segment: &Segment<'_>, found: &Found<&'a FactionKey>) {
        let place = self.understood(segment.text, Meaning::Faction(found.what.clone()));
        if found.score < EXACT {
            let others = found.alternatives.iter();
            self.guess(place, others.map(ToString::to_string).collect());
        }
        if self.out.faction.is_some_and(|own| own.key() != found.what) {
            self.out.other_factions.push((found.what.clone(), place));
        }
        self.about = About::Cap;
        for quantity in segment.quantities() {
            self.number(quantity, segment.text);
        }
    }

    /// The unit that the one before joins; a second one has no meaning.
    fn joined(&mut self, segment: &Segment<'_>, found: &Found<&'a Unit>) {
        self.about = About::Unit;
        let free = self.group().is_some_and(|group| group.joins.is_none());
        if !free {
            return self.nothing(segment.text);
        }
        let place = self.understood(segment.text, Meaning::Joins(found.what.key.clone()));
        if found.score < EXACT {
            let others = found.alternatives.iter();
            self.guess(place, others.map(|unit| unit.name.to_string()).collect());
        }
        if let Some(group) = self.group() {
            group.joins = Some((found.what, place));
        }
        for quantity in segment.quantities() {
            self.left_over(segment.text, quantity.number);
        }
    }

    /// A unit that the list cannot have; what follows is not said of the unit before it.
    fn foreign(&mut self, segment: &Segment<'_>, foreign: &Foreign<'a>) {
        let meaning = Meaning::ForeignUnit {
            faction: foreign.faction.key().clone(),
            name: foreign.unit.name.to_string(),
        };
        self.part(segment.text, meaning, Certainty::NotUnderstood);
        self.open = None;
        self.about = About::Nothing;
    }
}
