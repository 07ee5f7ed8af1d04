//! Weeks without an opponent.

use crate::ledger::{Kind, Reason, Source};
use crate::points::LeaguePoints;
use crate::scoring::Bye;

use super::super::rounds::{Round, RoundKind};
use super::{Credit, Credits};

impl Credits<'_> {
    pub(super) fn byes(&mut self) {
        let (season, as_of) = (self.season, self.as_of);
        for bye in season.byes.iter().filter(|bye| bye.fact.week <= as_of) {
            let week = bye.fact.week;
            let (amount, reason) = self.bye_of(bye.player);
            let amount = self.weighted(amount, week);
            if let Some(rounds) = self.rounds.get_mut(bye.player) {
                rounds.push(Round {
                    week,
                    result: 2,
                    league_points: amount,
                    kind: RoundKind::Bye,
                });
            }
            let credit = Credit {
                week,
                kind: Kind::Bye,
                amount,
                reason,
                source: Source::Game(bye.fact.game),
                version: bye.fact.version,
            };
            self.credit(bye.player, credit);
        }
    }

    fn bye_of(&self, player: usize) -> (LeaguePoints, Reason) {
        let scoring = &self.season.facts.scoring;
        match scoring.terms().bye {
            Bye::Fixed(value) => (value, Reason::Bye),
            Bye::Win => (scoring.win(), Reason::Bye),
            Bye::OwnAverage { floor } => {
                let rounds = self.rounds.get(player).into_iter().flatten();
                let played = rounds.filter(|round| round.kind.is_played());
                let unweighted =
                    played.map(|round| round.league_points.get() / scoring.weight(round.week));
                let (games, sum) =
                    unweighted.fold((0_u32, 0), |(n, sum), points| (n + 1, sum + points));
                let average = i32::try_from(games)
                    .ok()
                    .and_then(|games| sum.checked_div(games));
                let average = LeaguePoints::new(average.unwrap_or(0));
                (average.max(floor), Reason::ByeByAverage { games })
            }
        }
    }
}
