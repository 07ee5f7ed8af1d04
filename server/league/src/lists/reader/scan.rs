//! Line by line: which part says what, and to which unit it belongs.

mod named;
mod pieces;

use super::group::{Group, Place};
use super::segment::{Counts, Quantity, Segment};
use super::vocabulary::{Vocabulary, faction_of};
use super::words::{Token, segments, spans, tokens};
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
    /// Factions named beside the one asked for.
    pub other_factions: Vec<(FactionKey, Place)>,
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
            other_factions: Vec::new(),
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
        let (first, rest) = segment.name.split_once(' ').unwrap_or((&segment.name, ""));
        let Some(about) = introduces(first).filter(|_| !self.is_name(&segment.name)) else {
            return self.named(segment);
        };
        if let Some(about) = about {
            self.about = about;
        }
        if self.about == About::Total {
            self.total(segment);
            self.understood(segment.text, Meaning::Label);
        } else if rest.is_empty() {
            for quantity in segment.quantities() {
                self.number(quantity, segment.text);
            }
            self.understood(segment.text, Meaning::Label);
        } else {
            self.pieces(segment.text);
        }
    }

    /// What a segment says of the whole list: its points, then the cap. All else is told.
    fn total(&mut self, segment: &Segment<'_>) {
        let mut numbers = 0;
        for token in tokens(segment.text) {
            match (token, numbers) {
                (Token::Number(number) | Token::Times(number), 0) => {
                    self.stated_total(segment.text, number);
                }
                (Token::Number(number) | Token::Times(number), 1) => {
                    self.understood(segment.text, Meaning::StatedCap(Points::new(number)));
                }
                (Token::Number(number) | Token::Times(number), _) => {
                    self.left_over(segment.text, number);
                }
                (Token::Word(word), _) => {
                    if !is_of_total(&word) {
                        self.nothing(standing_for(segment.text, &Token::Word(word)));
                    }
                    continue;
                }
            }
            numbers += 1;
        }
    }

    /// A number for which there is no meaning left.
    fn left_over(&mut self, text: &str, number: u32) {
        self.nothing(standing_for(text, &Token::Number(number)));
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
        let at = (self.out.lines.len().saturating_sub(1), self.parts());
        let option = self.option();
        let known = meaning != Meaning::Nothing;
        let counted = Quantity {
            counts: match meaning {
                Meaning::Models(_) => Counts::Models,
                _ => quantity.counts,
            },
            ..quantity
        };
        let open = self.group().filter(|_| known);
        if open.is_some_and(|group| group.says_after(counted, option, at)) {
            self.understood(text, meaning);
        } else {
            self.nothing(text);
        }
    }

    /// How many parts the current line has so far.
    fn parts(&self) -> usize {
        self.out.lines.last().map_or(0, |line| line.parts.len())
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

/// Whether a word, in comparable form, introduces what follows, and what numbers after it are about
/// if it says so.
fn introduces(word: &str) -> Option<Option<About>> {
    match word {
        "total" | "sum" | "point" | "pts" | "gesamt" | "summe" | "punkte" | "pkt" => {
            Some(Some(About::Total))
        }
        "cap" | "limit" | "punktgrenze" => Some(Some(About::Cap)),
        "model" | "size" | "modelle" | "modell" => Some(Some(About::Models)),
        "join" | "joining" | "lead" | "leading" => Some(Some(About::Joins)),
        "faction" | "army" | "list" | "unit" | "option" | "upgrade" | "with" | "and" | "w"
        | "fraktion" | "armee" | "liste" | "einheit" | "mit" | "und" => Some(None),
        _ => None,
    }
}

/// Words that say nothing more of a sum.
fn is_of_total(word: &str) -> bool {
    let more = [
        "points", "punkt", "p", "pt", "of", "von", "in", "all", "cost", "is", "list", "army",
    ];
    more.contains(&word) || matches!(introduces(word), Some(Some(About::Total)))
}

/// The word of a text that was read as this token; the whole text where there is none.
fn standing_for<'s>(text: &'s str, token: &Token) -> &'s str {
    let words = spans(text).into_iter();
    let mut words = words.filter_map(|(start, end)| text.get(start..end));
    let same = |read: &Token| match (read, token) {
        (Token::Times(read), Token::Number(number)) => read == number,
        (read, token) => read == token,
    };
    words
        .find(|word| tokens(word).iter().any(same))
        .unwrap_or(text)
}
