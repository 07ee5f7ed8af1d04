//! Joining a season: who finds a place in it, and from which week on.

use messages::{Message, seasons};

use super::SeasonState;
use super::phase::WeekFacts;
use crate::name::Name;
use crate::time::Instant;
use crate::week::WeekNo;

/// Why somebody cannot join a season.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JoinFault {
    /// The season has ended.
    SeasonOver,
    /// All places are taken. Holds how many there are.
    Full(u16),
    /// Somebody has the handle, or one that looks like it.
    HandleTaken,
    /// No week is left whose lists are not due.
    LastDeadlinePassed,
}

impl JoinFault {
    pub fn message(self) -> Message {
        match self {
            Self::SeasonOver => seasons::season_over(),
            Self::Full(places) => seasons::season_full(places),
            Self::HandleTaken => seasons::handle_taken(),
            Self::LastDeadlinePassed => seasons::last_deadline_passed(),
        }
    }
}

/// Whether a season has a place left. Whoever has withdrawn takes none; `places` is `None` where there is
/// no limit.
///
/// # Errors
/// [`JoinFault::SeasonOver`], [`JoinFault::Full`].
pub fn check_place(
    season: SeasonState,
    places: Option<u16>,
    taken: usize,
) -> Result<(), JoinFault> {
    if season == SeasonState::Ended {
        return Err(JoinFault::SeasonOver);
    }
    match places {
        Some(places) if taken >= usize::from(places) => Err(JoinFault::Full(places)),
        _ => Ok(()),
    }
}

/// # Errors
/// [`JoinFault::HandleTaken`] when one of the others has a handle that looks like this one.
pub fn check_handle<'a>(
    handle: &Name,
    others: impl IntoIterator<Item = &'a str>,
) -> Result<(), JoinFault> {
    let looks_alike = |other| Name::new(other).is_ok_and(|other| other.looks_like(handle));
    if others.into_iter().any(looks_alike) {
        return Err(JoinFault::HandleTaken);
    }
    Ok(())
}

/// The first week, in order, whose lists are not due yet: the one from which on a newcomer plays.
///
/// # Errors
/// [`JoinFault::LastDeadlinePassed`].
pub fn first_week_to_play<'a>(
    weeks: impl IntoIterator<Item = (WeekNo, &'a WeekFacts)>,
    now: Instant,
) -> Result<WeekNo, JoinFault> {
    let mut weeks = weeks.into_iter();
    let open = weeks.find(|(_, week)| !week.needs_leave(now));
    open.map(|(week, _)| week)
        .ok_or(JoinFault::LastDeadlinePassed)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::season::samples::week_due;

    #[test]
    fn a_season_has_so_many_places_and_none_once_it_is_over() {
        let started = SeasonState::Started;
        assert_eq!(check_place(started, Some(2), 1), Ok(()));
        assert_eq!(check_place(started, Some(2), 2), Err(JoinFault::Full(2)));
        assert_eq!(check_place(started, None, 1000), Ok(()));
        let over = check_place(SeasonState::Ended, None, 0);
        assert_eq!(over, Err(JoinFault::SeasonOver));
    }

    #[test]
    fn nobody_takes_a_handle_that_looks_like_another() {
        let check = |text: &str| check_handle(&Name::new(text).unwrap(), ["Oskrel", "Corvanel"]);
        assert_eq!(check("Oskrella"), Ok(()));
        for alike in ["Oskrel", "oskrel", "\u{41e}skrel"] {
            assert_eq!(check(alike), Err(JoinFault::HandleTaken), "{alike}");
        }
    }

    #[test]
    fn a_newcomer_plays_from_the_first_week_whose_lists_are_neither_due_nor_opened() {
        let week = |due: &str| {
            let due: Instant = due.parse().unwrap();
            week_due(due)
        };
        let mut weeks = [week("2026-01-12T20:00:00Z"), week("2026-01-19T20:00:00Z")];
        let number = |index: usize| WeekNo::new(u8::try_from(index).unwrap() + 1).unwrap();
        let first = |weeks: &[WeekFacts], now: &str| {
            let numbered = weeks.iter().enumerate();
            let numbered = numbered.map(|(index, week)| (number(index), week));
            first_week_to_play(numbered, now.parse().unwrap())
        };
        assert_eq!(first(&weeks, "2026-01-12T20:59:59Z"), Ok(number(0)));
        assert_eq!(first(&weeks, "2026-01-12T21:00:00Z"), Ok(number(1)));
        weeks[0].lists_opened_at = Some(weeks[0].lists_due_at);
        assert_eq!(first(&weeks, "2026-01-12T20:30:00Z"), Ok(number(1)));
        let last = first(&weeks, "2026-01-19T21:00:00Z");
        assert_eq!(last, Err(JoinFault::LastDeadlinePassed));
    }
}
