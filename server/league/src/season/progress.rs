//! How far a season has come: whether it may start and end, whether a week may be closed, and which
//! rounds are still to come.

use messages::{Message, results, seasons};

use super::phase::WeekFacts;
use crate::time::Instant;
use crate::week::WeekNo;

/// Players that a season starts with; others may still join later.
pub const MIN_PLAYERS: usize = 2;

/// Whether a season may start with so many players.
///
/// # Errors
/// The sentence to say with fewer than [`MIN_PLAYERS`].
pub fn check_start(players: usize) -> Result<(), Message> {
    if players < MIN_PLAYERS {
        return Err(seasons::too_few_players(players));
    }
    Ok(())
}

/// The first week that is not closed: a season ends once there is none.
pub fn first_open_week<'a>(
    weeks: impl IntoIterator<Item = (WeekNo, &'a WeekFacts)>,
) -> Option<WeekNo> {
    let mut weeks = weeks.into_iter();
    let open = weeks.find(|(_, week)| week.closed_at.is_none());
    open.map(|(week, _)| week)
}

/// The last week that is paired.
pub fn last_paired_week<'a>(
    weeks: impl IntoIterator<Item = (WeekNo, &'a WeekFacts)>,
) -> Option<WeekNo> {
    let paired = weeks
        .into_iter()
        .filter(|(_, week)| week.paired_at.is_some());
    paired.map(|(week, _)| week).max()
}

/// Why a week cannot be closed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CloseFault {
    ClosedAlready,
    /// It has no round, and games could still be played.
    NotPaired,
    /// So many games have no result that stands.
    GamesOpen(usize),
}

impl CloseFault {
    pub fn message(self) -> Message {
        match self {
            Self::ClosedAlready => results::week_closed_already(),
            Self::NotPaired => results::week_not_paired(),
            Self::GamesOpen(games) => results::games_open(games),
        }
    }
}

/// Whether a week may be closed at `now`, with so many games that have no result yet. A week without a
/// round, because nobody could come or nobody was left to meet, is closed once its games would have been
/// played.
///
/// # Errors
/// [`CloseFault`].
pub fn check_close(week: &WeekFacts, open_games: usize, now: Instant) -> Result<(), CloseFault> {
    if week.closed_at.is_some() {
        return Err(CloseFault::ClosedAlready);
    }
    if week.paired_at.is_none() && now < week.play_until_at {
        return Err(CloseFault::NotPaired);
    }
    if open_games > 0 {
        return Err(CloseFault::GamesOpen(open_games));
    }
    Ok(())
}

/// Rounds still to come: of each open week those that are not published. `published` are the published
/// rounds of each open week; a closed week has no more.
pub fn rounds_to_come(published: impl IntoIterator<Item = u8>, per_week: u8) -> u8 {
    let left = published.into_iter();
    let left = left.map(|published| per_week.saturating_sub(published));
    left.fold(0, u8::saturating_add)
}

/// Rounds of a season after one of a week's rounds, `number` from 1, when each of the season's weeks gets as
/// many as the season wants.
pub fn rounds_after(
    week: WeekNo,
    number: u8,
    weeks: impl IntoIterator<Item = WeekNo>,
    per_week: u8,
) -> u8 {
    let later = weeks.into_iter().filter(|&other| other > week);
    let later = later.map(|_| per_week);
    later.fold(per_week.saturating_sub(number), u8::saturating_add)
}

#[cfg(test)]
mod tests {
    use chrono::Duration;

    use super::*;
    use crate::season::samples::week_due;

    fn until() -> Instant {
        "2026-01-17T23:00:00Z".parse().unwrap()
    }

    fn week(is_paired: bool, is_closed: bool) -> WeekFacts {
        let due = until() - Duration::days(5);
        WeekFacts {
            lists_opened_at: Some(due),
            paired_at: is_paired.then(|| until() - Duration::days(4)),
            closed_at: is_closed.then(until),
            ..week_due(due)
        }
    }

    fn numbered(weeks: &[WeekFacts]) -> impl Iterator<Item = (WeekNo, &WeekFacts)> {
        (1..).filter_map(WeekNo::new).zip(weeks)
    }

    #[test]
    fn a_season_starts_with_two_players() {
        assert!(check_start(1).is_err());
        assert!(check_start(2).is_ok());
    }

    #[test]
    fn a_season_ends_once_every_week_is_closed() {
        let closed = [week(true, true), week(false, true)];
        assert_eq!(first_open_week(numbered(&closed)), None);
        let open = [week(true, true), week(true, false), week(false, false)];
        assert_eq!(first_open_week(numbered(&open)), WeekNo::new(2));
        assert_eq!(last_paired_week(numbered(&open)), WeekNo::new(2));
        assert_eq!(last_paired_week(numbered(&[week(false, true)])), None);
    }

    #[test]
    fn a_paired_week_is_closed_once_every_game_has_a_result() {
        let paired = week(true, false);
        let early = until() - Duration::days(3);
        assert_eq!(check_close(&paired, 0, early), Ok(()));
        let open = check_close(&paired, 2, early);
        assert_eq!(open, Err(CloseFault::GamesOpen(2)));
        let closed = check_close(&week(true, true), 0, until());
        assert_eq!(closed, Err(CloseFault::ClosedAlready));
    }

    #[test]
    fn a_week_without_a_round_is_closed_once_its_games_would_have_been_played() {
        let empty = week(false, false);
        let early = until() - Duration::microseconds(1);
        assert_eq!(check_close(&empty, 0, early), Err(CloseFault::NotPaired));
        assert_eq!(check_close(&empty, 0, until()), Ok(()));
    }

    #[test]
    fn every_open_week_has_as_many_rounds_as_the_season_wants() {
        assert_eq!(rounds_to_come([2, 1, 0], 2), 3);
        assert_eq!(rounds_to_come([], 2), 0);
        let after = |week, number, per_week| {
            let weeks = (1..).map_while(WeekNo::new);
            rounds_after(WeekNo::new(week).unwrap(), number, weeks, per_week)
        };
        assert_eq!(after(49, 1, 2), 7);
        assert_eq!(after(52, 2, 2), 0);
        assert_eq!(after(1, 1, 7), u8::MAX);
    }
}
