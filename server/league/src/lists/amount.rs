//! Limits of list rules: fixed, or in proportion to points.

use messages::{Message, Value, list_rules};

use crate::points::Points;
use crate::share::Share;

/// A number of points, or a share of a whole that the rule names.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Amount {
    Points(Points),
    /// Such a share of the whole.
    Share(Share),
}

impl Amount {
    /// As an upper limit: the most whole points within it.
    pub fn max_of(self, whole: Points) -> Points {
        match self {
            Self::Points(points) => points,
            Self::Share(share) => share.floor_of(whole),
        }
    }

    /// As a lower limit: the fewest whole points that reach it.
    pub fn min_of(self, whole: Points) -> Points {
        match self {
            Self::Points(points) => points,
            Self::Share(share) => share.ceil_of(whole),
        }
    }

    /// "40 % of the cap".
    pub fn message_of_cap(self) -> Message {
        match self {
            Self::Points(points) => list_rules::list_rule_points(points),
            Self::Share(share) if share == Share::ALL => list_rules::list_rule_whole_cap(),
            Self::Share(share) => list_rules::list_rule_share_of_cap(share),
        }
    }

    /// "40 % of last week's points".
    pub fn message_of_last_week(self) -> Message {
        match self {
            Self::Points(points) => list_rules::list_rule_points(points),
            Self::Share(share) if share == Share::ALL => list_rules::list_rule_all_of_last_week(),
            Self::Share(share) => list_rules::list_rule_share_of_last_week(share),
        }
    }
}

/// A count, or one that grows with the cap.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CountLimit {
    Fixed(u32),
    /// One for every full `points` of the cap. No points at all means none.
    Per(Points),
}

impl CountLimit {
    /// The count at this cap, rounded down.
    pub fn for_cap(self, cap: Points) -> u32 {
        match self {
            Self::Fixed(count) => count,
            Self::Per(points) => cap.get().checked_div(points.get()).unwrap_or(0),
        }
    }
}

impl From<CountLimit> for Value {
    fn from(limit: CountLimit) -> Self {
        match limit {
            CountLimit::Fixed(count) => count.into(),
            CountLimit::Per(points) => list_rules::list_rule_per_points(points).into(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_line_unit_per_250_points_gives_the_demo_seasons_counts() {
        let caps = [300, 400, 500, 600, 600, 750, 900, 1000];
        let line = caps.map(|cap| CountLimit::Per(Points::new(250)).for_cap(Points::new(cap)));
        assert_eq!(line, [1, 1, 2, 2, 2, 3, 3, 4]);
        assert_eq!(CountLimit::Per(Points::ZERO).for_cap(Points::new(300)), 0);
    }

    #[test]
    fn a_share_rounds_towards_the_rule() {
        let third = Amount::Share(Share::new(1, 3).unwrap());
        assert_eq!(third.max_of(Points::new(100)), Points::new(33));
        assert_eq!(third.min_of(Points::new(100)), Points::new(34));
    }
}
