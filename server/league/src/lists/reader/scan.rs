//! Line by line: which part says what, and to which unit it belongs.

mod named;

use super::group::{Group, Number, Place};
use super::segment::{Counts, Quantity, Segment};
use super::vocabulary::{Vocabulary, faction_of};
use super::words::{Token, segments, tokens};
use super::{Certainty, LONGEST_LINE, MOST_LINES, Meaning, Part, ReadLine};
use crate::catalogue::key::{FactionKey, KindKey};
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
        .filter(|rest| rest.contains(char::is_alphanumeric))
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
        if segment.name.is_empty() && !segment.before.is_empty() {
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
            "total" | "sum" | "point" | "pts" | "gesamt" | "summe" | "punkte" | "pkt" => {
                self.about = About::Total;
                self.total(segment);
                return Some(None);
            }
            "cap" | "limit" | "punktgrenze" => self.about = About::Cap,
            "model" | "size" | "modelle" | "modell" => self.about = About::Models,
            "join" | "joining" => self.about = About::Joins,
            "faction" | "army" | "list" | "unit" | "option" | "upgrade" | "with" | "fraktion"
            | "armee" | "liste" | "einheit" | "mit" => {}
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
}
