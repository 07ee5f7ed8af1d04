//! Scanning of names: of units, options, factions and kinds.

use messages::findings;

use super::{NumberContext, Scanner};
use crate::catalogue::key::{FactionKey, KindKey};
use crate::catalogue::unit::{Unit, UnitOption};
use crate::lists::reader::mentions::{OptionMention, UnitMention};
use crate::lists::reader::name_index::{EXACT, NameMatch};
use crate::lists::reader::segment::{Quantity, QuantityKind, Segment};
use crate::lists::reader::vocabulary::ForeignUnit;
use crate::lists::reader::{Certainty, Meaning};

/// What a name stands for.
pub(super) enum NameTarget<'a> {
    Unit(NameMatch<&'a Unit>),
    Option(NameMatch<&'a UnitOption>),
    Faction(NameMatch<&'a FactionKey>),
    Kind(&'a KindKey),
    Foreign(ForeignUnit<'a>),
}

impl NameTarget<'_> {
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
    pub(super) fn scan_name(&mut self, segment: &Segment<'_>) {
        if segment.whole != segment.name && self.is_name(&segment.whole) {
            return self.scan_name(&segment.clone().without_numbers());
        }
        match self.find_name(segment) {
            Some(named) => self.push_name(segment, &named),
            None => self.scan_pieces(segment.text),
        }
    }

    /// Notes what a segment names, and its numbers with it.
    pub(super) fn push_name(&mut self, segment: &Segment<'_>, named: &NameTarget<'a>) {
        match named {
            NameTarget::Unit(found) if self.context == NumberContext::Joins => {
                self.push_joined(segment, found)
            }
            NameTarget::Unit(found) => self.push_unit(segment, found),
            NameTarget::Option(found) => self.push_option(segment, found),
            NameTarget::Faction(found) => self.push_faction(segment, found),
            NameTarget::Kind(kind) => {
                self.push_understood(segment.text, Meaning::Kind((*kind).clone()));
                self.context = NumberContext::Kind((*kind).clone());
                for quantity in segment.quantities() {
                    self.scan_number(quantity, segment.text);
                }
            }
            NameTarget::Foreign(foreign) => self.push_foreign(segment, foreign),
        }
    }

    /// Whether a unit or an option of the open unit is called just this.
    pub(super) fn is_name(&mut self, form: &str) -> bool {
        let unit = self.vocabulary.units.find_exact(form).is_some();
        let option = self
            .open_unit()
            .and_then(|mention| mention.names.find_exact(form));
        unit || option.is_some()
    }

    /// The best of what a segment may name. Of equals, an option counts on the line of its unit,
    /// the unit elsewhere. The very name of another faction's unit goes before an abbreviation.
    pub(super) fn find_name(&mut self, segment: &Segment<'_>) -> Option<NameTarget<'a>> {
        let own = self.find_own_name(&segment.name);
        if own.as_ref().is_some_and(NameTarget::is_close) {
            return own;
        }
        let foreign = self.vocabulary.foreign().find_exact(&segment.name);
        foreign.map(NameTarget::Foreign).or(own)
    }

    fn find_own_name(&mut self, name: &str) -> Option<NameTarget<'a>> {
        let on_line = matches!(self.context, NumberContext::Unit | NumberContext::Option(_));
        let unit = self.vocabulary.units.find(name);
        if self.context == NumberContext::Joins {
            return unit.map(NameTarget::Unit);
        }
        let option = self
            .open_unit()
            .and_then(|mention| mention.names.find(name));
        let kind = self.vocabulary.kinds.find_exact(name);
        let faction = self.vocabulary.factions.find(name);
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
            return Some(NameTarget::Kind(kind));
        }
        if faction_score > unit_score && faction_score > option_score {
            return faction.map(NameTarget::Faction);
        }
        if option_score > unit_score || (on_line && option_score == unit_score) {
            return option.map(NameTarget::Option);
        }
        unit.map(NameTarget::Unit)
    }

    fn push_unit(&mut self, segment: &Segment<'_>, found: &NameMatch<&'a Unit>) {
        let unit = found.value;
        let meaning = Meaning::Unit {
            unit: unit.key.clone(),
            name: unit.name.to_string(),
            models: 0,
            entries: Vec::new(),
        };
        let place = self.push_understood(segment.text, meaning);
        if found.score < EXACT {
            let others = found.alternatives.iter();
            self.mark_guessed(
                place,
                others
                    .map(|unit| findings::reading_name(&unit.name))
                    .collect(),
            );
        }
        let mut mention = UnitMention::new(unit, place);
        let mut left: Vec<Quantity> = Vec::new();
        left.extend(
            segment
                .before
                .iter()
                .filter(|q| !mention.take_before(**q))
                .copied(),
        );
        let after = segment.after.iter();
        left.extend(
            after
                .filter(|q| !mention.take_after(**q, None, place))
                .copied(),
        );
        self.open = Some(self.out.units.len());
        self.out.units.push(mention);
        self.context = NumberContext::Unit;
        for quantity in left {
            self.push_surplus_number(segment.text, quantity.number);
        }
    }

    fn push_option(&mut self, segment: &Segment<'_>, found: &NameMatch<&'a UnitOption>) {
        let option = found.value;
        let all = || {
            segment
                .before
                .iter()
                .map(|q| (true, *q))
                .chain(segment.after.iter().map(|q| (false, *q)))
        };
        let counting = all().find(|(_, q)| q.kind == QuantityKind::Times);
        let counting =
            counting.or_else(|| all().find(|(before, q)| *before && q.kind == QuantityKind::Bare));
        let taken = counting.map_or(1, |(_, q)| q.number);
        let meaning = Meaning::Option {
            option: option.key.clone(),
            name: option.name.to_string(),
            taken,
        };
        let place = self.push_understood(segment.text, meaning);
        if found.score < EXACT {
            let others = found.alternatives.iter();
            self.mark_guessed(
                place,
                others
                    .map(|option| findings::reading_name(&option.name))
                    .collect(),
            );
        }
        let Some(mention) = self.open_unit() else {
            return;
        };
        let number = mention.options.len();
        mention.options.push(OptionMention { option, taken });
        let mut left = Vec::new();
        for (before, quantity) in all().filter(|told| Some(*told) != counting) {
            let counts_again = quantity.kind == QuantityKind::Times
                || before && quantity.kind == QuantityKind::Bare;
            if counts_again || !mention.take_after(quantity, Some(number), place) {
                left.push(quantity.number);
            }
        }
        self.context = NumberContext::Option(number);
        for number in left {
            self.push_surplus_number(segment.text, number);
        }
    }

    fn push_faction(&mut self, segment: &Segment<'_>, found: &NameMatch<&'a FactionKey>) {
        let place = self.push_understood(segment.text, Meaning::Faction(found.value.clone()));
        if found.score < EXACT {
            let others = found.alternatives.iter();
            self.mark_guessed(place, others.map(findings::reading_name).collect());
        }
        if self.out.faction.is_some_and(|own| own.key() != found.value) {
            self.out.other_factions.push((found.value.clone(), place));
        }
        self.context = NumberContext::Cap;
        for quantity in segment.quantities() {
            self.scan_number(quantity, segment.text);
        }
    }

    /// The unit that the one before joins; a second one has no meaning.
    fn push_joined(&mut self, segment: &Segment<'_>, found: &NameMatch<&'a Unit>) {
        self.context = NumberContext::Unit;
        let free = self
            .open_unit()
            .is_some_and(|mention| mention.joins.is_none());
        if !free {
            return self.push_not_understood(segment.text);
        }
        let place = self.push_understood(segment.text, Meaning::Joins(found.value.key.clone()));
        if found.score < EXACT {
            let others = found.alternatives.iter();
            self.mark_guessed(
                place,
                others
                    .map(|unit| findings::reading_name(&unit.name))
                    .collect(),
            );
        }
        if let Some(mention) = self.open_unit() {
            mention.joins = Some((found.value, place));
        }
        for quantity in segment.quantities() {
            self.push_surplus_number(segment.text, quantity.number);
        }
    }

    /// A unit that the list cannot have; what follows does not belong to the unit before it.
    fn push_foreign(&mut self, segment: &Segment<'_>, foreign: &ForeignUnit<'a>) {
        let meaning = Meaning::ForeignUnit {
            faction: foreign.faction.key().clone(),
            name: foreign.unit.name.to_string(),
        };
        self.push_part(segment.text, meaning, Certainty::NotUnderstood);
        self.open = None;
        self.context = NumberContext::Nothing;
    }
}
