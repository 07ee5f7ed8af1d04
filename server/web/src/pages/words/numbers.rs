//! Numbers in the reader's language.

use league::standings::Exact;

use messages::Texts;

/// An exact value with one decimal where it has any.
pub fn number(t: Texts, value: Exact) -> String {
    t.decimal(value)
}

/// A fraction that is not negative, likewise.
pub fn fraction(t: Texts, numerator: u64, denominator: u64) -> String {
    // No list has more points or models than fit.
    let part = |part: u64| i64::try_from(part).unwrap_or(i64::MAX);
    number(t, Exact::new(part(numerator), part(denominator).max(1)))
}

/// A difference, with its sign.
pub fn difference(t: Texts, value: Exact) -> String {
    let size = number(
        t,
        if value < Exact::from_integer(0) {
            -value
        } else {
            value
        },
    );
    match value.cmp(&Exact::from_integer(0)) {
        std::cmp::Ordering::Less => format!("−{size}"),
        std::cmp::Ordering::Equal => size,
        std::cmp::Ordering::Greater => format!("+{size}"),
    }
}

/// A share from 0 to 1 in whole percent.
pub fn percent(share: f64) -> u8 {
    let whole = (share.clamp(0.0, 1.0) * 100.0).round();
    // Between 0 and 100, and whole.
    whole as u8
}

#[cfg(test)]
mod tests {
    use super::*;
    use messages::Language;

    #[test]
    fn a_value_is_written_as_people_write_it() {
        let value = |above: i64, below: i64| Exact::new(above, below);
        assert_eq!(number(Texts::of(Language::English), value(7, 2)), "3.5");
        assert_eq!(number(Texts::of(Language::German), value(-7, 2)), "−3,5");
        assert_eq!(number(Texts::of(Language::English), value(40, 1)), "40");
        assert_eq!(
            difference(Texts::of(Language::English), value(1, 3)),
            "+0.3"
        );
        assert_eq!(difference(Texts::of(Language::English), value(-9, 1)), "−9");
        assert_eq!(difference(Texts::of(Language::English), value(0, 1)), "0");
    }

    #[test]
    fn a_share_is_a_whole_percentage() {
        assert_eq!([0.0, 0.336, 1.0].map(percent), [0, 34, 100]);
    }
}
