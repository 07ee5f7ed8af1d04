//! Which round may be repaired.

use messages::{Message, round_refusals, seasons};

use crate::season::WeekFacts;
use crate::time::Instant;

/// Why a round may not be repaired now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotRepairable {
    /// The round is a proposal still: it is drawn anew instead.
    NotPublished,
    /// The week is closed.
    WeekClosed,
}

impl NotRepairable {
    pub fn message(self) -> Message {
        match self {
            Self::NotPublished => round_refusals::round_not_published(),
            Self::WeekClosed => seasons::week_is_closed(),
        }
    }
}

/// Whether a round of the week that was published at that instant, if it was, may be repaired.
///
/// # Errors
/// [`NotRepairable`].
pub fn check_repairable(
    published_at: Option<Instant>,
    week: &WeekFacts,
) -> Result<(), NotRepairable> {
    if published_at.is_none() {
        return Err(NotRepairable::NotPublished);
    }
    if week.closed_at.is_some() {
        return Err(NotRepairable::WeekClosed);
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::season::samples::week_due;

    #[test]
    fn a_round_is_repaired_from_its_publication_to_the_close_of_its_week() {
        let at: Instant = "2026-01-12T20:00:00Z".parse().unwrap();
        let open = week_due(at);
        let closed = WeekFacts {
            closed_at: Some(at),
            ..open
        };
        assert_eq!(check_repairable(Some(at), &open), Ok(()));
        let fault = Err(NotRepairable::NotPublished);
        assert_eq!(check_repairable(None, &open), fault);
        assert_eq!(check_repairable(None, &closed), fault);
        let fault = Err(NotRepairable::WeekClosed);
        assert_eq!(check_repairable(Some(at), &closed), fault);
    }
}
