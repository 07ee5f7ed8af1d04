//! Credit for byes: weeks without an opponent.

use crate::ledger::{LineKind, LineReason, LineSource};
use crate::points::LeaguePoints;
use crate::scoring::Bye;
use crate::standings::rounds::{PlayerRound, RoundKind};
use crate::standings::table::season::IndexedSeason;
use crate::week::WeekNo;

use super::{Credit, Credits};

impl Credits<'_> {
    pub(super) fn byes(&self, player: usize, week: WeekNo, credit: &mut impl FnMut(Credit)) {
        for bye in self.season.byes.get(player, week) {
            let (amount, reason) = bye_of(self.season, self.as_of, player);
            credit(Credit {
                week,
                kind: LineKind::Bye,
                amount: self.weighted(amount, week),
                reason,
                source: LineSource::Game(bye.game),
                version: bye.version,
            });
        }
    }
}

pub(super) fn round(
    season: &IndexedSeason<'_>,
    as_of: WeekNo,
    player: usize,
    week: WeekNo,
) -> PlayerRound {
    let (amount, _) = bye_of(season, as_of, player);
    PlayerRound {
        week,
        result: 2,
        league_points: season.facts.scoring.weighted(amount, week),
        kind: RoundKind::Bye,
    }
}

fn bye_of(season: &IndexedSeason<'_>, as_of: WeekNo, player: usize) -> (LeaguePoints, LineReason) {
    let scoring = &season.facts.scoring;
    match scoring.terms().bye {
        Bye::Fixed(value) => (value, LineReason::Bye),
        Bye::Win => (scoring.win(), LineReason::Bye),
        Bye::OwnAverage { floor } => {
            let games = season.games.up_to(player, as_of).iter();
            let rounds =
                games.filter_map(|game| game.counted.as_ref().map(|counted| counted.round));
            let played = rounds.filter(|round| round.kind.is_played());
            let unweighted =
                played.map(|round| round.league_points.get() / scoring.weight(round.week));
            let (games, sum) =
                unweighted.fold((0_u32, 0), |(n, sum), points| (n + 1, sum + points));
            let average = i32::try_from(games)
                .ok()
                .and_then(|games| sum.checked_div(games));
            let average = LeaguePoints::new(average.unwrap_or(0));
            (average.max(floor), LineReason::ByeByAverage { games })
        }
    }
}
