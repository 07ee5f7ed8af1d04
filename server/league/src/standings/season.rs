//! The facts with every player's identity turned into a place in one list, once for all weeks.

use std::collections::HashMap;

use crate::ids::PlayerId;
use crate::painting::PaintedWeek;
use crate::result::Outcome;
use crate::side::{Both, Side};
use crate::week::WeekNo;

use crate::ledger::Source;

use super::facts::{Absence, Adjustment, Fixture, GameFact, LateList, PlayerFact, SeasonFacts};

/// A season whose players are numbers from zero. Facts of unknown players are left out.
pub(super) struct Season<'f> {
    pub(super) facts: &'f SeasonFacts,
    /// In the order of their identities.
    pub(super) players: Vec<&'f PlayerFact>,
    pub(super) games: Vec<Game<'f>>,
    pub(super) byes: Vec<Of<'f, GameFact>>,
    pub(super) painted: Vec<Of<'f, PaintedWeek>>,
    pub(super) absences: Vec<Of<'f, Absence>>,
    pub(super) late_lists: Vec<Of<'f, LateList>>,
    pub(super) adjustments: Vec<Of<'f, Adjustment>>,
}

/// A fact of one player.
pub(super) struct Of<'f, T> {
    pub(super) player: usize,
    pub(super) fact: &'f T,
}

/// A game of two players.
pub(super) struct Game<'f> {
    pub(super) fact: &'f GameFact,
    pub(super) players: Both<usize>,
    pub(super) harder: Option<Side>,
    pub(super) outcome: Option<&'f Outcome>,
    pub(super) source: Source,
}

impl<'f> Season<'f> {
    pub(super) fn of(facts: &'f SeasonFacts) -> Self {
        let mut players: Vec<_> = facts.players.iter().collect();
        players.sort_unstable_by_key(|player| player.player);
        let numbers: HashMap<PlayerId, usize> = players
            .iter()
            .enumerate()
            .map(|(number, player)| (player.player, number))
            .collect();
        let number = |player: PlayerId| numbers.get(&player).copied();
        let mut games = Vec::with_capacity(facts.games.len());
        let mut byes = Vec::new();
        for fact in &facts.games {
            match &fact.fixture {
                Fixture::Bye(player) => {
                    byes.extend(number(*player).map(|player| Of { player, fact }));
                }
                Fixture::Game {
                    players,
                    harder,
                    outcome,
                    ruling,
                } => {
                    let both = number(players.first).zip(number(players.second));
                    games.extend(both.map(|(first, second)| Game {
                        fact,
                        players: Both::new(first, second),
                        harder: *harder,
                        outcome: outcome.as_ref(),
                        source: ruling.map_or(Source::Game(fact.game), Source::Ruling),
                    }));
                }
            }
        }
        Self {
            facts,
            games,
            byes,
            painted: with_number(&facts.painted, |painted| number(painted.player)),
            absences: with_number(&facts.absences, |absence| number(absence.player)),
            late_lists: with_number(&facts.late_lists, |late| number(late.player)),
            adjustments: with_number(&facts.adjustments, |ruled| number(ruled.player)),
            players,
        }
    }

    /// Whether the player has a row as of `week`.
    pub(super) fn has_row(&self, player: usize, week: WeekNo) -> bool {
        self.players
            .get(player)
            .is_some_and(|player| player.joined <= week)
    }
}

fn with_number<T>(facts: &[T], number: impl Fn(&T) -> Option<usize>) -> Vec<Of<'_, T>> {
    let numbered = facts.iter().filter_map(|fact| {
        let player = number(fact)?;
        Some(Of { player, fact })
    });
    numbered.collect()
}
