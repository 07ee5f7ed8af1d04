//! A segment of a line: numbers before, a name, numbers after.

use super::tokens::{Token, normalized_text, tokenize};

/// What a number in the text seems to count.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum QuantityKind {
    /// A number alone: the text does not say what it counts.
    Bare,
    /// `2x`: so many of the same.
    Times,
    Points,
    Models,
}

/// A number of the text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Quantity {
    pub number: u32,
    /// What it seems to count.
    pub kind: QuantityKind,
}

/// A segment taken apart.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Segment<'a> {
    /// The text as it stands.
    pub text: &'a str,
    /// All of it in comparable form, numbers included.
    pub whole: String,
    /// The words between the numbers in comparable form.
    pub name: String,
    /// Numbers before the name; of a segment without a name, all numbers.
    pub before: Vec<Quantity>,
    /// Numbers after the name.
    pub after: Vec<Quantity>,
}

impl<'a> Segment<'a> {
    /// Takes a segment apart.
    pub fn parse(text: &'a str) -> Self {
        let all = tokenize(text);
        let mut rest = all.as_slice();
        let mut before = Vec::new();
        while let Some((quantity, left)) = leading(rest) {
            before.push(quantity);
            rest = left;
        }
        let mut after = Vec::new();
        while let Some((quantity, left)) = trailing(rest) {
            after.insert(0, quantity);
            rest = left;
        }
        Self {
            text,
            whole: normalized_text(&all),
            name: normalized_text(rest),
            before,
            after,
        }
    }

    /// The same with its numbers as part of the name.
    pub fn without_numbers(self) -> Self {
        Self {
            name: self.whole.clone(),
            before: Vec::new(),
            after: Vec::new(),
            ..self
        }
    }

    pub fn quantities(&self) -> impl Iterator<Item = Quantity> {
        self.before.iter().chain(&self.after).copied()
    }
}

fn leading(tokens: &[Token]) -> Option<(Quantity, &[Token])> {
    match tokens {
        [Token::Word(label), Token::Number(number), rest @ ..]
            if quantity_kind(label) == QuantityKind::Models =>
        {
            Some((quantity(*number, QuantityKind::Models), rest))
        }
        [first, Token::Word(word), rest @ ..] if quantity_kind(word) != QuantityKind::Bare => {
            Some((quantity(number(first)?, quantity_kind(word)), rest))
        }
        [Token::Times(number), rest @ ..] => Some((quantity(*number, QuantityKind::Times), rest)),
        [Token::Number(number), rest @ ..] => Some((quantity(*number, QuantityKind::Bare), rest)),
        _ => None,
    }
}

fn trailing(tokens: &[Token]) -> Option<(Quantity, &[Token])> {
    match tokens {
        [rest @ .., first, Token::Word(word)] if quantity_kind(word) != QuantityKind::Bare => {
            Some((quantity(number(first)?, quantity_kind(word)), rest))
        }
        [rest @ .., Token::Word(label), Token::Number(number)]
            if quantity_kind(label) == QuantityKind::Models =>
        {
            Some((quantity(*number, QuantityKind::Models), rest))
        }
        [rest @ .., Token::Times(number)] => Some((quantity(*number, QuantityKind::Times), rest)),
        [rest @ .., Token::Number(number)] => Some((quantity(*number, QuantityKind::Bare), rest)),
        _ => None,
    }
}

fn number(token: &Token) -> Option<u32> {
    match token {
        Token::Number(number) | Token::Times(number) => Some(*number),
        Token::Word(_) => None,
    }
}

fn quantity(number: u32, counts: QuantityKind) -> Quantity {
    Quantity {
        number,
        kind: counts,
    }
}

/// The words that say what a number counts.
fn quantity_kind(word: &str) -> QuantityKind {
    match word {
        "points" | "point" | "pts" | "pt" | "p" | "punkte" | "punkt" | "pkt" => {
            QuantityKind::Points
        }
        "models" | "model" | "figures" | "figure" | "strong" | "size" | "modelle" | "modell"
        | "figuren" | "figur" => QuantityKind::Models,
        _ => QuantityKind::Bare,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parts(text: &str) -> (Vec<Quantity>, String, Vec<Quantity>) {
        let segment = Segment::parse(text);
        (segment.before, segment.name, segment.after)
    }

    #[test]
    fn numbers_stand_before_or_after_a_name() {
        assert_eq!(
            parts("2x Turf Cutters 112 pts"),
            (
                vec![quantity(2, QuantityKind::Times)],
                "turf cutter".into(),
                vec![quantity(112, QuantityKind::Points)]
            )
        );
        assert_eq!(
            parts("Turf Cutters x2 size 8"),
            (
                vec![],
                "turf cutter".into(),
                vec![
                    quantity(2, QuantityKind::Times),
                    quantity(8, QuantityKind::Models)
                ]
            )
        );
        assert_eq!(
            parts("6 models"),
            (
                vec![quantity(6, QuantityKind::Models)],
                String::new(),
                vec![]
            )
        );
    }

    #[test]
    fn a_number_inside_a_name_stays_there() {
        assert_eq!(parts("mark 2 bow 15").1, "mark 2 bow");
    }
}
