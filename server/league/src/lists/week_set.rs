//! Bit set of weeks: those in which a rule applies.

use messages::{Message, Value, list_rules};

use crate::week::{MAX_WEEKS, WeekNo};

/// A set of weeks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct WeekSet(u64);

impl WeekSet {
    /// Every week a season can have.
    pub const EVERY: Self = Self((1 << MAX_WEEKS) - 1);

    pub fn from_weeks(weeks: impl IntoIterator<Item = WeekNo>) -> Self {
        Self(weeks.into_iter().fold(0, |set, week| set | bit(week)))
    }

    /// From `first` to `last`, both included.
    pub fn from_range(first: WeekNo, last: WeekNo) -> Self {
        Self::from_weeks(
            Self::EVERY
                .iter()
                .filter(|week| (first..=last).contains(week)),
        )
    }

    /// Whether the week belongs to the set.
    pub fn contains(self, week: WeekNo) -> bool {
        self.0 & bit(week) != 0
    }

    /// The weeks in order.
    pub fn iter(self) -> impl Iterator<Item = WeekNo> {
        (1..=MAX_WEEKS)
            .filter_map(WeekNo::new)
            .filter(move |&week| self.contains(week))
    }

    /// "every week", "week 5", "weeks 1-3 and 6".
    pub fn message(self) -> Message {
        if self == Self::EVERY {
            return list_rules::list_rule_every_week();
        }
        let mut runs: Vec<(u8, u8)> = Vec::new();
        for week in self.iter().map(WeekNo::number) {
            match runs.last_mut() {
                Some((_, last)) if *last + 1 == week => *last = week,
                _ => runs.push((week, week)),
            }
        }
        match runs.as_slice() {
            [] => list_rules::list_rule_no_week(),
            [(first, last)] if first == last => list_rules::list_rule_one_week(first),
            _ => list_rules::list_rule_weeks(Value::list(runs.into_iter().map(run))),
        }
    }
}

fn run((first, last): (u8, u8)) -> Value {
    if first == last {
        first.into()
    } else {
        list_rules::list_rule_run_of_weeks(first, last).into()
    }
}

fn bit(week: WeekNo) -> u64 {
    1 << (week.number() - 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn week(number: u8) -> WeekNo {
        WeekNo::new(number).unwrap()
    }

    #[test]
    fn weeks_read_as_people_say_them() {
        assert_eq!(WeekSet::EVERY.message().to_string(), "every week");
        assert_eq!(
            WeekSet::from_weeks([week(5)]).message().to_string(),
            "week 5"
        );
        assert_eq!(
            WeekSet::from_range(week(1), week(3)).message().to_string(),
            "weeks 1-3"
        );
        assert_eq!(
            WeekSet::from_weeks([1, 2, 3, 6, 8].map(week))
                .message()
                .to_string(),
            "weeks 1-3, 6 and 8"
        );
        assert_eq!(WeekSet::from_weeks([]).message().to_string(), "no week");
    }

    #[test]
    fn the_last_possible_week_belongs_to_every_week() {
        assert!(WeekSet::EVERY.contains(week(MAX_WEEKS)));
        assert_eq!(WeekSet::EVERY.iter().count(), usize::from(MAX_WEEKS));
    }
}
