//! The repair of a published round after a disruption: somebody is ill at noon, a night is lost.
//!
//! The repair is a round like any other: its task is solved and proven. After the players without a
//! game, its cost counts the games that differ from the published ones, so that no repair changes
//! fewer; the season's wishes choose among those.

use std::collections::BTreeSet;

use messages::{Message, round_refusals};

use crate::ids::PlayerId;

use super::game::{FixedGame, Game, Pair};
use super::hall::{Night, NightKey, NightSet, TableNo};
use super::task::{Contender, Task};

/// What is different since the round was published.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Disruption {
    /// Nights with the tables that are there now.
    pub nights: Vec<Night>,
    /// Nights on which these players of the round can come now; none at all: out.
    pub availabilities: Vec<(PlayerId, NightSet)>,
    /// Players who can come after all.
    pub newcomers: Vec<Contender>,
    /// Published games that are reported: they stay where they are.
    pub reported: Vec<Game>,
    /// Games the organiser wants.
    pub pins: Vec<Pair>,
    /// Games the organiser does not want, besides those ruled out before.
    pub forbidden: Vec<Pair>,
}

/// The nights that a round was drawn with, as they are now: each night that is named has so many tables,
/// and none where there are 0.
pub fn change_nights(
    mut drawn: Vec<Night>,
    changes: impl IntoIterator<Item = (NightKey, u16)>,
) -> Vec<Night> {
    for (key, tables) in changes {
        drawn.retain(|known| known.key != key);
        if tables > 0 {
            let tables = (1..=tables).map(TableNo).collect();
            drawn.push(Night { key, tables });
        }
    }
    drawn
}

/// The game of a player is reported: on which nights they can come is settled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct GameReported;

impl GameReported {
    pub fn message(self) -> Message {
        round_refusals::game_reported()
    }
}

impl Disruption {
    /// Whether it may be said on which nights a player can come now.
    ///
    /// # Errors
    /// [`GameReported`].
    pub fn check_not_reported(&self, player: PlayerId) -> Result<(), GameReported> {
        let plays = |game: &Game| [game.attacker, game.defender].contains(&player);
        if self.reported.iter().any(plays) {
            return Err(GameReported);
        }
        Ok(())
    }
}

/// The published games of these pairs, which have reported: they stay where they are.
pub fn reported_games(published: &[Game], reported: &[Pair]) -> Vec<Game> {
    let is_reported = |game: &&Game| game.pair().is_some_and(|pair| reported.contains(&pair));
    published.iter().filter(is_reported).copied().collect()
}

/// The task of the repair of a round that was drawn from `drawn` and is published as `published`. It
/// has the old task's draw until its own is known.
pub fn repair_task(drawn: &Task, published: &[Game], disruption: Disruption) -> Task {
    let mut forbidden = [drawn.forbidden.clone(), disruption.forbidden].concat();
    forbidden.retain(|pair| !disruption.pins.contains(pair));
    forbidden.sort_unstable();
    forbidden.dedup();
    let mut task = Task {
        nights: disruption.nights,
        pins: disruption.pins,
        forbidden,
        fixed: disruption.reported.iter().map(fixture).collect(),
        published: published.to_vec(),
        ..drawn.clone()
    };
    for (player, nights) in disruption.availabilities {
        let mut known = task.contenders.iter_mut();
        if let Some(contender) = known.find(|contender| contender.player == player) {
            contender.nights = nights;
        }
    }
    let out: BTreeSet<PlayerId> = task
        .contenders
        .iter()
        .filter(|contender| contender.nights.is_empty())
        .map(|contender| contender.player)
        .collect();
    task.contenders
        .retain(|contender| !out.contains(&contender.player));
    task.contenders.extend(disruption.newcomers);
    for game in &disruption.reported {
        keep_in_place(&mut task, game);
    }
    task
}

/// Holds a reported game to its night and its table.
fn keep_in_place(task: &mut Task, game: &Game) {
    for contender in &mut task.contenders {
        if [game.attacker, game.defender].contains(&contender.player) {
            contender.nights = [game.night].into_iter().collect();
        }
    }
    match task.nights.iter_mut().find(|night| night.key == game.night) {
        Some(night) if night.tables.contains(&game.table) => {}
        Some(night) => night.tables.push(game.table),
        None => task.nights.push(Night {
            key: game.night,
            tables: vec![game.table],
        }),
    }
}

fn fixture(game: &Game) -> FixedGame {
    FixedGame {
        attacker: game.attacker,
        defender: game.defender,
    }
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;

    #[test]
    fn a_game_that_is_reported_stays_and_so_do_the_nights_of_its_players() {
        let [a, b, c, d] = [1, 2, 3, 4].map(|number| PlayerId(Uuid::from_u128(number)));
        let game = |table, attacker, defender| Game {
            night: NightKey::new(0).unwrap(),
            table: TableNo(table),
            attacker,
            defender,
        };
        let published = [game(1, a, b), game(2, c, d)];
        let reported = reported_games(&published, &[Pair::new(d, c).unwrap()]);
        assert_eq!(reported, published[1..]);
        let disruption = Disruption {
            reported,
            ..Disruption::default()
        };
        assert_eq!(disruption.check_not_reported(a), Ok(()));
        assert_eq!(disruption.check_not_reported(d), Err(GameReported));
    }

    #[test]
    fn a_night_has_the_tables_that_are_there_now_and_a_cancelled_one_is_gone() {
        let [tuesday, thursday] = [0, 1].map(|number| NightKey::new(number).unwrap());
        let night = |key, tables: &[u16]| Night {
            key,
            tables: tables.iter().copied().map(TableNo).collect(),
        };
        let drawn = vec![night(tuesday, &[1, 2, 3]), night(thursday, &[1])];
        let now = change_nights(drawn.clone(), [(tuesday, 0), (thursday, 2)]);
        assert_eq!(now, [night(thursday, &[1, 2])]);
        assert_eq!(change_nights(drawn.clone(), []), drawn);
    }
}
