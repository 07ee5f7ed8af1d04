//! The facts of a season: the input of its table.

use std::collections::{BTreeMap, BTreeSet};

use crate::ids::{GameId, PlayerId, RulingId};
use crate::name::Text;
use crate::painting::{PaintedWeek, Painting};
use crate::points::{LeaguePoints, Points};
use crate::result::Outcome;
use crate::scoring::Scoring;
use crate::side::{PerSide, Side};
use crate::time::Instant;
use crate::week::WeekNo;

use super::tiebreaks::TieBreaks;

/// The facts of one season.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SeasonFacts {
    /// How results become points.
    pub scoring: Scoring,
    /// What painting is worth.
    pub painting: Painting,
    /// What decides between equal totals.
    pub tie_breaks: TieBreaks,
    /// The cap of each week, for margins in percent of it.
    pub caps: BTreeMap<WeekNo, Points>,
    /// Everyone who ever had a place.
    pub players: Vec<PlayerFact>,
    /// Every game and bye of every published round.
    pub games: Vec<GameFact>,
    /// Weeks away that were said in time; the round of such a week has the player in no game.
    pub absences: Vec<Absence>,
    /// Lists that came after their deadline.
    pub late_lists: Vec<LateList>,
    /// Checked painting, at most one for each player and week.
    pub painted: Vec<PaintedWeek>,
    /// Points that a referee gave or took.
    pub adjustments: Vec<Adjustment>,
}

/// A player's time in the season.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlayerFact {
    pub player: PlayerId,
    /// First week.
    pub joined: WeekNo,
    /// First week without the player; the games before it stand.
    pub left: Option<WeekNo>,
}

/// A game or bye of a published round.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GameFact {
    pub game: GameId,
    /// The week it belongs to, whenever it was played.
    pub week: WeekNo,
    pub fixture: Fixture,
    /// Version of the result.
    pub version: u32,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fixture {
    Bye(PlayerId),
    Game {
        /// In the order of the pairing.
        players: PerSide<PlayerId>,
        /// The side with the harder role, where the scenario names one.
        harder: Option<Side>,
        /// What stands; `None` while open or disputed.
        outcome: Option<Outcome>,
        /// The ruling behind it.
        ruling: Option<RulingId>,
    },
}

/// A week whose round left a player out, because they had said that they could not come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Absence {
    pub player: PlayerId,
    /// The week, which is paired.
    pub week: WeekNo,
}

/// A list that came late.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LateList {
    pub player: PlayerId,
    pub week: WeekNo,
    /// Seconds after the deadline.
    pub seconds: u32,
}

/// Points that a referee gave or took.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Adjustment {
    pub ruling: RulingId,
    pub player: PlayerId,
    pub week: WeekNo,
    /// How many; negative when taken.
    pub amount: LeaguePoints,
    pub reason: Text,
    /// Version of the ruling.
    pub version: u32,
}

impl PlayerFact {
    /// Whether the player has a place in `week`.
    pub fn takes_part_in(&self, week: WeekNo) -> bool {
        self.joined <= week && self.left.is_none_or(|left| week < left)
    }
}

impl GameFact {
    fn involves(&self, player: PlayerId) -> bool {
        match &self.fixture {
            Fixture::Bye(alone) => *alone == player,
            Fixture::Game { players, .. } => players.side_of(&player).is_some(),
        }
    }
}

impl LateList {
    /// A list that came in at `received`, after its deadline.
    pub fn new(player: PlayerId, week: WeekNo, due: Instant, received: Instant) -> Self {
        let seconds = (received - due).num_seconds();
        Self {
            player,
            week,
            // Once the lists are opened a list is late, whatever a clock says that lags.
            seconds: u32::try_from(seconds).unwrap_or(0),
        }
    }
}

/// The absences that count, of those that were told. An absence counts once the week's round is published
/// without the player. Who reported absent after the round was proposed has a game in it, and that game's
/// slip decides.
pub fn find_absences(
    told: impl IntoIterator<Item = (PlayerId, WeekNo)>,
    paired: &BTreeSet<WeekNo>,
    players: &[PlayerFact],
    games: &[GameFact],
) -> Vec<Absence> {
    let takes_part = |player, week| {
        let mut own = players.iter().filter(|fact| fact.player == player);
        own.any(|fact| fact.takes_part_in(week))
    };
    let has_game = |player, week| {
        let mut of_week = games.iter().filter(|game| game.week == week);
        of_week.any(|game| game.involves(player))
    };
    told.into_iter()
        .filter(|&(player, week)| {
            paired.contains(&week) && takes_part(player, week) && !has_game(player, week)
        })
        .map(|(player, week)| Absence { player, week })
        .collect()
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;

    fn player(number: u128) -> PlayerId {
        PlayerId(Uuid::from_u128(number))
    }

    fn week(number: u8) -> WeekNo {
        WeekNo::new(number).unwrap()
    }

    #[test]
    fn a_player_has_a_place_from_the_week_of_joining_to_the_one_before_leaving() {
        let there = |left| {
            let fact = PlayerFact {
                player: player(1),
                joined: week(2),
                left,
            };
            [1, 2, 3, 4].map(|number| fact.takes_part_in(week(number)))
        };
        assert_eq!(there(None), [false, true, true, true]);
        assert_eq!(there(Some(week(3))), [false, true, false, false]);
        assert_eq!(there(Some(week(2))), [false; 4], "joined and left at once");
    }

    #[test]
    fn an_absence_counts_once_the_round_is_published_without_the_player() {
        let fact = |number, left| PlayerFact {
            player: player(number),
            joined: week(1),
            left,
        };
        let players = [fact(1, None), fact(2, None), fact(3, Some(week(2)))];
        let bye = GameFact {
            game: GameId(Uuid::from_u128(9)),
            week: week(2),
            fixture: Fixture::Bye(player(2)),
            version: 1,
        };
        let paired = [week(1), week(2)].into();
        let told = [(1, 2), (1, 3), (2, 1), (2, 2), (3, 1), (3, 2), (4, 1)];
        let told = told.map(|(who, at)| (player(who), week(at)));
        let counted = find_absences(told, &paired, &players, &[bye]);
        let counted: Vec<_> = counted.iter().map(|it| (it.player, it.week)).collect();
        let expected = [(1, 2), (2, 1), (3, 1)];
        assert_eq!(counted, expected.map(|(who, at)| (player(who), week(at))));
    }

    #[test]
    fn a_list_is_late_by_the_seconds_after_its_deadline() {
        let due: Instant = "2026-01-12T20:00:00Z".parse().unwrap();
        let late = |received: &str| {
            let received = received.parse().unwrap();
            LateList::new(player(1), week(1), due, received).seconds
        };
        assert_eq!(late("2026-01-12T21:00:01Z"), 3601);
        assert_eq!(late("2026-01-12T19:00:00Z"), 0);
    }
}
