//! What if: the table under supposed results of open games.

use std::collections::HashMap;

use messages::{Message, standings_faults as said};

use crate::ids::GameId;
use crate::result::Outcome;
use crate::standings::facts::{Fixture, SeasonFacts};
use crate::standings::table::row::Standings;
use crate::standings::table::table;
use crate::week::WeekNo;

#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Supposition {
    /// An open game.
    pub game: GameId,
    /// How it is supposed to end.
    pub outcome: Outcome,
}

/// Why nothing can be supposed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SuppositionRefusal {
    /// The season has no such game of two players.
    NoSuchGame(GameId),
    /// Its result stands.
    NotOpen(GameId),
}

impl SuppositionRefusal {
    pub fn message(&self) -> Message {
        match self {
            Self::NoSuchGame(_) => said::outlook_no_such_game(),
            Self::NotOpen(_) => said::outlook_not_open(),
        }
    }
}

impl SuppositionRefusal {
    /// The stable code.
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NoSuchGame(_) => "what-if.no-such-game",
            Self::NotOpen(_) => "what-if.not-open",
        }
    }
}

/// The table as of a week if open games ended as supposed. Of two suppositions for one game the
/// later counts.
///
/// # Errors
/// Every game that is unknown or not open.
pub fn what_if(
    facts: &SeasonFacts,
    suppositions: &[Supposition],
    as_of: WeekNo,
) -> Result<Standings, Vec<SuppositionRefusal>> {
    let mut facts = facts.clone();
    let mut supposed: HashMap<GameId, &Outcome> = suppositions
        .iter()
        .map(|supposed| (supposed.game, &supposed.outcome))
        .collect();
    let mut refused = Vec::new();
    for game in &mut facts.games {
        let Some(ending) = supposed.remove(&game.game) else {
            continue;
        };
        match &mut game.fixture {
            Fixture::Game { outcome, .. } if outcome.is_none() => *outcome = Some(ending.clone()),
            Fixture::Game { .. } => refused.push(SuppositionRefusal::NotOpen(game.game)),
            Fixture::Bye(_) => refused.push(SuppositionRefusal::NoSuchGame(game.game)),
        }
    }
    let mut unknown: Vec<GameId> = supposed.into_keys().collect();
    unknown.sort_unstable();
    refused.extend(unknown.into_iter().map(SuppositionRefusal::NoSuchGame));
    if refused.is_empty() {
        Ok(table(&facts, as_of))
    } else {
        Err(refused)
    }
}
