//! Games of two players.

use crate::ledger::Kind;
use crate::points::Points;
use crate::result::Outcome;
use crate::side::{Both, Side};

use super::super::rounds::round_of;
use super::super::season::Game;
use super::{Credit, Credits};

impl Credits<'_> {
    pub(super) fn games(&mut self) {
        let (season, as_of) = (self.season, self.as_of);
        for game in season.games.iter().filter(|game| game.fact.week <= as_of) {
            if let Some(outcome) = game.outcome {
                self.game(game, outcome);
            }
        }
    }

    fn game(&mut self, game: &Game<'_>, outcome: &Outcome) {
        let facts = self.season.facts;
        let week = game.fact.week;
        let cap = facts.caps.get(&week).copied().unwrap_or(Points::ZERO);
        let Some(awards) = facts.scoring.award(outcome, cap) else {
            return;
        };
        let amounts = Both::each(|side| self.weighted(awards[side].amount, week));
        for (side, award) in [(Side::First, awards.first), (Side::Second, awards.second)] {
            let player = game.players[side];
            let round = round_of(self.season, game, outcome, side, amounts[side]);
            if let Some(rounds) = self.rounds.get_mut(player) {
                rounds.extend(round);
            }
            if came(outcome, side) {
                self.attend(player, week);
            }
            let credit = Credit {
                week,
                kind: Kind::Game,
                amount: amounts[side],
                reason: award.reason,
                source: game.source,
                version: game.fact.version,
            };
            self.credit(player, credit);
        }
    }
}

fn came(outcome: &Outcome, side: Side) -> bool {
    match outcome {
        Outcome::Played(_) | Outcome::Conceded { .. } => true,
        Outcome::NoShow { absent, .. } => *absent != side,
        Outcome::DoubleLoss | Outcome::Void => false,
    }
}
