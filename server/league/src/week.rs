//! The number of a week within its season.

use std::fmt;

use messages::Value;

/// Longest season in weeks. Common practice is 6 to 10; 52 leaves room for monthly steps over years.
pub const MAX_WEEKS: u8 = 52;

/// A week of a season, counted from 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct WeekNo(u8);

impl WeekNo {
    pub const FIRST: Self = Self(1);
    /// The last week of the longest season.
    pub const LAST: Self = Self(MAX_WEEKS);

    /// `None` outside 1 to [`MAX_WEEKS`].
    pub fn new(number: u8) -> Option<Self> {
        (1..=MAX_WEEKS).contains(&number).then_some(Self(number))
    }

    /// The number as people say it, from 1.
    pub fn number(self) -> u8 {
        self.0
    }

    /// The week before, `None` for the first.
    pub fn previous(self) -> Option<Self> {
        Self::new(self.0 - 1)
    }

    /// The week after, `None` past the longest season.
    pub fn next(self) -> Option<Self> {
        Self::new(self.0 + 1)
    }
}

impl From<WeekNo> for Value {
    fn from(week: WeekNo) -> Self {
        week.number().into()
    }
}

impl fmt::Display for WeekNo {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn weeks_run_from_one_to_the_longest_season() {
        assert_eq!(WeekNo::new(0), None);
        assert_eq!(WeekNo::new(MAX_WEEKS + 1), None);
        assert_eq!(WeekNo::FIRST.previous(), None);
        assert_eq!(WeekNo::new(MAX_WEEKS).and_then(WeekNo::next), None);
        assert_eq!(WeekNo::FIRST.next(), WeekNo::new(2));
    }
}
