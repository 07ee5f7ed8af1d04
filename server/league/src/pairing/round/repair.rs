//! The repair of a published round after a disruption: somebody is ill at noon, a night is lost.
//!
//! The repair is a round like any other: its task is solved and proven. After the players without a
//! game, its cost counts the games that differ from the published ones, so that no repair changes
//! fewer; the season's wishes choose among those.

use std::collections::BTreeSet;

use crate::ids::PlayerId;

use super::game::{FixedGame, Game, Pair};
use super::hall::{Night, NightSet};
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
