//! A segment taken apart: numbers before, a name, numbers after.

use super::words::{Token, text_of, tokens};

/// What a number in the text seems to count.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Counts {
    /// Nothing is said.
    Bare,
    /// `2x`: so many of the same.
    Times,
    /// Points.
    Points,
    /// Models.
    Models,
}

/// A number of the text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Quantity {
    /// The number.
    pub number: u32,
    /// What it seems to count.
    pub counts: Counts,
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
    pub fn read(text: &'a str) -> Self {
        let all = tokens(text);
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
            whole: text_of(&all),
            name: text_of(rest),
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

    /// All numbers.
    pub fn quantities(&self) -> impl Iterator<Item = Quantity> {
        self.before.iter().chain(&self.after).copied()
    }
}

fn leading(tokens: &[Token]) -> Option<(Quantity, &[Token])> {
    match tokens {
        [Token::Word(label), Token::Number(number), rest @ ..]
            if counts(label) == Counts::Models =>
        {
            Some((quantity(*number, Counts::Models), rest))
        }
        [first, Token::Word(word), rest @ ..] if counts(word) != Counts::Bare => {
            Some((quantity(number(first)?, counts(word)), rest))
        }
        [Token::Times(number), rest @ ..] => Some((quantity(*number, Counts::Times), rest)),
        [Token::Number(number), rest @ ..] => Some((quantity(*number, Counts::Bare), rest)),
        _ => None,
    }
}

fn trailing(tokens: &[Token]) -> Option<(Quantity, &[Token])> {
    match tokens {
        [rest @ .., first, Token::Word(word)] if counts(word) != Counts::Bare => {
            Some((quantity(number(first)?, counts(word)), rest))
        }
        [rest @ .., Token::Word(label), Token::Number(number)]
            if counts(label) == Counts::Models =>
        {
            Some((quantity(*number, Counts::Models), rest))
        }
        [rest @ .., Token::Times(number)] => Some((quantity(*number, Counts::Times), rest)),
        [rest @ .., Token::Number(number)] => Some((quantity(*number, Counts::Bare), rest)),
        _ => None,
    }
}

fn number(token: &Token) -> Option<u32> {
    match token {
        Token::Number(number) | Token::Times(number) => Some(*number),
        Token::Word(_) => None,
    }
}

fn quantity(number: u32, counts: Counts) -> Quantity {
    Quantity { number, counts }
}

/// The words that say what a number counts.
fn counts(word: &str) -> Counts {
    match word {
        "points" | "point" | "pts" | "pt" | "p" | "punkte" | "punkt" | "pkt" => Counts::Points,
        "models" | "model" | "figures" | "figure" | "strong" | "size" | "modelle" | "modell"
        | "figuren" | "figur" => Counts::Models,
        _ => Counts::Bare,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> (Vec<Quantity>, String, Vec<Quantity>) {
        let segment = Segment::read(text);
        (segment.before, segment.name, segment.after)
    }

    #[test]
    fn numbers_stand_before_or_after_a_name() {
        assert_eq!(
            read("2x Turf Cutters 112 pts"),
            (
                vec![quantity(2, Counts::Times)],
                "turf cutter".into(),
                vec![quantity(112, Counts::Points)]
            )
        );
        assert_eq!(
            read("Turf Cutters x2 size 8"),
            (
                vec![],
                "turf cutter".into(),
                vec![quantity(2, Counts::Times), quantity(8, Counts::Models)]
            )
        );
        assert_eq!(
            read("6 models"),
            (vec![quantity(6, Counts::Models)], String::new(), vec![])
        );
    }

    #[test]
    fn a_number_inside_a_name_stays_there() {
        assert_eq!(read("mark 2 bow 15").1, "mark 2 bow");
    }
}
