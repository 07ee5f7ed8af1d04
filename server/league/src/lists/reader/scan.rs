//! Line by line: which part names what, and to which unit it belongs.

use super::group::{Group, Number, Place, Taken};
use super::names::{EXACT, Found};
use super::segment::{Counts, Quantity, Segment};
use super::vocabulary::{Vocabulary, faction_of};
use super::words::{Token, segments, tokens};
use super::{Certainty, LONGEST_LINE, MOST_LINES, Meaning, Part, ReadLine};
use crate::catalogue::key::{FactionKey, KindKey};
use crate::catalogue::unit::{Unit, UnitOption};
use crate::catalogue::{Catalogue, Faction};
use crate::points::Points;

/// A text after its lines are read and before its units are settled.
pub struct Scanned<'a> {
    /// The catalogue.
    pub catalogue: &'a Catalogue,
    /// The faction of the list.
    pub faction: Option<&'a Faction>,
    /// Every line of the text.
    pub lines: Vec<ReadLine>,
    /// The units in the order of the text.
    pub groups: Vec<Group<'a>>,
    /// Points said of the whole list.
    pub totals: Vec<(Points, Place)>,
    /// Points said of a kind.
    pub subtotals: Vec<(KindKey, Points, Place)>,
    /// A faction named beside the one asked for.
    pub other_faction: Option<(FactionKey, Place)>,
}

/// What a number alone would be about.
#[derive(Clone, Debug, PartialEq, Eq)]
enum About {
    Nothing,
    Unit,
    Option(usize),
    Models,
    Joins,
    Kind(KindKey),
    Total,
    Cap,
}

struct Scanner<'a> {
    out: Scanned<'a>,
    words: Vocabulary<'a>,
    about: About,
    /// The unit that options belong to.
    open: Option<usize>,
}

/// What a name stands for.
enum Named<'a> {
    Unit(Found<&'a Unit>),
    Option(Found<&'a UnitOption>),
    Faction(Found<&'a FactionKey>),
    Kind(&'a KindKey),
}

/// Reads every line.
pub fn scan<'a>(text: &str, catalogue: &'a Catalogue, wanted: Option<&FactionKey>) -> Scanned<'a> {
    let lines: Vec<&str> = text.lines().collect();
    let readable = lines.iter().take(MOST_LINES).map(|line| {
        let short = line.len() <= LONGEST_LINE;
        let line = if short { without_number(line) } else { "" };
        segments(line).into_iter().map(Segment::read).collect()
    });
    let parted: Vec<Vec<Segment<'_>>> = readable.collect();
    let faction = match wanted {
        Some(key) => catalogue.faction(key),
        None => faction_of(&parted, catalogue),
    };
    let mut scanner = Scanner {
        words: Vocabulary::new(catalogue, faction),
        out: Scanned {
            catalogue,
            faction,
            lines: Vec::with_capacity(lines.len()),
            groups: Vec::new(),
            totals: Vec::new(),
            subtotals: Vec::new(),
            other_faction: None,
        },
        about: About::Nothing,
        open: None,
    };
    for (i, line) in lines.into_iter().enumerate() {
        scanner.line(i, line, parted.get(i).map(Vec::as_slice));
    }
    scanner.out
}

/// The line without the `1.` or `1)` of a numbered list.
fn without_number(line: &str) -> &str {
    let trimmed = line.trim_start();
    let rest = trimmed.trim_start_matches(|c: char| c.is_ascii_digit());
    let numbered = rest.len() < trimmed.len() && rest.len() + 3 >= trimmed.len();
    let marked = rest.strip_prefix(['.', ')']);
    marked
        .filter(|rest| numbered && rest.starts_with(char::is_whitespace))
        .unwrap_or(line)
}

impl<'a> Scanner<'a> {
    fn line(&mut self, i: usize, text: &str, parted: Option<&[Segment<'_>]>) {
        self.about = About::Nothing;
        self.out.lines.push(ReadLine {
            number: i + 1,
            text: text.into(),
            parts: Vec::new(),
        });
        match parted {
            Some(segments) if text.len() <= LONGEST_LINE => {
                for segment in segments {
                    self.segment(segment);
                }
            }
            _ => drop(self.part(text, Meaning::Nothing, Certainty::NotUnderstood)),
        }
    }

    /// Notes a part of the current line.
    fn part(&mut self, text: &str, meaning: Meaning, certainty: Certainty) -> Place {
        let line = self.out.lines.len().saturating_sub(1);
        let mut place = (line, 0);
        if let Some(line) = self.out.lines.last_mut() {
            place.1 = line.parts.len();
            line.parts.push(Part {
                text: text.into(),
                meaning,
                certainty,
                alternatives: Vec::new(),
            });
        }
        place
    }

    fn understood(&mut self, text: &str, meaning: Meaning) -> Place {
        self.part(text, meaning, Certainty::Understood)
    }

    fn guess(&mut self, place: Place, alternatives: Vec<String>) {
        let line = self.out.lines.get_mut(place.0);
        if let Some(part) = line.and_then(|line| line.parts.get_mut(place.1)) {
            part.certainty = Certainty::Guessed;
            part.alternatives = alternatives;
        }
    }

    fn segment(&mut self, segment: &Segment<'_>) {
        if segment.name.is_empty() {
            return self.numbers(segment);
        }
        if let Some(rest) = self.label(segment) {
            return match rest {
                Some(rest) => self.named(&rest),
                None => drop(self.understood(segment.text, Meaning::Label)),
            };
        }
        self.named(segment);
    }

    /// Words that introduce what follows. `None` when there is no such word, `Some(None)` when
    /// there is nothing else.
    fn label<'s>(&mut self, segment: &Segment<'s>) -> Option<Option<Segment<'s>>> {
        let (first, rest) = segment.name.split_once(' ').unwrap_or((&segment.name, ""));
        match first {
            "total" | "sum" | "point" | "pts" => {
                self.about = About::Total;
                self.total(segment);
                return Some(None);
            }
            "cap" | "limit" => self.about = About::Cap,
            "model" | "size" => self.about = About::Models,
            "join" | "joining" => self.about = About::Joins,
            "faction" | "army" | "list" | "unit" | "option" | "upgrade" | "with" => {}
            _ => return None,
        }
        if rest.is_empty() {
            for quantity in segment.quantities() {
                self.number(quantity, segment.text);
            }
            return Some(None);
        }
        Some(Some(Segment {
            name: rest.into(),
            whole: rest.into(),
            ..segment.clone()
        }))
    }

    /// All numbers of a segment that speaks of the whole list: its points, then the cap.
    fn total(&mut self, segment: &Segment<'_>) {
        let mut numbers = tokens(segment.text)
            .into_iter()
            .filter_map(|token| match token {
                Token::Number(number) | Token::Times(number) => Some(number),
                Token::Word(_) => None,
            });
        if let Some(total) = numbers.next() {
            self.stated_total(segment.text, total);
        }
        if let Some(cap) = numbers.next() {
            self.understood(segment.text, Meaning::StatedCap(Points::new(cap)));
        }
    }

    fn stated_total(&mut self, text: &str, total: u32) {
        let total = Points::new(total);
        let place = self.understood(text, Meaning::StatedTotal(total));
        self.out.totals.push((total, place));
    }

    fn numbers(&mut self, segment: &Segment<'_>) {
        let pair = segment.before.len() == 2 && self.about == About::Nothing;
        if pair {
            self.about = About::Total;
        }
        if self.about == About::Total {
            return self.total(segment);
        }
        for quantity in &segment.before {
            self.number(*quantity, segment.text);
        }
    }

    /// A number alone.
    fn number(&mut self, quantity: Quantity, text: &str) {
        let number = quantity.number;
        let points = Points::new(number);
        let meaning = match (&self.about, quantity.counts) {
            (About::Total, _) => return self.stated_total(text, number),
            (About::Cap, _) => Meaning::StatedCap(points),
            (About::Kind(kind), _) => {
                let kind = kind.clone();
                let place = self.understood(text, Meaning::StatedPoints(points));
                self.out.subtotals.push((kind, points, place));
                return;
            }
            (About::Nothing, Counts::Points) if self.out.groups.is_empty() => {
                Meaning::StatedCap(points)
            }
            (About::Nothing, Counts::Points) => return self.stated_total(text, number),
            _ => return self.number_of_unit(quantity, text),
        };
        self.understood(text, meaning);
    }

    /// A number alone that can only be about the open unit.
    fn number_of_unit(&mut self, quantity: Quantity, text: &str) {
        let number = quantity.number;
        let meaning = match (&self.about, quantity.counts) {
            (About::Models, _) | (_, Counts::Models) => Meaning::Models(number),
            (About::Unit | About::Option(_), Counts::Times) => Meaning::Times(number),
            (About::Unit | About::Option(_), _) => Meaning::StatedPoints(Points::new(number)),
            _ => Meaning::Nothing,
        };
        let open = self.open.is_some() && meaning != Meaning::Nothing;
        if !open {
            self.part(text, Meaning::Nothing, Certainty::NotUnderstood);
            return;
        }
        let place = self.understood(text, meaning.clone());
        let option = self.option();
        let Some(group) = self.group() else { return };
        match meaning {
            Meaning::Models(models) => group.models = Some(models),
            Meaning::Times(times) => group.times = Some(times),
            _ => group.numbers.push(Number {
                number,
                surely_points: quantity.counts == Counts::Points,
                option,
                at: place,
            }),
        }
    }

    fn group(&mut self) -> Option<&mut Group<'a>> {
        self.out.groups.get_mut(self.open?)
    }

    /// The option that a number alone would follow.
    fn option(&self) -> Option<usize> {
        match self.about {
            About::Option(option) => Some(option),
            _ => None,
        }
    }

    fn named(&mut self, segment: &Segment<'_>) {
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
