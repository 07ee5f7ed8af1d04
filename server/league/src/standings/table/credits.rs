//! Credits: the rules that turn facts into ledger lines and into the sums of these, in one place.

mod absences;
mod best_weeks;
mod bonuses;
mod byes;
mod catch_up;
mod games;
mod lists;
mod rulings;

use crate::ledger::{LedgerLine, LineKind, LineReason, LineSource};
use crate::points::LeaguePoints;
use crate::standings::by_player::ByPlayer;
use crate::standings::rounds::{PlayerRound, away};
use crate::week::WeekNo;

use super::row::{KindSums, WeekTotal};
use super::season::IndexedSeason;

use bonuses::BonusCaps;
use catch_up::CatchUp;

/// What everybody is credited as of a week.
pub struct Credits<'s> {
    season: &'s IndexedSeason<'s>,
    as_of: WeekNo,
    caps: BonusCaps,
    /// Every week from the first.
    pub weeks: ByPlayer<WeekTotal>,
    pub sums: Vec<KindSums>,
    pub rounds: ByPlayer<PlayerRound>,
    /// By week, for those who join later.
    catch_up: Vec<Option<CatchUp>>,
}

/// A line that still lacks its player.
struct Credit {
    week: WeekNo,
    kind: LineKind,
    amount: LeaguePoints,
    reason: LineReason,
    source: LineSource,
    version: u32,
}

impl Credit {
    /// By the season's rules alone.
    const fn by_rule(
        week: WeekNo,
        kind: LineKind,
        amount: LeaguePoints,
        reason: LineReason,
    ) -> Self {
        Self {
            week,
            kind,
            amount,
            reason,
            source: LineSource::Rule,
            version: 1,
        }
    }
}

impl<'s> Credits<'s> {
    pub fn new(season: &'s IndexedSeason<'s>, as_of: WeekNo) -> Self {
        let (players, weeks) = (season.players.len(), usize::from(as_of.number()));
        let mut credits = Self {
            season,
            as_of,
            caps: BonusCaps::new(&season.facts.scoring),
            weeks: ByPlayer::with_capacity(0, 0),
            sums: Vec::with_capacity(players),
            rounds: ByPlayer::with_capacity(players, weeks),
            catch_up: Vec::new(),
        };
        let mut totals = ByPlayer::with_capacity(players, weeks);
        for player in 0..players {
            let mut sums = KindSums::default();
            totals.push(all_weeks(as_of).map(|week| credits.sum_up(player, week, &mut sums)));
            credits.sums.push(sums);
            let rounds = all_weeks(as_of).flat_map(|week| rounds_of(season, as_of, player, week));
            credits.rounds.push(rounds);
        }
        credits.weeks = totals;
        credits.weeks_before_joining();
        credits.weeks_beyond_the_best();
        credits
    }

    fn sum_up(&self, player: usize, week: WeekNo, sums: &mut KindSums) -> WeekTotal {
        let mut total = WeekTotal::new(week);
        self.for_each_credit(player, week, &mut |credit| {
            sums.add(credit.kind, credit.amount);
            total.points += credit.amount;
        });
        total
    }

    /// Every credit of a player's week in the order of the ledger. Before the weeks are summed up
    /// nobody knows yet what late joiners get and which weeks are dropped.
    fn for_each_credit(&self, player: usize, week: WeekNo, credit: &mut impl FnMut(Credit)) {
        self.games(player, week, credit);
        self.byes(player, week, credit);
        self.absences(player, week, credit);
        self.bonuses(player, week, credit);
        self.late_lists(player, week, credit);
        self.before_joining(player, week, credit);
        self.rulings(player, week, credit);
        self.not_among_the_best(player, week, credit);
    }

    /// Adds every line of a player to the ledger, week by week.
    pub fn write_lines(&self, player: usize, ledger: &mut Vec<LedgerLine>) {
        let Some(fact) = self.season.players.get(player) else {
            return;
        };
        for week in all_weeks(self.as_of) {
            self.for_each_credit(player, week, &mut |credit| {
                ledger.push(LedgerLine {
                    player: fact.player,
                    week: credit.week,
                    kind: credit.kind,
                    amount: credit.amount,
                    reason: credit.reason,
                    source: credit.source,
                    version: credit.version,
                });
            });
        }
    }

    /// The amount with the factor of its week.
    fn weighted(&self, amount: LeaguePoints, week: WeekNo) -> LeaguePoints {
        self.season.facts.scoring.weighted(amount, week)
    }
}

fn all_weeks(as_of: WeekNo) -> impl Iterator<Item = WeekNo> {
    (1..=as_of.number()).filter_map(WeekNo::new)
}

/// The rounds of a player's week: of games, byes and absences, and of a week missed without a word.
fn rounds_of<'s>(
    season: &'s IndexedSeason<'s>,
    as_of: WeekNo,
    player: usize,
    week: WeekNo,
) -> impl Iterator<Item = PlayerRound> + use<'s> {
    let games = season.games.get(player, week).iter();
    let games = games.filter_map(|game| game.counted.as_ref().map(|counted| counted.round));
    let byes = season.byes.get(player, week).iter();
    let byes = byes.map(move |_| byes::round(season, as_of, player, week));
    let absences = season.absences.get(player, week).iter();
    let absences = absences.map(move |_| away(week, absences::value(season, week)));
    let missed = season.is_missed(player, week);
    let missed = missed.then(|| away(week, LeaguePoints::ZERO));
    games.chain(byes).chain(absences).chain(missed)
}
