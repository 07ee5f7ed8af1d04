//! What a repair does to the games of its round once it is published: games that it keeps stay as they are,
//! reports and all.

use messages::{Message, round_refusals};

use crate::ids::{GameId, PlayerId};

/// A game or bye of a round.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RoundGame<'a> {
    pub id: GameId,
    /// Who sits out, or the first of two.
    pub first: PlayerId,
    /// The opponent, and where the two play; `None` for a bye.
    pub meeting: Option<(PlayerId, GamePlace<'a>)>,
    pub is_reported: bool,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct GamePlace<'a> {
    /// Short name of the night.
    pub night: &'a str,
    pub table: u16,
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct GameChanges<'a> {
    /// Games that are taken out.
    pub gone: Vec<GameId>,
    /// Games that stay, each with its new place.
    pub moved: Vec<(GameId, GamePlace<'a>)>,
    /// Games of the repair that were not there before.
    pub new: Vec<GameId>,
}

/// A game that the repair would take out or move was reported since the repair was drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StaleRepair;

impl StaleRepair {
    pub fn message(self) -> Message {
        round_refusals::repair_stale()
    }
}

impl RoundGame<'_> {
    fn involves(&self, player: PlayerId) -> bool {
        self.first == player || self.meeting.is_some_and(|(second, _)| second == player)
    }

    /// The same two players, or the same one sitting out.
    fn is_same(&self, other: &RoundGame<'_>) -> bool {
        self.meeting.is_some() == other.meeting.is_some()
            && other.involves(self.first)
            && self
                .meeting
                .is_none_or(|(second, _)| other.involves(second))
    }
}

/// What becomes of the games that stand when those of the repair take their place.
///
/// # Errors
/// [`StaleRepair`].
pub fn change_games<'a>(
    standing: &[RoundGame<'_>],
    repair: &[RoundGame<'a>],
) -> Result<GameChanges<'a>, StaleRepair> {
    let mut changes = GameChanges::default();
    for old in standing {
        match repair.iter().find(|new| old.is_same(new)) {
            None if old.is_reported => return Err(StaleRepair),
            None => changes.gone.push(old.id),
            Some(new) => {
                let is_elsewhere = |place: &GamePlace<'_>| {
                    let before = old.meeting.map(|(_, before)| before);
                    before.as_ref() != Some(place)
                };
                let place = new.meeting.map(|(_, place)| place);
                if let Some(place) = place.filter(is_elsewhere) {
                    if old.is_reported {
                        return Err(StaleRepair);
                    }
                    changes.moved.push((old.id, place));
                }
            }
        }
    }
    let is_new = |game: &&RoundGame<'_>| !standing.iter().any(|old| old.is_same(game));
    changes.new = repair.iter().filter(is_new).map(|game| game.id).collect();
    Ok(changes)
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;

    fn id(number: u128) -> GameId {
        GameId(Uuid::from_u128(number))
    }

    fn player(number: u128) -> PlayerId {
        PlayerId(Uuid::from_u128(number))
    }

    fn game(number: u128, [first, second]: [u128; 2], table: u16) -> RoundGame<'static> {
        let place = GamePlace {
            night: "thu",
            table,
        };
        RoundGame {
            id: id(number),
            first: player(first),
            meeting: Some((player(second), place)),
            is_reported: false,
        }
    }

    fn bye(number: u128, first: u128) -> RoundGame<'static> {
        RoundGame {
            meeting: None,
            ..game(number, [first, 0], 0)
        }
    }

    fn reported(game: RoundGame<'static>) -> RoundGame<'static> {
        RoundGame {
            is_reported: true,
            ..game
        }
    }

    #[test]
    fn a_repair_keeps_moves_takes_out_and_brings_in_games() {
        let standing = [
            reported(game(1, [1, 2], 1)),
            game(2, [3, 4], 2),
            game(3, [5, 6], 3),
            bye(4, 7),
        ];
        let repair = [
            game(11, [2, 1], 1),
            game(12, [3, 4], 3),
            game(13, [7, 5], 2),
        ];
        let changes = change_games(&standing, &repair).unwrap();
        assert_eq!(changes.gone, [id(3), id(4)]);
        let place = GamePlace {
            night: "thu",
            table: 3,
        };
        assert_eq!(changes.moved, [(id(2), place)]);
        assert_eq!(changes.new, [id(13)]);
    }

    #[test]
    fn whoever_sits_out_still_has_the_same_bye_and_no_game() {
        let changes = change_games(&[bye(1, 1)], &[bye(11, 1)]);
        assert_eq!(changes, Ok(GameChanges::default()));
        let changes = change_games(&[bye(1, 1)], &[game(11, [1, 2], 1)]).unwrap();
        assert_eq!((changes.gone, changes.new), (vec![id(1)], vec![id(11)]));
    }

    #[test]
    fn a_reported_game_is_neither_taken_out_nor_moved() {
        let standing = [reported(game(1, [1, 2], 1))];
        for repair in [game(11, [1, 2], 2), game(11, [1, 3], 1)] {
            assert_eq!(change_games(&standing, &[repair]), Err(StaleRepair));
        }
    }
}
