//! Numbers of one language, by CLDR, with a true minus sign.

use icu_decimal::DecimalFormatter;
use icu_decimal::input::Decimal;
use icu_decimal::options::{DecimalFormatterOptions, GroupingStrategy};
use num_rational::Ratio;

use crate::Language;

/// The way in which one language writes numbers; the data is compiled in, so it is there.
pub struct Numbers {
    grouped: Option<DecimalFormatter>,
    plain: Option<DecimalFormatter>,
}

impl Numbers {
    pub fn of(language: Language) -> Self {
        let formatter = |grouping| {
            let mut options = DecimalFormatterOptions::default();
            options.grouping_strategy = Some(grouping);
            DecimalFormatter::try_new(language.locale().into(), options).ok()
        };
        Self {
            // Points of four digits are written as everywhere on a list: 1250.
            grouped: formatter(GroupingStrategy::Min2),
            plain: formatter(GroupingStrategy::Never),
        }
    }

    pub fn whole(&self, number: i64) -> String {
        self.signed(number < 0, &number.unsigned_abs().into())
    }

    pub fn decimal(&self, number: Ratio<i64>) -> String {
        if number.is_integer() {
            return self.whole(number.to_integer());
        }
        let tenths = (number * 10).round().to_integer();
        let mut size = Decimal::from(tenths.unsigned_abs());
        size.multiply_pow10(-1);
        size.absolute.pad_end(-1);
        self.signed(tenths < 0, &size)
    }

    /// A number within a message, counted in tenths: in plain digits, as whole numbers are there.
    pub fn tenths(&self, tenths: i128) -> String {
        let mut number = Decimal::from(tenths);
        number.multiply_pow10(-1);
        number.absolute.pad_end(-1);
        match &self.plain {
            Some(formatter) => formatter.format(&number).to_string(),
            None => number.to_string(),
        }
    }

    fn signed(&self, negative: bool, size: &Decimal) -> String {
        let sign = if negative { "\u{2212}" } else { "" };
        match &self.grouped {
            Some(formatter) => format!("{sign}{}", formatter.format(size)),
            None => format!("{sign}{size}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_is_written_as_people_write_it() {
        let [english, german, french] = Language::ALL.map(Numbers::of);
        assert_eq!(english.whole(1250), "1250");
        assert_eq!(german.whole(-12_500), "−12.500");
        assert_eq!(french.whole(12_500), "12\u{202f}500");
        assert_eq!(english.decimal(Ratio::new(7, 2)), "3.5");
        assert_eq!(german.decimal(Ratio::new(-7, 2)), "−3,5");
        assert_eq!(french.decimal(Ratio::new(1, 100)), "0,0");
        assert_eq!(english.decimal(Ratio::new(-40, 1)), "−40");
        assert_eq!(english.decimal(Ratio::new(-9999, 100)), "−100.0");
        assert_eq!(english.whole(i64::MIN), "−9,223,372,036,854,775,808");
    }

    #[test]
    fn a_number_within_a_message_has_plain_digits() {
        let [english, german, french] = Language::ALL.map(Numbers::of);
        assert_eq!(english.tenths(123_456), "12345.6");
        assert_eq!(english.tenths(-12), "-1.2");
        assert_eq!(german.tenths(9), "0,9");
        assert_eq!(french.tenths(30), "3,0");
    }
}
