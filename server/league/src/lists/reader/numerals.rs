//! Numerals as people write them: digits in groups of three (`1,250` or `1.250`) and decimals that are
//! nought (`56.0`, `56,00`). Whether comma or full stop parts thousands differs between languages, so
//! both are read.

/// What a comma or full stop between two texts stands for, where it belongs to a numeral.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NumeralMark {
    /// It parts thousands.
    Thousands,
    /// It comes before so many noughts that say nothing.
    Decimal(usize),
}

/// The mark `c` between what stands before and after it; `None` where it is no part of a numeral. In
/// `8,100` without a space after a comma before it (`Pikes,8,100`) it parts two numbers.
pub fn numeral_mark(before: &str, c: char, after: &str) -> Option<NumeralMark> {
    if !matches!(c, ',' | '.') {
        return None;
    }
    let rest = before.trim_end_matches(|c: char| c.is_ascii_digit());
    let (left, right) = (before.len() - rest.len(), count_digits(after));
    let noughts = after.bytes().take(right).all(|digit| digit == b'0');
    match right {
        3 if (1..=3).contains(&left) && !rest.ends_with([',', ';']) => Some(NumeralMark::Thousands),
        1 | 2 if noughts && left > 0 => Some(NumeralMark::Decimal(right)),
        _ => None,
    }
}

/// The text with its numerals in digits alone.
pub fn strip_numeral_marks(text: &str) -> String {
    let mut bare = String::with_capacity(text.len());
    let mut skipped = 0;
    for (at, c) in text.char_indices() {
        if skipped > 0 {
            skipped -= 1;
            continue;
        }
        let after = text.get(at + c.len_utf8()..).unwrap_or_default();
        match numeral_mark(text.get(..at).unwrap_or_default(), c, after) {
            None => bare.push(c),
            Some(NumeralMark::Thousands) => {}
            Some(NumeralMark::Decimal(noughts)) => skipped = noughts,
        }
    }
    bare
}

fn count_digits(text: &str) -> usize {
    text.bytes().take_while(u8::is_ascii_digit).count()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn thousands_and_noughts_are_read_and_all_else_stays() {
        for (written, read) in [
            ("1,250 points", "1250 points"),
            ("1.250 Punkte", "1250 Punkte"),
            ("56.0", "56"),
            ("56,00 points", "56 points"),
            ("1.250,00", "1250"),
            ("12.5", "12.5"),
            ("1,25", "1,25"),
            ("8,100", "8100"),
            ("Pikes,8,100", "Pikes,8,100"),
            ("1234,567", "1234,567"),
            ("1, 250", "1, 250"),
            (",1", ",1"),
        ] {
            assert_eq!(strip_numeral_marks(written), read, "{written}");
        }
    }
}
