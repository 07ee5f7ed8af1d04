//! Scanning of a segment that names nothing as a whole, piece by piece from the left: names with the
//! numbers beside them, introducing words, numbers alone; what is left is reported as not understood.

use super::named::NameTarget;
use super::{NumberContext, Scanner, introduced_context};
use crate::lists::reader::segment::Segment;
use crate::lists::reader::tokens::word_spans;
use crate::lists::reader::{Certainty, Meaning};

/// Words of a piece: a name with its numbers.
const MAX_PIECE_WORDS: usize = 7;
/// Words of a segment that is taken apart; a longer one is reported as a whole.
const MAX_SENTENCE_WORDS: usize = 24;

/// So many words, read together, and what they name.
struct Piece<'a, 's> {
    words: usize,
    segment: Segment<'s>,
    named: Option<NameTarget<'a>>,
}

impl<'a> Scanner<'a> {
    pub(super) fn scan_pieces(&mut self, text: &str) {
        let words = word_spans(text);
        if words.is_empty() || words.len() > MAX_SENTENCE_WORDS {
            return self.push_not_understood(text);
        }
        let mut unknown: Option<(usize, usize)> = None;
        let mut at = 0;
        let mut begun = false;
        while let Some(&(start, end)) = words.get(at) {
            let Some(piece) = self.find_piece(text, &words, at, begun) else {
                begun = true;
                unknown = Some((unknown.map_or(start, |(from, _)| from), end));
                at += 1;
                continue;
            };
            self.push_unknown(text, unknown.take());
            at += piece.words;
            begun |= piece.named.is_some();
            match piece.named {
                Some(named) => self.push_name(&piece.segment, &named),
                None => self.push_nameless(&piece.segment),
            }
        }
        if unknown.is_some() && self.context == NumberContext::Joins {
            self.context = NumberContext::Unit;
        }
        self.push_unknown(text, unknown);
    }

    fn push_unknown(&mut self, text: &str, words: Option<(usize, usize)>) {
        if let Some(text) = words.and_then(|(start, end)| text.get(start..end)) {
            self.push_not_understood(text);
        }
    }

    pub(super) fn push_not_understood(&mut self, text: &str) {
        self.push_part(text, Meaning::Nothing, Certainty::NotUnderstood);
    }

    /// What begins at a word: a name; numbers alone; a word that introduces what follows. Only the
    /// first name, a unit that is joined and an option may be abbreviated.
    fn find_piece<'s>(
        &mut self,
        text: &'s str,
        words: &[(usize, usize)],
        at: usize,
        begun: bool,
    ) -> Option<Piece<'a, 's>> {
        let mut windows = windows(text, words, at);
        let introduces = windows.first().is_some_and(|first| is_label(&first.1));
        if let Some((window, named)) = self.best_window(&windows) {
            let awaited = !begun || self.context == NumberContext::Joins || named.is_option();
            let may_be_short = awaited && !introduces;
            if named.is_close() || may_be_short {
                let (words, segment) = windows.swap_remove(window);
                let named = Some(named);
                return Some(Piece {
                    words,
                    segment,
                    named,
                });
            }
        }
        let numbers = |segment: &Segment<'_>| segment.name.is_empty() && !segment.before.is_empty();
        let numbers = windows.iter().rposition(|(_, segment)| numbers(segment));
        let nameless = numbers.or(introduces.then_some(0))?;
        let (words, segment) = windows.swap_remove(nameless);
        Some(Piece {
            words,
            segment,
            named: None,
        })
    }

    /// The window with the surest name; of equals, the one with most words.
    fn best_window(&mut self, windows: &[(usize, Segment<'_>)]) -> Option<(usize, NameTarget<'a>)> {
        let named = windows.iter().enumerate().filter_map(|(i, (_, segment))| {
            let named = self.find_name(segment)?;
            Some((i, named))
        });
        named.max_by_key(|(_, named)| named.score())
    }

    /// Numbers alone, or a word that introduces what follows.
    fn push_nameless(&mut self, segment: &Segment<'_>) {
        if segment.name.is_empty() {
            return self.scan_numbers(segment);
        }
        if let Some(Some(about)) = introduced_context(&segment.name) {
            self.context = about;
        }
        self.push_understood(segment.text, Meaning::Label);
    }
}

fn is_label(segment: &Segment<'_>) -> bool {
    introduced_context(&segment.name).is_some() && segment.quantities().next().is_none()
}

/// The stretches of words that begin at one of them, each read as a segment. A `2x` before a further
/// word counts what follows.
fn windows<'s>(text: &'s str, words: &[(usize, usize)], at: usize) -> Vec<(usize, Segment<'s>)> {
    let rest = words.get(at..).unwrap_or_default();
    let Some(&(start, _)) = rest.first() else {
        return Vec::new();
    };
    let counted = rest
        .iter()
        .take(MAX_PIECE_WORDS)
        .enumerate()
        .filter(|(i, span)| {
            let word = text.get(span.0..span.1).unwrap_or_default();
            let times =
                word.starts_with(|c: char| c.is_ascii_digit()) && word.ends_with(['x', 'X', '×']);
            *i == 0 || !times || i + 1 == rest.len()
        });
    counted
        .filter_map(|(i, span)| Some((i + 1, Segment::parse(text.get(start..span.1)?))))
        .collect()
}
