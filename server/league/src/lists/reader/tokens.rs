//! Tokenizer: from a line of text to segments, and from a segment to words and numbers.

use std::borrow::Cow;

use deunicode::deunicode;

use super::numerals::{numeral_mark, strip_numeral_marks};

/// The parts of a line between commas, colons, brackets, free-standing dashes and the like.
/// Hyphens inside words do not part them.
pub fn split_segments(line: &str) -> Vec<&str> {
    let mut segments = Vec::new();
    let mut start = 0;
    let mut before = ' ';
    let mut chars = line.char_indices().peekable();
    while let Some((at, c)) = chars.next() {
        let after = chars.peek().map_or(' ', |&(_, next)| next);
        let behind = line.get(at + c.len_utf8()..).unwrap_or_default();
        let in_numeral = numeral_mark(line.get(..at).unwrap_or_default(), c, behind).is_some();
        if !in_numeral && is_separator(before, c, after) {
            segments.push(line.get(start..at).unwrap_or_default());
            start = at + c.len_utf8();
        }
        before = c;
    }
    segments.push(line.get(start..).unwrap_or_default());
    segments.retain(|segment| has_content(segment));
    segments.iter().map(|segment| segment.trim()).collect()
}

fn is_separator(before: char, c: char, after: char) -> bool {
    match c {
        ',' | ';' | ':' | '|' | '(' | ')' | '[' | ']' | '{' | '}' | '\t' | '+' | '=' | '•'
        | '·' => true,
        '-' | '–' | '—' => before.is_whitespace() && after.is_whitespace(),
        '.' => after.is_whitespace(),
        _ => false,
    }
}

/// One word or number of a segment.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Token {
    /// A word: lower case, without accents.
    Word(String),
    /// A number alone.
    Number(u32),
    /// A number with a multiplication sign: `2x`, `x2`, `2 x`.
    Times(u32),
}

/// Splits a segment into tokens. A number glued to letters is parted from them.
pub fn tokenize(segment: &str) -> Vec<Token> {
    let ascii = strip_numeral_marks(&fold_to_ascii(segment));
    let mut tokens: Vec<Token> = Vec::new();
    let words = ascii.split(|c: char| !c.is_ascii_alphanumeric() && c != '.');
    let words = words.flat_map(|word| {
        let decimal = is_decimal(word);
        word.split(move |c| c == '.' && !decimal)
    });
    for word in words.filter(|word| !word.is_empty()) {
        if word.contains('.') {
            tokens.push(Token::Word(word.into()));
            continue;
        }
        let digits = word.bytes().take_while(u8::is_ascii_digit).count();
        let (number, letters) = word.split_at(digits);
        match (number.parse::<u32>(), letters) {
            (Ok(number), "") => match tokens.last_mut() {
                Some(Token::Word(x)) if x == "x" => {
                    tokens.pop();
                    tokens.push(Token::Times(number));
                }
                _ => tokens.push(Token::Number(number)),
            },
            (Ok(number), "x") => tokens.push(Token::Times(number)),
            (Ok(number), letters) => {
                tokens.push(Token::Number(number));
                tokens.push(Token::Word(letters.into()));
            }
            (Err(_), "x") if matches!(tokens.last(), Some(Token::Number(_))) => {
                if let Some(Token::Number(number)) = tokens.pop() {
                    tokens.push(Token::Times(number));
                }
            }
            (Err(_), _) => tokens.push(times_or_word(word)),
        }
    }
    tokens
}

/// `12.5` is not a whole number, nor are its halves: it stays one word, which means nothing.
fn is_decimal(word: &str) -> bool {
    word.split_once('.').is_some_and(|(whole, part)| {
        let all_digits = whole.bytes().all(|byte| byte.is_ascii_digit());
        !whole.is_empty() && all_digits && part.starts_with(|c: char| c.is_ascii_digit())
    })
}

/// The words of a text as they stand there, with the places where they begin and end.
pub fn word_spans(text: &str) -> Vec<(usize, usize)> {
    let inside = |c: char| c.is_alphanumeric() || "-'’.,×".contains(c);
    let mut spans: Vec<(usize, usize)> = Vec::new();
    let mut open = None;
    for (at, c) in text.char_indices() {
        match (inside(c), open) {
            (true, None) => open = Some(at),
            (false, Some(start)) => {
                spans.push((start, at));
                open = None;
            }
            _ => {}
        }
    }
    spans.extend(open.map(|start| (start, text.len())));
    spans.retain(|&(start, end)| text.get(start..end).is_some_and(has_content));
    spans
}

/// Whether anything but marks stands in a text.
pub fn has_content(text: &str) -> bool {
    text.chars().any(char::is_alphanumeric)
}

fn times_or_word(word: &str) -> Token {
    word.strip_prefix('x')
        .and_then(|number| number.parse().ok())
        .map_or_else(|| Token::Word(word.into()), Token::Times)
}

/// Lower case ASCII; apostrophes vanish so that they part no word.
fn fold_to_ascii(text: &str) -> Cow<'_, str> {
    let text = text.replace(['\'', '’'], "").replace('×', "x");
    if text.is_ascii() {
        text.to_ascii_lowercase().into()
    } else {
        deunicode(&text).to_ascii_lowercase().into()
    }
}

/// The form in which names are compared: words joined by spaces, without a leading article and
/// without the `s` of a plural.
pub fn normalize_words<'a>(words: impl IntoIterator<Item = &'a str>) -> String {
    let mut form = String::new();
    for (i, word) in words.into_iter().enumerate() {
        if i == 0 && word == "the" {
            continue;
        }
        if !form.is_empty() {
            form.push(' ');
        }
        let plural = word.len() > 3 && word.ends_with('s');
        form.push_str(word.get(..word.len() - usize::from(plural)).unwrap_or(word));
    }
    form
}

/// The tokens as words again.
pub fn normalized_text(tokens: &[Token]) -> String {
    let words: Vec<Cow<'_, str>> = tokens
        .iter()
        .map(|token| match token {
            Token::Word(word) => Cow::Borrowed(word.as_str()),
            Token::Number(number) => number.to_string().into(),
            Token::Times(number) => format!("{number}x").into(),
        })
        .collect();
    normalize_words(words.iter().map(AsRef::as_ref))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_is_parted_at_marks_but_not_inside_words() {
        assert_eq!(
            split_segments(" - 2x Bog-Oak Hulks (4 models), root armour: 200 pts. "),
            ["2x Bog-Oak Hulks", "4 models", "root armour", "200 pts"]
        );
        assert_eq!(split_segments("*** --- ***"), [""; 0]);
    }

    #[test]
    fn numbers_are_told_from_words_however_they_are_written() {
        let word = |text: &str| Token::Word(text.into());
        assert_eq!(
            tokenize("2x 2 x x2 ×2"),
            [
                Token::Times(2),
                Token::Times(2),
                Token::Times(2),
                Token::Times(2)
            ]
        );
        assert_eq!(
            tokenize("112pts of Léa’s"),
            [Token::Number(112), word("pts"), word("of"), word("leas")]
        );
        assert_eq!(tokenize("99999999999"), [word("99999999999")]);
        assert_eq!(
            tokenize("12.5 No.7"),
            [word("12.5"), word("no"), Token::Number(7)]
        );
    }

    #[test]
    fn names_compare_without_article_and_plural() {
        assert_eq!(normalize_words(["the", "long", "pumps"]), "long pump");
    }
}
