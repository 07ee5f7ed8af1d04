//! Which round of a week may be drawn next.

use messages::{Message, round_refusals, seasons};

use super::phase::WeekFacts;

/// Why no round of a week may be drawn now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoNextRound {
    /// The week is closed.
    WeekClosed,
    /// All rounds of the week are published.
    AllPublished,
    /// The lists are not opened: the draw depends on them.
    ListsSealed,
    /// The week before has no round yet.
    WeekBeforeNotPaired,
}

impl NoNextRound {
    pub fn message(self) -> Message {
        match self {
            Self::WeekClosed => seasons::week_is_closed(),
            Self::AllPublished => round_refusals::round_published(),
            Self::ListsSealed => round_refusals::lists_sealed(),
            Self::WeekBeforeNotPaired => round_refusals::week_before_not_paired(),
        }
    }
}

/// The number of a week's next round, from 1. `before` is the week before, `published` the number of the
/// week's last published round, 0 for none, and `per_week` how many rounds a week has.
///
/// # Errors
/// [`NoNextRound`].
pub fn next_round(
    week: &WeekFacts,
    before: Option<&WeekFacts>,
    published: u8,
    per_week: u8,
) -> Result<u8, NoNextRound> {
    if week.closed_at.is_some() {
        return Err(NoNextRound::WeekClosed);
    }
    if published >= per_week {
        return Err(NoNextRound::AllPublished);
    }
    if week.lists_opened_at.is_none() {
        return Err(NoNextRound::ListsSealed);
    }
    // A week in which nobody could play is closed without a round.
    if before.is_some_and(|last| last.paired_at.is_none() && last.closed_at.is_none()) {
        return Err(NoNextRound::WeekBeforeNotPaired);
    }
    Ok(published + 1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::season::samples::week_due;
    use crate::time::Instant;

    fn due() -> Instant {
        "2026-01-12T20:00:00Z".parse().unwrap()
    }

    fn sealed() -> WeekFacts {
        week_due(due())
    }

    fn opened() -> WeekFacts {
        WeekFacts {
            lists_opened_at: Some(due()),
            ..sealed()
        }
    }

    fn paired() -> WeekFacts {
        WeekFacts {
            paired_at: Some(due()),
            ..opened()
        }
    }

    #[test]
    fn the_rounds_of_a_week_are_drawn_in_order_until_it_has_all() {
        let number = |published| next_round(&opened(), None, published, 2);
        assert_eq!(number(0), Ok(1));
        assert_eq!(number(1), Ok(2));
        assert_eq!(number(2), Err(NoNextRound::AllPublished));
    }

    #[test]
    fn nothing_is_drawn_before_the_lists_are_opened_or_after_the_close() {
        let fault = Err(NoNextRound::ListsSealed);
        assert_eq!(next_round(&sealed(), None, 0, 1), fault);
        let closed = WeekFacts {
            closed_at: Some(due()),
            ..opened()
        };
        let fault = Err(NoNextRound::WeekClosed);
        assert_eq!(next_round(&closed, None, 0, 1), fault);
    }

    #[test]
    fn the_week_before_is_paired_or_closed_without_a_round() {
        let after = |before: WeekFacts| next_round(&opened(), Some(&before), 0, 1);
        assert_eq!(after(opened()), Err(NoNextRound::WeekBeforeNotPaired));
        assert_eq!(after(paired()), Ok(1));
        let closed = WeekFacts {
            closed_at: Some(due()),
            ..sealed()
        };
        assert_eq!(after(closed), Ok(1));
    }
}
