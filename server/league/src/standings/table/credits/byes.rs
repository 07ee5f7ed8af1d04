//! Weeks without an opponent.

use crate::ledger::{Kind, Reason, Source};
use crate::points::LeaguePoints;
use crate::scoring::Bye;
use crate::standings::rounds::{Round, RoundKind};
use crate::standings::table::season::Season;
use crate::week::WeekNo;

use super::{Credit, Credits};

impl Credits<'_> {
    pub(super) fn byes(&self, player: usize, week: WeekNo, credit: &mut impl FnMut(Credit)) {
        for bye in self.season.byes.of(player, week) {
            let (amount, reason) = bye_of(self.season, self.as_of, player);
            credit(Credit {
                week,
                kind: Kind::Bye,
                amount: self.weighted(amount, week),
                reason,
                source: Source::Game(bye.game),
                version: bye.version,
            });
        }
    }
}

pub(super) fn round(season: &Season<'_>, as_of: WeekNo, player: usize, week: WeekNo) -> Round {
    let (amount, _) = bye_of(season, as_of, player);
    Round {
        week,
        result: 2,
        league_points: season.facts.scoring.weighted(amount, week),
        kind: RoundKind::Bye,
    }
}

fn bye_of(season: &Season<'_>, as_of: WeekNo, player: usize) -> (LeaguePoints, Reason) {
    let scoring = &season.facts.scoring;
    match scoring.terms().bye {
        Bye::Fixed(value) => (value, Reason::Bye),
        Bye::Win => (scoring.win(), Reason::Bye),
        Bye::OwnAverage { floor } => {
            let games = season.games.until(player, as_of).iter();
            let rounds = games.filter_map(|seat| seat.stands.as_ref().map(|stands| stands.round));
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
