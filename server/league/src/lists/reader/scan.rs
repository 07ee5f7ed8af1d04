//! Scanner: line by line, which part says what, and to which unit it belongs.

mod named;
mod pieces;

use messages::Message;

use super::mentions::{PartIndex, UnitMention};
use super::segment::{Quantity, QuantityKind, Segment};
use super::tokens::{Token, split_segments, tokenize, word_spans};
use super::vocabulary::{Vocabulary, detect_faction};
use super::{Certainty, LinePart, MAX_LINE_BYTES, MAX_LINES, Meaning, ReadLine};
use crate::catalogue::key::{FactionKey, KindKey};
use crate::catalogue::{Catalogue, Faction};
use crate::points::Points;

/// A text after scanning, before its units are resolved.
pub struct ScannedText<'a> {
    pub catalogue: &'a Catalogue,
    /// The faction of the list.
    pub faction: Option<&'a Faction>,
    /// Every line of the text.
    pub lines: Vec<ReadLine>,
    /// The units in the order of the text.
    pub units: Vec<UnitMention<'a>>,
    /// Points stated for the whole list.
    pub totals: Vec<(Points, PartIndex)>,
    /// Points stated for a kind.
    pub subtotals: Vec<(KindKey, Points, PartIndex)>,
    /// Factions named beside the one asked for.
    pub other_factions: Vec<(FactionKey, PartIndex)>,
}

/// What a number alone would be about.
#[derive(Clone, Debug, PartialEq, Eq)]
enum NumberContext {
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
    out: ScannedText<'a>,
    vocabulary: Vocabulary<'a>,
    context: NumberContext,
    /// The unit that options belong to.
    open: Option<usize>,
}

pub fn scan<'a>(
    text: &str,
    catalogue: &'a Catalogue,
    wanted: Option<&FactionKey>,
) -> ScannedText<'a> {
    let lines: Vec<&str> = text.lines().collect();
    let readable = lines.iter().take(MAX_LINES).map(|line| {
        let short = line.len() <= MAX_LINE_BYTES;
        let line = if short { without_number(line) } else { "" };
        split_segments(line)
            .into_iter()
            .map(Segment::parse)
            .collect()
    });
    let parted: Vec<Vec<Segment<'_>>> = readable.collect();
    let faction = match wanted {
        Some(key) => catalogue.faction(key),
        None => detect_faction(&parted, catalogue),
    };
    let mut scanner = Scanner {
        vocabulary: Vocabulary::new(catalogue, faction),
        out: ScannedText {
            catalogue,
            faction,
            lines: Vec::with_capacity(lines.len()),
            units: Vec::new(),
            totals: Vec::new(),
            subtotals: Vec::new(),
            other_factions: Vec::new(),
        },
        context: NumberContext::Nothing,
        open: None,
    };
    for (i, line) in lines.into_iter().enumerate() {
        scanner.scan_line(i, line, parted.get(i).map(Vec::as_slice));
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
    fn scan_line(&mut self, i: usize, text: &str, parted: Option<&[Segment<'_>]>) {
        self.context = NumberContext::Nothing;
        self.out.lines.push(ReadLine {
            number: i + 1,
            text: text.into(),
            parts: Vec::new(),
        });
        match parted {
            Some(segments) if text.len() <= MAX_LINE_BYTES => {
                for segment in segments {
                    self.scan_segment(segment);
                }
            }
            _ => drop(self.push_part(text, Meaning::Nothing, Certainty::NotUnderstood)),
        }
    }

    /// Notes a part of the current line.
    fn push_part(&mut self, text: &str, meaning: Meaning, certainty: Certainty) -> PartIndex {
        let line = self.out.lines.len().saturating_sub(1);
        let mut place = (line, 0);
        if let Some(line) = self.out.lines.last_mut() {
            place.1 = line.parts.len();
            line.parts.push(LinePart {
                text: text.into(),
                meaning,
                certainty,
                alternatives: Vec::new(),
            });
        }
        place
    }

    fn push_understood(&mut self, text: &str, meaning: Meaning) -> PartIndex {
        self.push_part(text, meaning, Certainty::Understood)
    }

    fn mark_guessed(&mut self, place: PartIndex, alternatives: Vec<Message>) {
        let line = self.out.lines.get_mut(place.0);
        if let Some(part) = line.and_then(|line| line.parts.get_mut(place.1)) {
            part.certainty = Certainty::Guessed;
            part.alternatives = alternatives;
        }
    }

    fn scan_segment(&mut self, segment: &Segment<'_>) {
        if segment.name.is_empty() && !segment.before.is_empty() {
            return self.scan_numbers(segment);
        }
        let (first, rest) = segment.name.split_once(' ').unwrap_or((&segment.name, ""));
        let Some(about) = introduced_context(first).filter(|_| !self.is_name(&segment.name)) else {
            return self.scan_name(segment);
        };
        if let Some(about) = about {
            self.context = about;
        }
        if self.context == NumberContext::Total {
            self.scan_total(segment);
            self.push_understood(segment.text, Meaning::Label);
        } else if rest.is_empty() {
            for quantity in segment.quantities() {
                self.scan_number(quantity, segment.text);
            }
            self.push_understood(segment.text, Meaning::Label);
        } else {
            self.scan_pieces(segment.text);
        }
    }

    /// What a segment says about the whole list: its points, then the cap. All else is reported.
    fn scan_total(&mut self, segment: &Segment<'_>) {
        let mut numbers = 0;
        for token in tokenize(segment.text) {
            match (token, numbers) {
                (Token::Number(number) | Token::Times(number), 0) => {
                    self.push_stated_total(segment.text, number);
                }
                (Token::Number(number) | Token::Times(number), 1) => {
                    self.push_understood(segment.text, Meaning::StatedCap(Points::new(number)));
                }
                (Token::Number(number) | Token::Times(number), _) => {
                    self.push_surplus_number(segment.text, number);
                }
                (Token::Word(word), _) => {
                    if !is_total_word(&word) {
                        self.push_not_understood(source_word(segment.text, &Token::Word(word)));
                    }
                    continue;
                }
            }
            numbers += 1;
        }
    }

    /// A number for which there is no meaning left.
    fn push_surplus_number(&mut self, text: &str, number: u32) {
        self.push_not_understood(source_word(text, &Token::Number(number)));
    }

    fn push_stated_total(&mut self, text: &str, total: u32) {
        let total = Points::new(total);
        let place = self.push_understood(text, Meaning::StatedTotal(total));
        self.out.totals.push((total, place));
    }

    fn scan_numbers(&mut self, segment: &Segment<'_>) {
        let pair = segment.before.len() == 2 && self.context == NumberContext::Nothing;
        if pair {
            self.context = NumberContext::Total;
        }
        if self.context == NumberContext::Total {
            return self.scan_total(segment);
        }
        for quantity in &segment.before {
            self.scan_number(*quantity, segment.text);
        }
    }

    /// A number alone.
    fn scan_number(&mut self, quantity: Quantity, text: &str) {
        let number = quantity.number;
        let points = Points::new(number);
        let meaning = match (&self.context, quantity.kind) {
            (NumberContext::Total, _) => return self.push_stated_total(text, number),
            (NumberContext::Cap, _) => Meaning::StatedCap(points),
            (NumberContext::Kind(kind), _) => {
                let kind = kind.clone();
                let place = self.push_understood(text, Meaning::StatedPoints(points));
                self.out.subtotals.push((kind, points, place));
                return;
            }
            (NumberContext::Nothing, QuantityKind::Points) if self.out.units.is_empty() => {
                Meaning::StatedCap(points)
            }
            (NumberContext::Nothing, QuantityKind::Points) => {
                return self.push_stated_total(text, number);
            }
            _ => return self.scan_unit_number(quantity, text),
        };
        self.push_understood(text, meaning);
    }

    /// A number alone that can only be about the open unit.
    fn scan_unit_number(&mut self, quantity: Quantity, text: &str) {
        let number = quantity.number;
        let meaning = match (&self.context, quantity.kind) {
            (NumberContext::Models, _) | (_, QuantityKind::Models) => Meaning::Models(number),
            (NumberContext::Unit | NumberContext::Option(_), QuantityKind::Times) => {
                Meaning::Times(number)
            }
            (NumberContext::Unit | NumberContext::Option(_), _) => {
                Meaning::StatedPoints(Points::new(number))
            }
            _ => Meaning::Nothing,
        };
        let at = (self.out.lines.len().saturating_sub(1), self.part_count());
        let option = self.current_option();
        let known = meaning != Meaning::Nothing;
        let counted = Quantity {
            kind: match meaning {
                Meaning::Models(_) => QuantityKind::Models,
                _ => quantity.kind,
            },
            ..quantity
        };
        let open = self.open_unit().filter(|_| known);
        if open.is_some_and(|mention| mention.take_after(counted, option, at)) {
            self.push_understood(text, meaning);
        } else {
            self.push_not_understood(text);
        }
    }

    /// How many parts the current line has so far.
    fn part_count(&self) -> usize {
        self.out.lines.last().map_or(0, |line| line.parts.len())
    }

    fn open_unit(&mut self) -> Option<&mut UnitMention<'a>> {
        self.out.units.get_mut(self.open?)
    }

    /// The option that a number alone would follow.
    fn current_option(&self) -> Option<usize> {
        match self.context {
            NumberContext::Option(option) => Some(option),
            _ => None,
        }
    }
}

/// Whether a word, in comparable form, introduces what follows, and what numbers after it are about
/// if it says so.
fn introduced_context(word: &str) -> Option<Option<NumberContext>> {
    match word {
        "total" | "sum" | "point" | "pts" | "gesamt" | "summe" | "punkte" | "pkt" => {
            Some(Some(NumberContext::Total))
        }
        "cap" | "limit" | "punktgrenze" => Some(Some(NumberContext::Cap)),
        "model" | "size" | "modelle" | "modell" => Some(Some(NumberContext::Models)),
        "join" | "joining" | "lead" | "leading" => Some(Some(NumberContext::Joins)),
        "faction" | "army" | "list" | "unit" | "option" | "upgrade" | "with" | "and" | "w"
        | "fraktion" | "armee" | "liste" | "einheit" | "mit" | "und" => Some(None),
        _ => None,
    }
}

/// Words that say nothing more of a sum.
fn is_total_word(word: &str) -> bool {
    let more = [
        "points", "punkt", "p", "pt", "of", "von", "in", "all", "cost", "is", "list", "army",
    ];
    more.contains(&word) || matches!(introduced_context(word), Some(Some(NumberContext::Total)))
}

/// The word of a text that was read as this token; the whole text where there is none.
fn source_word<'s>(text: &'s str, token: &Token) -> &'s str {
    let words = word_spans(text).into_iter();
    let mut words = words.filter_map(|(start, end)| text.get(start..end));
    let same = |read: &Token| match (read, token) {
        (Token::Times(read), Token::Number(number)) => read == number,
        (read, token) => read == token,
    };
    words
        .find(|word| tokenize(word).iter().any(same))
        .unwrap_or(text)
}
