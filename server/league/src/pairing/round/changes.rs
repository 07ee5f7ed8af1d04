//! The difference between a published round and its repair, player by player.

use std::collections::BTreeMap;

use messages::{Message, proofs};

use crate::ids::PlayerId;

use super::game::Game;
use super::hall::{NightKey, NightSet, TableNo};

/// What a round has for a player.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Assignment {
    Game {
        opponent: PlayerId,
        night: NightKey,
        table: TableNo,
    },
    Bye,
    /// Not in the round.
    NotPlaying,
}

/// A player for whom a repair changes something.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct AssignmentChange {
    pub player: PlayerId,
    /// As it was published.
    pub before: Assignment,
    /// As it is after the repair.
    pub after: Assignment,
}

/// Everybody whose opponent, night or table is another than before, by identity.
pub fn compare_rounds(
    before: (&[Game], &[PlayerId]),
    after: (&[Game], &[PlayerId]),
) -> Vec<AssignmentChange> {
    let (before, after) = (assignments(before), assignments(after));
    let part = |parts: &BTreeMap<PlayerId, Assignment>, player| {
        parts.get(player).copied().unwrap_or(Assignment::NotPlaying)
    };
    let mut players: Vec<&PlayerId> = before.keys().chain(after.keys()).collect();
    players.sort_unstable();
    players.dedup();
    players
        .into_iter()
        .map(|player| AssignmentChange {
            player: *player,
            before: part(&before, player),
            after: part(&after, player),
        })
        .filter(|change| change.before != change.after)
        .collect()
}

fn assignments((games, byes): (&[Game], &[PlayerId])) -> BTreeMap<PlayerId, Assignment> {
    let part = |game: &Game, opponent| Assignment::Game {
        opponent,
        night: game.night,
        table: game.table,
    };
    let playing = games.iter().flat_map(|game| {
        [
            (game.attacker, part(game, game.defender)),
            (game.defender, part(game, game.attacker)),
        ]
    });
    playing
        .chain(byes.iter().map(|&player| (player, Assignment::Bye)))
        .collect()
}

/// What a repair says of the nights of those whom it takes out or brings in: whoever is out can come on none,
/// an absence with notice; whoever comes in can on the nights that they were drawn with.
pub fn changed_nights(
    before: &[(PlayerId, NightSet)],
    after: &[(PlayerId, NightSet)],
) -> Vec<(PlayerId, NightSet)> {
    let is_in = |round: &[(PlayerId, NightSet)], player| round.iter().any(|it| it.0 == player);
    let out = before.iter().filter(|it| !is_in(after, it.0));
    let into = after.iter().filter(|it| !is_in(before, it.0));
    out.map(|&(player, _)| (player, NightSet::NONE))
        .chain(into.copied())
        .collect()
}

impl AssignmentChange {
    /// The change as those it befalls read it. `called` and `evening` give names.
    pub fn message(
        &self,
        called: &dyn Fn(PlayerId) -> String,
        evening: &dyn Fn(NightKey) -> String,
    ) -> Message {
        let part = |part| match part {
            Assignment::Game {
                opponent,
                night,
                table,
            } => proofs::proof_meets(called(opponent), evening(night), table.0),
            Assignment::Bye => proofs::proof_sits_out(),
            Assignment::NotPlaying => proofs::proof_not_in_round(),
        };
        proofs::proof_change(called(self.player), part(self.after), part(self.before))
    }
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;

    fn player(number: u128) -> PlayerId {
        PlayerId(Uuid::from_u128(number))
    }

    fn game(table: u16, attacker: u128, defender: u128) -> Game {
        Game {
            night: NightKey::new(0).unwrap(),
            table: TableNo(table),
            attacker: player(attacker),
            defender: player(defender),
        }
    }

    #[test]
    fn who_is_taken_out_can_come_on_no_night_and_who_stays_says_nothing() {
        let tuesday: NightSet = NightKey::new(0).into_iter().collect();
        let before = [(player(1), tuesday), (player(2), tuesday)];
        let after = [(player(2), NightSet::ALL), (player(3), tuesday)];
        let expected = [(player(1), NightSet::NONE), (player(3), tuesday)];
        assert_eq!(changed_nights(&before, &after), expected);
    }

    #[test]
    fn who_keeps_opponent_night_and_table_is_not_named() {
        let before = [game(1, 1, 2), game(2, 3, 4), game(3, 5, 6)];
        let after = [game(1, 1, 2), game(2, 3, 7), game(4, 6, 5)];
        let changes = compare_rounds((&before, &[player(7)]), (&after, &[]));
        let called = |player: PlayerId| player.0.as_u128().to_string();
        let evening = |_| "first".to_owned();
        let told: Vec<String> = changes
            .iter()
            .map(|change| change.message(&called, &evening).to_string())
            .collect();
        assert_eq!(
            told,
            [
                "3 meets 7 (first, table 2); before: meets 4 (first, table 2).",
                "4 is not in the round; before: meets 3 (first, table 2).",
                "5 meets 6 (first, table 4); before: meets 6 (first, table 3).",
                "6 meets 5 (first, table 4); before: meets 5 (first, table 3).",
                "7 meets 3 (first, table 2); before: sits out.",
            ]
        );
    }
}
