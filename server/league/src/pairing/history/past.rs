//! A contender's record from earlier rounds: byes, floats, roles, tables, opponents.

use std::cmp::Ordering;
use std::collections::BTreeSet;

use crate::ids::PlayerId;
use crate::pairing::round::game::{Meeting, Pair};
use crate::pairing::round::hall::TableNo;
use crate::pairing::round::task::{Float, RoleHistory};
use crate::points::LeaguePoints;
use crate::result::Outcome;
use crate::side::{GameRole, PerSide};
use crate::week::WeekNo;

/// The key of a round of a season; keys are in the order of the rounds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct RoundKey {
    /// Of which week.
    pub week: WeekNo,
    /// Which of the week's rounds, from 1.
    pub number: u8,
}

/// A game or bye of a published round.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PastPairing {
    /// Nobody to play.
    Bye { round: RoundKey, player: PlayerId },
    /// Two players were paired.
    Game {
        round: RoundKey,
        /// Who attacked, or was named first.
        attacker: PlayerId,
        /// Who defended, or was named second.
        defender: PlayerId,
        table: TableNo,
        /// Whether the scenario had roles.
        roles: bool,
        /// What became of it.
        outcome: PastOutcome,
    },
}

/// What became of a paired game.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PastOutcome {
    /// Played, or still to be.
    Played,
    /// One side did not come: a forfeit win for the other.
    Forfeit { winner: PlayerId },
    /// Neither gets anything for it, but they were paired.
    Unplayed,
    /// Struck from the record; they may meet again.
    Void,
}

impl PastOutcome {
    /// What became of a game of these players with the outcome that stands, if one does.
    pub fn new(outcome: Option<&Outcome>, players: PerSide<PlayerId>) -> Self {
        match outcome {
            Some(Outcome::NoShow { absent, .. }) => Self::Forfeit {
                winner: players[absent.other()],
            },
            Some(Outcome::DoubleLoss) => Self::Unplayed,
            Some(Outcome::Void) => Self::Void,
            Some(Outcome::Played(_) | Outcome::Conceded { .. }) | None => Self::Played,
        }
    }
}

impl PastPairing {
    fn round(&self) -> RoundKey {
        match self {
            Self::Bye { round, .. } | Self::Game { round, .. } => *round,
        }
    }
}

/// Everybody who has met, each pair once for every game that was not struck.
pub fn meetings(past: &[PastPairing]) -> Vec<Meeting> {
    past.iter()
        .filter_map(|past| match past {
            PastPairing::Game {
                round,
                attacker,
                defender,
                outcome: course,
                ..
            } if *course != PastOutcome::Void => Some(Meeting {
                pair: Pair::new(*attacker, *defender)?,
                week: round.week,
            }),
            _ => None,
        })
        .collect()
}

/// Byes and forfeit wins of a player (FIDE Handbook C.04.1, article 4).
pub fn byes(past: &[PastPairing], player: PlayerId) -> u8 {
    let count = past
        .iter()
        .filter(|past| match past {
            PastPairing::Bye { player: free, .. } => *free == player,
            PastPairing::Game {
                outcome: PastOutcome::Forfeit { winner },
                ..
            } => *winner == player,
            PastPairing::Game { .. } => false,
        })
        .count();
    u8::try_from(count).unwrap_or(u8::MAX)
}

/// Tables a player has played on.
pub fn tables(past: &[PastPairing], player: PlayerId) -> Vec<TableNo> {
    past.iter()
        .filter_map(|past| match past {
            PastPairing::Game {
                attacker,
                defender,
                table,
                outcome: PastOutcome::Played,
                ..
            } if player == *attacker || player == *defender => Some(*table),
            _ => None,
        })
        .collect()
}

/// Roles of a player in games that were played and had roles, oldest first in `past`.
pub fn roles(past: &[PastPairing], player: PlayerId) -> RoleHistory {
    let mut roles = RoleHistory::default();
    for past in past {
        let PastPairing::Game {
            attacker,
            defender,
            roles: true,
            outcome: PastOutcome::Played,
            ..
        } = past
        else {
            continue;
        };
        let role = match player {
            _ if player == *attacker => GameRole::Attacker,
            _ if player == *defender => GameRole::Defender,
            _ => continue,
        };
        match role {
            GameRole::Attacker => roles.attacker = roles.attacker.saturating_add(1),
            GameRole::Defender => roles.defender = roles.defender.saturating_add(1),
        }
        roles.streak = match roles.streak {
            Some((last, times)) if last == role => Some((role, times.saturating_add(1))),
            _ => Some((role, 1)),
        };
    }
    roles
}

/// The floats of a player in the round before `before` and in the one before that. `score` tells what
/// a player had when a round was paired.
pub fn floats(
    past: &[PastPairing],
    player: PlayerId,
    before: RoundKey,
    score: impl Fn(RoundKey, PlayerId) -> LeaguePoints,
) -> [Option<Float>; 2] {
    let rounds: BTreeSet<RoundKey> = past.iter().map(PastPairing::round).collect();
    let mut latest = rounds.range(..before).rev();
    let mut float = || {
        let &round = latest.next()?;
        let games = past.iter().filter(|past| past.round() == round);
        games
            .filter_map(|past| float_of(past, player, |id| score(round, id)))
            .next()
    };
    [float(), float()]
}

fn float_of(
    past: &PastPairing,
    player: PlayerId,
    score: impl Fn(PlayerId) -> LeaguePoints,
) -> Option<Float> {
    let opponent = match past {
        PastPairing::Bye { player: free, .. } => return (*free == player).then_some(Float::Down),
        PastPairing::Game {
            attacker, defender, ..
        } => match player {
            _ if player == *attacker => *defender,
            _ if player == *defender => *attacker,
            _ => return None,
        },
    };
    match score(player).cmp(&score(opponent)) {
        Ordering::Less => Some(Float::Up),
        Ordering::Equal => None,
        Ordering::Greater => Some(Float::Down),
    }
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;
    use crate::result::AbsenceNotice;
    use crate::side::Side;

    fn player(number: u128) -> PlayerId {
        PlayerId(Uuid::from_u128(number))
    }

    fn round(week: u8) -> RoundKey {
        RoundKey {
            week: WeekNo::new(week).unwrap(),
            number: 1,
        }
    }

    fn game(number: u8, attacker: u128, defender: u128, course: PastOutcome) -> PastPairing {
        PastPairing::Game {
            round: round(number),
            attacker: player(attacker),
            defender: player(defender),
            table: TableNo(number.into()),
            roles: true,
            outcome: course,
        }
    }

    #[test]
    fn a_forfeit_win_bars_from_a_bye_and_counts_as_having_met() {
        let past = [
            game(1, 1, 2, PastOutcome::Forfeit { winner: player(1) }),
            game(2, 1, 3, PastOutcome::Void),
        ];
        assert_eq!((byes(&past, player(1)), byes(&past, player(2))), (1, 0));
        assert_eq!(meetings(&past).len(), 1);
        assert_eq!(roles(&past, player(1)), RoleHistory::default());
        assert!(tables(&past, player(1)).is_empty());
    }

    #[test]
    fn who_comes_to_a_game_alone_wins_by_forfeit() {
        let players = PerSide::new(player(1), player(2));
        let became = |outcome| PastOutcome::new(Some(&outcome), players);
        let alone = Outcome::NoShow {
            absent: Side::First,
            notice: AbsenceNotice::NotGiven,
        };
        let winner = player(2);
        assert_eq!(became(alone), PastOutcome::Forfeit { winner });
        assert_eq!(became(Outcome::DoubleLoss), PastOutcome::Unplayed);
        assert_eq!(became(Outcome::Void), PastOutcome::Void);
        assert_eq!(PastOutcome::new(None, players), PastOutcome::Played);
        let given_up = Outcome::Conceded {
            by: Side::First,
            score: None,
        };
        assert_eq!(became(given_up), PastOutcome::Played);
    }

    #[test]
    fn roles_run_in_streaks() {
        let past = [
            game(1, 1, 2, PastOutcome::Played),
            game(2, 3, 1, PastOutcome::Played),
            game(3, 4, 1, PastOutcome::Played),
        ];
        let roles = roles(&past, player(1));
        assert_eq!((roles.attacker, roles.defender), (1, 2));
        assert_eq!(roles.streak, Some((GameRole::Defender, 2)));
    }

    /// FIDE Handbook C.04.3, article 1.4.3: a bye counts as a downfloat.
    #[test]
    fn a_bye_floats_down_and_the_better_of_two_too() {
        let past = [
            PastPairing::Bye {
                round: round(1),
                player: player(1),
            },
            game(2, 1, 2, PastOutcome::Played),
        ];
        let score = |_, who: PlayerId| LeaguePoints::new(if who == player(1) { 3 } else { 0 });
        assert_eq!(
            floats(&past, player(1), round(3), score),
            [Some(Float::Down); 2]
        );
        assert_eq!(
            floats(&past, player(2), round(3), score),
            [Some(Float::Up), None]
        );
        assert_eq!(floats(&past, player(2), round(2), score), [None, None]);
    }

    #[test]
    fn two_rounds_of_one_week_are_two_rounds() {
        let second = |mut past: PastPairing| {
            if let PastPairing::Game { round, .. } = &mut past {
                round.number = 2;
            }
            past
        };
        let past = [
            game(1, 1, 2, PastOutcome::Played),
            second(game(1, 3, 1, PastOutcome::Played)),
        ];
        let score = |_, who: PlayerId| LeaguePoints::new(if who == player(1) { 3 } else { 0 });
        let third = RoundKey {
            number: 3,
            ..round(1)
        };
        assert_eq!(
            floats(&past, player(1), third, score),
            [Some(Float::Down); 2]
        );
        let other = [Some(Float::Up), None];
        assert_eq!(floats(&past, player(3), third, score), other);
    }
}
