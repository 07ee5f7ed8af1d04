//! Numbers and scales of pictures and tables.

use league::standings::Exact;

use super::texts::Texts;

/// An exact value with one decimal where it has any.
pub fn number(t: &Texts, value: Exact) -> String {
    if value.is_integer() {
        return value.to_integer().to_string();
    }
    let tenths = (value * 10).round().to_integer();
    let sign = if tenths < 0 { "−" } else { "" };
    let tenths = tenths.unsigned_abs();
    format!("{sign}{}{}{}", tenths / 10, t.figures.decimal, tenths % 10)
}

/// The same for a fraction of what is never below nothing.
pub fn fraction(t: &Texts, numerator: u64, denominator: u64) -> String {
    let part = |part: u64| i64::try_from(part).unwrap_or(i64::MAX);
    number(t, Exact::new(part(numerator), part(denominator).max(1)))
}

/// The same with a sign in front, for a difference.
pub fn difference(t: &Texts, value: Exact) -> String {
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

/// An upright axis from nothing to at least `most`, with a line at each round number.
pub struct Axis {
    top: u32,
    bottom: u32,
    most: u32,
    /// Value and height of each line, from the bottom.
    pub ticks: Vec<(u32, u32)>,
}

impl Axis {
    /// Between two heights of the picture.
    pub fn new(most: u32, top: u32, bottom: u32) -> Self {
        let step = round_step(most);
        let lines = most.div_ceil(step).max(1);
        let mut axis = Self {
            top,
            bottom,
            most: lines * step,
            ticks: Vec::new(),
        };
        let values = (0..=lines).map(|line| line * step);
        axis.ticks = values.map(|value| (value, axis.y(value))).collect();
        axis
    }

    /// The height of a value.
    pub fn y(&self, value: u32) -> u32 {
        let height = u64::from(self.bottom - self.top);
        let above = height * u64::from(value.min(self.most)) / u64::from(self.most);
        self.bottom - u32::try_from(above).unwrap_or_default()
    }
}

/// A step of 1, 2 or 5 times a power of ten that makes at most five.
fn round_step(most: u32) -> u32 {
    let steps = (0..9).flat_map(|power| [1, 2, 5].map(|digit| digit * 10_u32.pow(power)));
    let mut steps = steps.skip_while(|step| most.div_ceil(*step) > 5);
    steps.next().unwrap_or(most.max(1))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pages::texts::{ENGLISH, GERMAN};

    #[test]
    fn a_value_is_written_as_people_write_it() {
        let value = |above: i64, below: i64| Exact::new(above, below);
        assert_eq!(number(&ENGLISH, value(7, 2)), "3.5");
        assert_eq!(number(&GERMAN, value(-7, 2)), "−3,5");
        assert_eq!(number(&ENGLISH, value(40, 1)), "40");
        assert_eq!(difference(&ENGLISH, value(1, 3)), "+0.3");
        assert_eq!(difference(&ENGLISH, value(-9, 1)), "−9");
        assert_eq!(difference(&ENGLISH, value(0, 1)), "0");
    }

    #[test]
    fn an_axis_has_few_round_lines_and_ends_above_everything() {
        for (most, last, lines) in [(0, 1, 2), (9, 10, 6), (1000, 1000, 6), (1010, 1500, 4)] {
            let axis = Axis::new(most, 20, 220);
            assert_eq!(axis.ticks.len(), lines, "{most}");
            assert_eq!(axis.ticks.last(), Some(&(last, 20)), "{most}");
            assert_eq!((axis.y(0), axis.y(last)), (220, 20));
        }
    }

    #[test]
    fn a_share_is_a_whole_percentage() {
        assert_eq!([0.0, 0.336, 1.0].map(percent), [0, 34, 100]);
    }
}
